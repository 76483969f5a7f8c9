// The sheets about the book as an object. The only way in is lay_out_object; tested in
// tests/reports/layout/object_sheet.test.cpp.
#include "reports/layout/object_sheet.h"

#include "reports/content/figures.h"
#include "reports/layout/flat_cover.h"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Length bottom = style::sheet.height - style::foot;
constexpr Length right = style::sheet.width - style::margin;

struct Cell {
  Length left, width;
};
// The table of what was reckoned.
constexpr Cell name_cell{style::margin, 30_mm}, figure_cell{46_mm, 48_mm}, how_cell{97_mm, 90_mm},
    source_cell{192_mm, 91_mm};
// Small tables: signatures, and creep.
constexpr Length small_table_width = 84_mm;
constexpr Length small_cells[] = {0_mm, 24_mm, 44_mm, 66_mm};

class ObjectWriter {
public:
  ObjectWriter(const content::ObjectWords &words, const Evidence &evidence, const Typesetter &type)
      : words_(words), evidence_(evidence), type_(type) {}

  std::vector<DocumentPage> write() {
    begin_sheet("The book as an object");
    reckonings();
    if (evidence_.bound.cover) {
      begin_sheet("The cover laid flat, and how the pages are gathered");
      const Length left = right - small_table_width;
      flat_cover({style::margin, y_, left - style::margin - 10_mm, bottom - y_});
      small_tables(left);
    } else {
      y_ += 4_mm;
      small_tables(style::margin);
    }
    return std::move(sheets_);
  }

private:
  Canvas canvas() { return {type_, sheets_.back()}; }

  void begin_sheet(std::string_view heading) {
    sheets_.emplace_back();
    sheets_.back().size = style::sheet;
    canvas().as(Role::heading2).text({style::margin, style::margin}, style::heading, heading);
    y_ = style::head;
  }

  void flat_cover(const Rect &room) {
    Canvas on = canvas();
    const auto figure = on.begin(
        Role::figure, "The cover laid flat with its measures, which the table before tells in words.");
    draw_flat_cover(on, evidence_, *evidence_.bound.cover, room);
  }

  void reckonings() {
    Canvas on = canvas();
    reckonings_head(on);
    y_ += style::label.leading + 0.5_mm;
    on.line({style::margin, y_}, {right, y_}, style::trim_line);
    y_ += 1.5_mm;
    for (const content::Reckoning &reckoning : words_.reckonings) reckoning_row(reckoning);
    if (!words_.unknown.empty())
      y_ = canvas()
               .as(Role::paragraph)
               .lines({style::margin, y_ + 1_mm}, style::body_aside,
                      canvas().wrap(style::body_aside, right - style::margin, words_.unknown));
  }

  void reckonings_head(Canvas &on) {
    const auto row = on.begin(Role::row);
    const auto head = [&](const Cell &cell, std::string_view words) {
      on.as(Role::column_header).text({cell.left, y_}, style::label, words);
    };
    head(name_cell, "");
    head(figure_cell, "Reckoned");
    head(how_cell, "From what");
    head(source_cell, "Formula, and where it comes from");
  }

  void reckoning_row(const content::Reckoning &reckoning) {
    const auto broken = [&](const TypeStyle &style, const Cell &cell, const std::string &text) {
      return canvas().wrap(style, cell.width, content::with_figures_kept_whole(text));
    };
    const auto figure = broken(style::label_strong, figure_cell, reckoning.figure);
    const auto how = broken(style::body, how_cell, reckoning.how);
    const auto source = broken(style::body_aside, source_cell, reckoning.source);
    const Length height = std::max(height_of(style::label_strong, figure.size()),
                                   height_of(style::body, std::max(how.size(), source.size())));
    if (y_ + height > bottom) begin_sheet("The book as an object, continued");
    Canvas on = canvas();
    const auto row = on.begin(Role::row);
    on.as(Role::row_header).text({name_cell.left, y_}, style::label_strong, reckoning.name);
    on.as(Role::cell).lines({figure_cell.left, y_}, style::label_strong, figure);
    on.as(Role::cell).lines({how_cell.left, y_}, style::body, how);
    on.as(Role::cell).lines({source_cell.left, y_}, style::body_aside, source);
    y_ += height + 1.3_mm;
    on.line({style::margin, y_}, {right, y_}, style::row_rule);
    y_ += 1.3_mm;
  }

  /// Signatures, then creep; what finds no room goes on under the same heads on further sheets.
  void small_tables(Length left) {
    if (!words_.signatures.empty()) small_head(left, {"Signature", "Size", "Pages", "Blanks"});
    for (const content::SignatureRow &row : words_.signatures)
      left = small_row(left, {row.signatures, row.size, row.pages, row.blanks});
    if (words_.creep.empty()) return;
    y_ += 5_mm;
    small_head(left, {"Sheet", "Shift", "Pages", ""});
    for (const content::CreepRow &row : words_.creep)
      left = small_row(left, {row.sheet, row.shift, row.pages, ""});
  }

  using Words = std::array<std::string, 4>;

  void small_head(Length left, const Words &words) {
    Canvas on = canvas();
    small_cells_at(on, left, style::label, words, Role::column_header);
    y_ += style::label.leading + 0.5_mm;
    on.line({left, y_}, {left + small_table_width, y_}, style::trim_line);
    y_ += 1_mm;
  }

  /// Gives where the table's left edge is now.
  Length small_row(Length left, const Words &words) {
    if (y_ + style::label_strong.leading > bottom) {
      begin_sheet("How the pages are gathered, continued");
      left = style::margin;
    }
    Canvas on = canvas();
    small_cells_at(on, left, style::label_strong, words, Role::cell);
    y_ += style::label_strong.leading + 0.6_mm;
    on.line({left, y_}, {left + small_table_width, y_}, style::row_rule);
    y_ += 0.6_mm;
    return left;
  }

  void small_cells_at(Canvas &on, Length left, const TypeStyle &style, const Words &words, Role role) {
    const auto row = on.begin(Role::row);
    for (std::size_t i = 0; i < words.size(); ++i)
      on.as(role).text({left + small_cells[i], y_}, style, words[i]);
  }

  const content::ObjectWords &words_;
  const Evidence &evidence_;
  const Typesetter &type_;
  std::vector<DocumentPage> sheets_;
  Length y_;
};

} // namespace

std::vector<DocumentPage> lay_out_object(const content::ObjectWords &words, const Evidence &evidence,
                                         const Typesetter &type) {
  return ObjectWriter(words, evidence, type).write();
}

} // namespace stoneproof::layout
