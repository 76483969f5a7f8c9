// The index of pages. The only way in is lay_out_index; tested in tests/reports/layout/proof_parts.test.cpp.
#include "reports/layout/page_index.h"

#include "engine/rules/print_page.h"
#include "reports/content/sentences.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Length bottom = style::sheet.height - style::foot;
constexpr Length right = style::sheet.width - style::margin;
constexpr Size largest{54_mm, 30_mm}; ///< of one page
constexpr Length column_gap = 7_mm, row_gap = 5_mm, line_gap = 1.2_mm;
constexpr Length words_height = 8_mm; ///< under each page: its name and what was found

/// Pages that are seen together.
struct Opening {
  std::vector<std::size_t> surfaces;
  Length width; ///< of what stands in the index
};

class IndexWriter {
public:
  IndexWriter(const content::ProofContent &content, const Checked &checked, const ImageOf &images,
              const Typesetter &type)
      : content_(content), checked_(checked), images_(images), type_(type), factor_(common_factor()) {
    std::size_t frame = 0;
    for (const Page &page : checked.evidence.book.pages) {
      first_frame_.push_back(frame);
      frame += page.frames.size();
    }
  }

  PageIndex write() {
    begin_sheet("Pages at a glance");
    std::vector<Opening> row;
    Length width;
    for (const Opening &opening : openings()) {
      if (!row.empty() && width + opening.width > right - style::margin) {
        write_row(row);
        row.clear();
        width = {};
      }
      row.push_back(opening);
      width += opening.width + column_gap;
    }
    if (!row.empty()) write_row(row);
    return std::move(index_);
  }

private:
  const Evidence &evidence() const { return checked_.evidence; }
  const Rect &trim_of(std::size_t surface) const {
    return evidence().spaces[content_.surfaces[surface].page].trim;
  }

  /// One scale for all pages, so that their sizes can be compared; that of the cover, which may be far wider,
  /// and of odd sizes, is smaller where they would not fit.
  double common_factor() const {
    const Size page = evidence().book.trim;
    return std::min(largest.width / page.width, largest.height / page.height);
  }
  double factor_of(std::size_t surface) const {
    const Rect &trim = trim_of(surface);
    return std::min({factor_, largest.width * 2 / trim.width, largest.height / trim.height});
  }
  Length width_of(std::size_t surface) const {
    return std::max(trim_of(surface).width * factor_of(surface), least_width(surface));
  }
  /// A narrow page must leave room for its words.
  Length least_width(std::size_t surface) const {
    const TypeStyle &style = style::label_strong;
    return type_.width(style.face, style.size, content_.surfaces[surface].name) + 1_mm;
  }

  /// A left page and the right page that faces it.
  bool faces(std::size_t surface) const {
    const auto &pages = evidence().book.pages;
    if (surface + 1 >= content_.surfaces.size()) return false;
    const Page &page = pages[content_.surfaces[surface].page],
               &next = pages[content_.surfaces[surface + 1].page];
    const Side first = evidence().book.binding.first_page;
    return page.kind == PageKind::page && next.kind == PageKind::page && next.number == page.number + 1 &&
           side_of(page.number, first) == Side::left;
  }

  std::vector<Opening> openings() const {
    std::vector<Opening> all;
    for (std::size_t i = 0; i < content_.surfaces.size(); ++i) {
      all.push_back({{i}, width_of(i)});
      if (!faces(i)) continue;
      ++i;
      all.back().surfaces.push_back(i);
      all.back().width += width_of(i);
    }
    return all;
  }

  Canvas canvas() { return {type_, index_.sheets.back()}; }

  void begin_sheet(std::string_view heading) {
    index_.sheets.emplace_back();
    index_.sheets.back().size = style::sheet;
    canvas().as(Role::heading2).text({style::margin, style::margin}, style::heading, heading);
    y_ = style::head;
  }

  void write_row(const std::vector<Opening> &row) {
    Length height;
    for (const Opening &opening : row)
      for (const std::size_t surface : opening.surfaces)
        height = std::max(height, trim_of(surface).height * factor_of(surface));
    if (y_ + height + words_height > bottom) begin_sheet("Pages at a glance, continued");
    Length x = style::margin;
    for (const Opening &opening : row) {
      for (const std::size_t surface : opening.surfaces) {
        write_page(surface, x, height);
        x += width_of(surface);
      }
      x += column_gap;
    }
    y_ += height + words_height + row_gap;
  }

  /// The pages of a row stand on one line.
  void write_page(std::size_t surface, Length x, Length row_height) {
    Canvas on = canvas();
    const std::size_t page = content_.surfaces[surface].page;
    const double factor = factor_of(surface);
    const Size size = {trim_of(surface).width * factor, trim_of(surface).height * factor};
    const Point corner{x, y_ + row_height - size.height};
    const Scale scale{factor, corner};
    const Rect box{corner.x, corner.y, size.width, size.height};
    {
      const auto figure = on.begin(Role::figure, content_.surfaces[surface].name);
      draw_small(on, page, box, scale);
    }
    write_state(on, surface, {x, y_ + row_height + line_gap}, size.width);
    index_.places.push_back(
        {surface, index_.sheets.size() - 1, {x, corner.y, width_of(surface), size.height + words_height}});
  }

  void draw_small(Canvas &on, std::size_t page, const Rect &box, const Scale &scale) {
    on.box(box, style::white, std::nullopt);
    const auto &frames = evidence().book.pages[page].frames;
    for (std::size_t i = 0; i < frames.size(); ++i)
      draw_frame(on, checked_, images_, evidence().frames[first_frame_[page] + i],
                 evidence().spaces[page].trim, scale);
    draw_texts(on, evidence().book.pages[page], evidence().spaces[page].trim, scale);
    const Page &shown = evidence().book.pages[page];
    if (stays_empty(shown))
      on.text_centred({box.centre().x, box.centre().y - style::label.leading / 2}, style::label,
                      shown.blank ? "blank" : "empty");
    on.box(box, std::nullopt, style::hair);
  }

  /// Too small to read: a grey bar for each line of a text.
  static void draw_texts(Canvas &on, const Page &page, const Rect &trim, const Scale &scale) {
    for (const TextBlock &text : page.texts) {
      const auto shown = shared_part(text.rect, trim);
      if (!shown || text.kind == TextKind::spine) continue;
      const Rect box = scale(*shown);
      const Length line = std::max(text.type_size * 1.2 * scale.factor, 0.7_mm);
      for (Length y = box.top(); y + line <= box.bottom() + line / 2; y += line)
        on.box({box.x, y, box.width, line / 2}, style::faint, std::nullopt);
    }
  }

  /// The line under a page is that of its gravest mark.
  void write_state(Canvas &on, std::size_t surface, Point at, Length width) const {
    const content::Surface &of = content_.surfaces[surface];
    std::array<std::size_t, 3> counts{};
    for (const std::size_t mark : of.marks) ++counts[static_cast<std::size_t>(content_.marks[mark].grade)];
    const auto gravest = std::ranges::find_if(counts, [](std::size_t count) { return count > 0; });
    if (gravest != counts.end())
      on.line({at.x + 0.6_mm, at.y}, {at.x + width - 0.6_mm, at.y},
              style::grade_line(static_cast<Grade>(gravest - counts.begin())));
    const auto words_of_page = on.begin(Role::paragraph);
    on.text({at.x, at.y + 0.6_mm}, style::label_strong, of.name);
    if (gravest == counts.end()) return;
    std::string words = content::grade_count(static_cast<Grade>(gravest - counts.begin()), *gravest);
    if (const std::size_t others = of.marks.size() - *gravest) words += fmt::format(", {} more", others);
    on.text({at.x, at.y + 0.6_mm + style::label_strong.leading - 1_pt}, style::label,
            on.shortened(style::label, width_of(surface), words));
  }

  const content::ProofContent &content_;
  const Checked &checked_;
  const ImageOf &images_;
  const Typesetter &type_;
  double factor_;
  std::vector<std::size_t> first_frame_; ///< index into Evidence::frames, by page
  PageIndex index_;
  Length y_;
};

} // namespace

PageIndex lay_out_index(const content::ProofContent &content, const Checked &checked, const ImageOf &images,
                        const Typesetter &type) {
  return IndexWriter(content, checked, images, type).write();
}

} // namespace stoneproof::layout
