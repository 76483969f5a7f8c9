// The whole proof, part after part. The only ways in are the functions of proof.h; tested in
// tests/reports/layout.
#include "reports/layout/proof.h"

#include "engine/rules/print_page.h"
#include "reports/content/figures.h"
#include "reports/layout/column.h"
#include "reports/layout/creep_mark.h"
#include "reports/layout/drawing.h"
#include "reports/layout/findings_table.h"
#include "reports/layout/foot.h"
#include "reports/layout/front.h"
#include "reports/layout/method_sheets.h"
#include "reports/layout/object_sheet.h"
#include "reports/layout/page_index.h"
#include "reports/layout/picture_sheets.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

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
  const auto key = canvas.begin(Role::paragraph);
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

/// Builds the sheets one after the other; the first one last, as it tells where the others are.
class ProofWriter {
public:
  ProofWriter(const content::ProofContent &content, Checked &&checked, const Typesetter &type, bool own_pages)
      : content_(content), checked_(std::move(checked)), type_(type), own_pages_(own_pages),
        images_(checked_.copies.size()), patches_(checked_.copies.size()) {}

  Document write() {
    take_images();
    document_.pages.emplace_back(); // the first sheet
    document_.bookmarks.push_back({"The verdict", 0, 0});
    FindingsTable table = lay_out_findings(content_, type_);
    const std::size_t first_row = add("What was found", std::move(table.sheets));
    add("What was mended", lay_out_mended(content_, type_));
    PageIndex index = lay_out_index(content_, checked_, images_, type_);
    first_index_ = add("Pages at a glance", std::move(index.sheets));
    index_ = std::move(index.places);
    write_pages();
    add("The book as an object", lay_out_object(content_.object, checked_.evidence, type_));
    PictureSheets pictures = lay_out_pictures(content_, checked_, images_, patches_, type_);
    const std::size_t first_picture = add("The pictures", std::move(pictures.sheets));
    add("The press sheet", lay_out_press(content_, type_));
    add("How it was checked", lay_out_method(content_.method, type_));
    document_.pages.front() = lay_out_front(content_, sections_, sheet_of_, type_);
    link_rows(table.rows, first_row);
    link_index();
    link_pictures(pictures, first_picture);
    number_sheets(document_, type_, content_.title);
    return std::move(document_);
  }

private:
  void take_images() {
    for (std::size_t i = 0; i < checked_.copies.size(); ++i) {
      if (auto &copy = checked_.copies[i]) images_[i] = take(*copy);
      if (auto &patch = checked_.patches[i]) patches_[i] = take(patch->copy);
    }
  }

  /// Gives where the image stands in the document.
  std::size_t take(SmallCopy &copy) {
    document_.images.push_back({copy.width, copy.height, std::move(copy.jpeg)});
    return document_.images.size() - 1;
  }

  /// A part of the proof that is named on its first sheet; gives where its sheets begin.
  std::size_t add(std::string title, std::vector<DocumentPage> sheets) {
    const std::size_t first = document_.pages.size();
    if (!sheets.empty()) begin_section(std::move(title));
    std::move(sheets.begin(), sheets.end(), std::back_inserter(document_.pages));
    return first;
  }

  void begin_section(std::string title) {
    document_.bookmarks.push_back({title, document_.pages.size(), 0});
    sections_.push_back({std::move(title), document_.pages.size()});
  }

  void write_pages() {
    sheet_of_surface_.assign(content_.surfaces.size(), std::nullopt);
    if (!content_.surfaces.empty()) begin_section("Page by page");
    BookPlace place;
    for (const content::Surface &surface : content_.surfaces) {
      const Page &page = checked_.evidence.book.pages[surface.page];
      // An empty page needs no sheet unless something is said of it.
      if (!stays_empty(page) || !surface.marks.empty()) {
        sheet_of_surface_[surface.page] = document_.pages.size();
        write_surface(surface, place);
      }
      place.pass(page);
    }
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
        sheet_of_[static_cast<std::size_t>(mark->number) - 1] = document_.pages.size() - 1;
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
    {
      const auto figure = canvas.begin(Role::figure, "Drawing of the page: " + surface.name);
      draw_book_page(canvas, checked_, images_, surface.page, place.frame, scale, own_pages_);
    }
    draw_creep(canvas, checked_.evidence, surface.page, place.block_page, scale);
    const Column column = column_beside(drawing_box(space, scale));
    if (marks.empty())
      canvas.as(Role::paragraph)
          .text({column.left, column.top}, style::body_aside, "Nothing was found here.");
    const LeaderRoom around = leader_room(checked_.evidence, surface.page, place.frame, scale);
    const std::size_t drawn = draw_marks(canvas, marks, space, scale, around, column);
    draw_key(canvas, key_of(checked_.evidence, surface.page, place.block_page));
    for (std::size_t i = 0; i < drawn; ++i) // the words of a mark begin beside its note
      titles_.push_back({static_cast<std::size_t>(marks[i]->number) - 1,
                         document_.pages.size(),
                         {column.left, page.notes[i].area.y, column.width, style::label_strong.leading}});
    document_.pages.push_back(std::move(page));
    return drawn;
  }

  void draw_heading(Canvas &canvas, const content::Surface &surface, const Scale &scale, bool again) {
    const std::string name = again ? surface.name + ", continued" : surface.name;
    canvas.as(Role::heading2).text({style::margin, style::margin}, style::heading, name);
    const Length after = style::margin + canvas.width(style::heading, name) + 4_mm;
    canvas.page().links.push_back(
        {{style::margin, style::margin, after - style::margin, style::heading.leading},
         first_index_ + index_[surface.page].sheet});
    const std::string shown = scale.factor == 1
                                  ? std::string("shown at true size")
                                  : fmt::format("shown at {:.0f} %", std::floor(scale.factor * 100));
    canvas.as(Role::paragraph).text({after, style::margin + 5_pt}, style::label, shown);
  }

  static std::string bookmark_title(const content::Surface &surface) {
    if (surface.marks.empty()) return surface.name;
    return fmt::format("{} ({})", surface.name, content::count(surface.marks.size(), "mark", "marks"));
  }

  /// Each row leads to the sheet that explains its mark, and that back; one that is about no page has nowhere
  /// to lead.
  void link_rows(const std::vector<RowPlace> &rows, std::size_t first) {
    std::vector<std::size_t> sheet_of_row(content_.marks.size());
    for (const RowPlace &row : rows) {
      sheet_of_row[row.mark] = first + row.sheet;
      const auto sheet = sheet_of_.find(row.mark);
      if (sheet != sheet_of_.end())
        document_.pages[first + row.sheet].links.push_back({row.area, sheet->second});
    }
    for (const RowPlace &title : titles_)
      document_.pages[title.sheet].links.push_back({title.area, sheet_of_row[title.mark]});
  }

  void link_index() {
    for (const IndexPlace &place : index_)
      if (const auto sheet = sheet_of_surface_[place.surface])
        document_.pages[first_index_ + place.sheet].links.push_back({place.area, *sheet});
  }

  /// A use leads to its page, and a picture on its page to what is told of it.
  void link_pictures(const PictureSheets &pictures, std::size_t first) {
    for (const UsePlace &use : pictures.uses)
      if (const auto sheet = sheet_of_surface_[use.page])
        document_.pages[first + use.sheet].links.push_back({use.area, *sheet});
    for (const PlacedFrame &placed : checked_.evidence.frames) {
      const auto sheet = sheet_of_surface_[placed.page];
      if (!placed.picture || !sheet) continue;
      const PageSpace &space = checked_.evidence.spaces[placed.page];
      if (const auto shown = shared_part(placed.box, space.bleed))
        document_.pages[*sheet].links.push_back(
            {scale_on_sheet(space)(*shown), first + pictures.places[*placed.picture].sheet});
    }
  }

  const content::ProofContent &content_;
  Checked checked_;
  const Typesetter &type_;
  bool own_pages_;           ///< of the finished PDF are shown
  ImageOf images_, patches_; ///< by picture
  SheetOfMark sheet_of_;
  std::vector<RowPlace> titles_; ///< of the marks beside the drawings, on the document's pages
  std::vector<Section> sections_;
  std::vector<IndexPlace> index_;
  std::size_t first_index_ = 0;
  std::vector<std::optional<std::size_t>> sheet_of_surface_; ///< the first, by page of the book
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
  Document document = ProofWriter(content, std::move(checked), typesetter, options.own_pages).write();
  document.foreign_pages = options.own_pages;
  document.title = fmt::format("Layout proof of {}", content.title);
  document.subject = content.verdict;
  document.language = "en"; // of the proof's own words; the book's titles and captions may be in another
  document.fingerprint = options.fingerprint;
  document.made_at = options.made_at;
  return document;
}

} // namespace stoneproof::layout
