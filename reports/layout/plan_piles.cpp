// The sheets of one person. The only way in is lay_out_person; tested in
// tests/reports/layout/plan.test.cpp.
#include "reports/layout/plan_piles.h"

#include "reports/content/figures.h"

#include <algorithm>

namespace stoneproof::layout {

namespace {

using namespace literals;

struct Cell {
  std::string_view name;
  Length left, width;
};
constexpr Length box = 4.2_mm; ///< to tick
constexpr Cell name_cell{"Original, and the name of its file", 22_mm, 66_mm},
    kind_cell{"What it is", 91_mm, 48_mm}, use_cell{"Printed in the book", 142_mm, 54_mm},
    pixel_cell{"Pixels that come out", 199_mm, 54_mm};
constexpr std::string_view size_name = "Size of file";
constexpr Length remark_left = kind_cell.left, remark_width = Sheets::right - remark_left;

/// One row broken into lines.
struct Row {
  std::vector<std::string> name, file, kind, uses, pixels, remark;
  Length height;
};

class PersonWriter {
public:
  PersonWriter(Sheets &sheets, const content::PersonPlan &person) : sheets_(sheets), person_(person) {}

  std::vector<std::size_t> write() {
    begin_sheet(false);
    std::vector<std::size_t> begins;
    for (const content::PlanPile &pile : person_.piles) {
      write_pile(pile);
      begins.push_back(last_begun_);
    }
    if (!person_.nothing_to_do.empty()) nothing_to_do();
    return begins;
  }

private:
  void begin_sheet(bool again) {
    sheets_.begin();
    Canvas on = sheets_.canvas();
    on.as(Role::paragraph).text({style::margin, sheets_.y}, style::plan_label, "Scanning plan for");
    sheets_.y += style::plan_label.leading + 0.5_mm;
    if (again) {
      constexpr std::string_view more = ", continued";
      const Length room = Sheets::width - on.width(style::heading, more);
      on.as(Role::heading2)
          .text({style::margin, sheets_.y}, style::heading,
                on.shortened(style::heading, room, person_.name) + std::string(more));
      sheets_.y += style::heading.leading;
    } else {
      sheets_.two_lines(style::title, person_.name, Role::heading2);
    }
    if (!again) {
      if (!person_.contact.empty())
        sheets_.paragraph(style::plan_aside, on.shortened(style::plan_aside, Sheets::width, person_.contact));
      if (!person_.summary.empty()) sheets_.paragraph(style::plan_body, person_.summary);
    }
    sheets_.y += again ? 3_mm : 6_mm;
  }

  void write_pile(const content::PlanPile &pile) {
    const auto how = sheets_.type_lines(style::plan_aside, Sheets::width, pile.how);
    const Length head = style::pile_setting.leading + height_of(style::plan_aside, how.size()) + head_height;
    if (!sheets_.has_room(head + broken(pile.rows.front()).height)) begin_sheet(true);
    last_begun_ = sheets_.pages.size() - 1;
    pile_head(pile, false);
    sheets_.y =
        sheets_.canvas().as(Role::paragraph).lines({style::margin, sheets_.y}, style::plan_aside, how);
    table_head();
    for (const content::PlanRow &row : pile.rows) {
      const Row lines = broken(row);
      if (!sheets_.has_room(lines.height)) {
        begin_sheet(true);
        pile_head(pile, true);
        table_head();
      }
      write_row(row, lines);
    }
    sheets_.y += 5_mm;
  }

  void pile_head(const content::PlanPile &pile, bool again) {
    Canvas on = sheets_.canvas();
    const auto heading = on.begin(Role::heading3);
    Length x = style::margin;
    if (!pile.setting.empty()) {
      on.text({x, sheets_.y}, style::pile_setting, pile.setting);
      x += on.width(style::pile_setting, pile.setting) + 5_mm;
    }
    on.text({x, sheets_.y}, style::pile_device, again ? pile.device + ", continued" : pile.device);
    if (!again) on.text_to_right({Sheets::right, sheets_.y + 5_pt}, style::plan_body, pile.amount);
    sheets_.y += style::pile_setting.leading;
  }

  void table_head() {
    Canvas on = sheets_.canvas();
    const auto row = on.begin(Role::row);
    sheets_.y += 1_mm;
    for (const Cell &cell : {name_cell, kind_cell, use_cell, pixel_cell})
      on.as(Role::column_header).text({cell.left, sheets_.y}, style::plan_label, cell.name);
    on.as(Role::column_header).text_to_right({Sheets::right, sheets_.y}, style::plan_label, size_name);
    sheets_.y += style::plan_label.leading + 0.8_mm;
    sheets_.rule(style::trim_line);
    sheets_.y += 1.6_mm;
  }

  Row broken(const content::PlanRow &row) {
    const auto kept = content::with_figures_kept_whole;
    Row lines;
    lines.name = sheets_.few_lines(style::plan_strong, name_cell.width, row.name);
    lines.file = sheets_.few_lines(style::plan_label, name_cell.width, row.file);
    lines.kind = sheets_.type_lines(style::plan_body, kind_cell.width, kept(row.original));
    for (const std::string &use : row.uses)
      for (std::string &line : sheets_.type_lines(style::plan_body, use_cell.width, kept(use)))
        lines.uses.push_back(std::move(line));
    lines.pixels = sheets_.type_lines(style::plan_body, pixel_cell.width, kept(row.pixels));
    lines.remark = sheets_.type_lines(style::plan_aside, remark_width, kept(row.remark));
    const std::size_t tallest = std::max({lines.kind.size(), lines.uses.size(), lines.pixels.size()});
    const Length words =
        height_of(style::plan_body, tallest) + height_of(style::plan_aside, lines.remark.size());
    const Length names =
        height_of(style::plan_strong, lines.name.size()) + height_of(style::plan_label, lines.file.size());
    lines.height = std::max(names, words) + 3_mm;
    return lines;
  }

  void write_row(const content::PlanRow &row, const Row &lines) {
    Canvas on = sheets_.canvas();
    const Length top = sheets_.y;
    const auto scope = on.begin(Role::row);
    on.box({style::margin, top + 0.3_mm, box, box}, {}, style::trim_line);
    sheets_.name_cell(name_cell.left, lines.name, lines.file);
    on.as(Role::cell).lines({kind_cell.left, top}, style::plan_body, lines.kind);
    on.as(Role::cell).lines({use_cell.left, top}, style::plan_body, lines.uses);
    on.as(Role::cell).lines({pixel_cell.left, top}, style::plan_body, lines.pixels);
    const std::size_t tallest = std::max({lines.kind.size(), lines.uses.size(), lines.pixels.size()});
    {
      const auto cell = on.begin(Role::cell);
      on.text_to_right({Sheets::right, top}, style::plan_body, row.bytes);
      on.lines({remark_left, top + height_of(style::plan_body, tallest)}, style::plan_aside, lines.remark);
    }
    sheets_.y = top + lines.height - 1.5_mm;
    sheets_.rule(style::row_rule);
    sheets_.y += 1.5_mm;
  }

  void nothing_to_do() {
    const auto lines = sheets_.type_lines(style::plan_aside, Sheets::width, person_.nothing_to_do);
    sheets_.broken_paragraph(style::plan_aside, lines, [&] { begin_sheet(true); });
  }

  static constexpr Length head_height = style::plan_label.leading + 3.4_mm; ///< of table_head

  Sheets &sheets_;
  const content::PersonPlan &person_;
  std::size_t last_begun_ = 0; ///< sheet on which the pile begins
};

} // namespace

std::vector<std::size_t> lay_out_person(Sheets &sheets, const content::PersonPlan &person) {
  return PersonWriter(sheets, person).write();
}

} // namespace stoneproof::layout
