// The whole proof: front, then one sheet or more for each page of the book. The only ways in are the
// functions of proof.h; tested in tests/reports/layout.
#include "reports/layout/proof.h"

#include "reports/content/figures.h"
#include "reports/layout/column.h"
#include "reports/layout/creep_mark.h"
#include "reports/layout/drawing.h"
#include "reports/layout/foot.h"
#include "reports/layout/front.h"
#include "reports/layout/object_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace stoneproof::layout {

namespace {

using namespace literals;

Column column_beside(const Rect &drawing) {
  const Length left = drawing.right() + style::leader_room;
  const Length width = std::min(style::sheet.width - style::margin - left, style::column_most);
  return {left, width, style::head + style::slug, style::sheet.height - style::foot};
}

struct KeyEntry {
  std::string_view name;
  Stroke stroke;
};

/// What the lines of the drawing of a page stand for.
std::vector<KeyEntry> key_of(const Evidence &evidence, std::size_t page, std::size_t block_page) {
  const Page &content = evidence.book.pages[page];
  const bool cover = content.kind == PageKind::cover;
  const bool boards = cover && evidence.book.binding.kind == BindingKind::case_bound;
  std::vector<KeyEntry> entries{{boards ? "edge of the boards" : "trim", style::trim_line},
                                {boards ? "turn-in" : "bleed edge", style::bleed_line},
                                {"safe margin", style::safe_line}};
  if (cover)
    entries.push_back({"fold", style::gutter_line});
  else if (evidence.spaces[page].gutter_loss > Length{})
    entries.push_back({"gutter loss", style::gutter_line});
  const bool creeps = !cover && evidence.bound.creep(block_page) > Length{};
  if (creeps && !evidence.press.creep_compensated) entries.push_back({"cut after creep", style::creep_line});
  return entries;
}

/// The key to the lines of the drawing, along the foot of the sheet.
void draw_key(Canvas &canvas, const std::vector<KeyEntry> &entries) {
  const Length y = style::sheet.height - style::margin + 1_mm;
  Length x = style::margin;
  for (const KeyEntry &entry : entries) {
    const Length line_y = y + style::label.leading / 2;
    canvas.line({x, line_y}, {x + 9_mm, line_y}, entry.stroke);
    canvas.text({x + 10.5_mm, y}, style::label, entry.name);
    x += 10.5_mm + canvas.width(style::label, entry.name) + 6_mm;
  }
}

/// How far the book has been gone through.
struct BookPlace {
  std::size_t frame = 0;      ///< index into Evidence::frames
  std::size_t block_page = 1; ///< counted in the order of the block

  void pass(const Page &page) {
    frame += page.frames.size();
    block_page += page.kind == PageKind::spread ? 2 : page.kind == PageKind::page;
  }
};

/// Builds the sheets one after the other.
class ProofWriter {
public:
  ProofWriter(const content::ProofContent &content, Checked &&checked, const Typesetter &type)
      : content_(content), checked_(std::move(checked)), type_(type), images_(checked_.copies.size()) {}

  Document write() {
    take_images();
    Front front = lay_out_front(content_, type_);
    document_.pages = std::move(front.sheets);
    document_.bookmarks.push_back({"What was found", 0, 0});
    if (!content_.surfaces.empty()) document_.bookmarks.push_back({"Pages", document_.pages.size(), 0});
    BookPlace place;
    for (const content::Surface &surface : content_.surfaces) {
      const Page &page = checked_.evidence.book.pages[surface.page];
      // A page that is meant to be empty needs no sheet unless something is said of it.
      if (!page.blank || !surface.marks.empty()) write_surface(surface, place);
      place.pass(page);
    }
    write_object();
    link_rows(front.rows);
    number_sheets(document_, type_, content_.title);
    return std::move(document_);
  }

private:
  void take_images() {
    for (std::size_t i = 0; i < checked_.copies.size(); ++i) {
      auto &copy = checked_.copies[i];
      if (!copy) continue;
      images_[i] = document_.images.size();
      document_.images.push_back({copy->width, copy->height, std::move(copy->jpeg)});
    }
  }

  void write_object() {
    document_.bookmarks.push_back({"The book as an object", document_.pages.size(), 0});
    for (DocumentPage &sheet : lay_out_object(content_.object, checked_.evidence, type_))
      document_.pages.push_back(std::move(sheet));
  }

  /// The drawing comes again on a further sheet when not all marks find room beside it.
  void write_surface(const content::Surface &surface, const BookPlace &place) {
    std::vector<const content::Mark *> marks;
    for (const std::size_t index : surface.marks) marks.push_back(&content_.marks[index]);
    document_.bookmarks.push_back({bookmark_title(surface), document_.pages.size(), 1});
    std::span<const content::Mark *const> left = marks;
    bool again = false;
    do {
      const std::size_t drawn = write_sheet(surface, place, left, again);
      for (const content::Mark *mark : left.first(drawn))
        sheet_of_[mark->number] = document_.pages.size() - 1;
      left = left.subspan(drawn);
      again = true;
    } while (!left.empty());
  }

  std::size_t write_sheet(const content::Surface &surface, const BookPlace &place,
                          std::span<const content::Mark *const> marks, bool again) {
    DocumentPage page;
    page.size = style::sheet;
    Canvas canvas(type_, page);
    const PageSpace &space = checked_.evidence.spaces[surface.page];
    const Scale scale = scale_on_sheet(space);
    draw_heading(canvas, surface, scale, again);
    draw_book_page(canvas, checked_, images_, surface.page, place.frame, scale);
    draw_creep(canvas, checked_.evidence, surface.page, place.block_page, scale);
    const Column column = column_beside(drawing_box(space, scale));
    if (marks.empty()) canvas.text({column.left, column.top}, style::body_aside, "Nothing was found here.");
    const std::size_t drawn = draw_marks(canvas, marks, space, scale, column);
    draw_key(canvas, key_of(checked_.evidence, surface.page, place.block_page));
    document_.pages.push_back(std::move(page));
    return drawn;
  }

  void draw_heading(Canvas &canvas, const content::Surface &surface, const Scale &scale, bool again) {
    const std::string name = again ? surface.name + ", continued" : surface.name;
    canvas.text({style::margin, style::margin}, style::heading, name);
    const Length after = style::margin + canvas.width(style::heading, name) + 4_mm;
    const std::string shown = scale.factor == 1
                                  ? std::string("shown at true size")
                                  : fmt::format("shown at {:.0f} %", std::floor(scale.factor * 100));
    canvas.text({after, style::margin + 5_pt}, style::label, shown);
  }

  static std::string bookmark_title(const content::Surface &surface) {
    if (surface.marks.empty()) return surface.name;
    return fmt::format("{} ({})", surface.name, content::count(surface.marks.size(), "mark", "marks"));
  }

  /// Each row leads to the sheet that explains its mark; one that is about no page has nowhere to lead.
  void link_rows(const std::vector<RowPlace> &rows) {
    for (const RowPlace &row : rows) {
      const auto sheet = sheet_of_.find(content_.marks[row.mark].number);
      if (sheet != sheet_of_.end()) document_.pages[row.sheet].links.push_back({row.area, sheet->second});
    }
  }

  const content::ProofContent &content_;
  Checked checked_;
  const Typesetter &type_;
  ImageOf images_;                      ///< by picture
  std::map<int, std::size_t> sheet_of_; ///< by the number of a mark
  Document document_;
};

} // namespace

Density copy_density(const Book &book) {
  double largest = 0;
  for (const Page &page : book.pages)
    largest = std::max(largest, scale_factor(page_space(book, PressSheet{}, page)));
  return style::drawing_density * largest;
}

Document proof_document(const content::ProofContent &content, Checked &&checked, const Typesetter &typesetter,
                        const ProofOptions &options) {
  Document document = ProofWriter(content, std::move(checked), typesetter).write();
  document.title = fmt::format("Layout proof of {}", content.title);
  document.subject = content.verdict;
  document.language = "en"; // of the proof's own words; the book's titles and captions may be in another
  document.fingerprint = options.fingerprint;
  document.made_at = options.made_at;
  return document;
}

} // namespace stoneproof::layout
