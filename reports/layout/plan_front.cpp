// The front sheets of the plan. The only way in is lay_out_plan_front; tested in
// tests/reports/layout/plan.test.cpp.
#include "reports/layout/plan_front.h"

#include "reports/content/figures.h"

#include <algorithm>

namespace stoneproof::layout {

namespace {

using namespace literals;

// The table of people: figures stand to the right of their cells.
constexpr Length name_width = 92_mm;
struct FigureColumn {
  std::string_view name;
  Length right;
};
constexpr FigureColumn flatbed_column{"Flatbed scanner", 140_mm}, film_column{"Film", 161_mm},
    camera_column{"Camera", 183_mm}, open_column{"No plan yet", 210_mm},
    ready_column{"Nothing to do", 244_mm}, bytes_column{"Files", 283_mm};

// The table of what must be decided.
struct TextColumn {
  std::string_view name;
  Length left, width;
};
constexpr TextColumn picture_column{"Picture and whose it is", style::margin, 56_mm},
    where_column{"Where", 73_mm, 40_mm}, what_column{"What stands in the way", 116_mm, 80_mm},
    remedy_column{"What can be done", 199_mm, 84_mm};

class FrontWriter {
public:
  FrontWriter(Sheets &sheets, const content::PlanContent &content) : sheets_(sheets), content_(content) {}

  std::vector<PersonRow> write() {
    sheets_.begin();
    head();
    people_head();
    for (const content::PersonLine &line : content_.table) person(line);
    sheets_.y += 4_mm;
    for (const std::string *text : {&content_.film, &content_.unused}) aside(*text);
    if (!content_.troubles.empty()) troubles();
    return std::move(rows_);
  }

private:
  void head() {
    Canvas on = sheets_.canvas();
    on.as(Role::paragraph).text({style::margin, sheets_.y}, style::plan_label, "Scanning plan");
    sheets_.y += style::plan_label.leading + 1_mm;
    sheets_.two_lines(style::title, content_.title, Role::heading1);
    sheets_.paragraph(style::plan_aside, content_.job);
    sheets_.y += 4_mm;
    sheets_.paragraph(style::verdict, content_.verdict);
    if (!content_.counts.empty()) sheets_.paragraph(style::plan_body, content_.counts);
    sheets_.y += 2_mm;
    if (!content_.sizes.empty()) sheets_.paragraph(style::plan_aside, content_.sizes);
    sheets_.paragraph(style::plan_aside, content_.press);
    sheets_.y += 6_mm;
  }

  void people_head() {
    if (content_.table.empty()) return;
    Canvas on = sheets_.canvas();
    const auto row = on.begin(Role::row);
    on.as(Role::column_header).text({style::margin, sheets_.y}, style::plan_label, "Who has originals");
    for (const FigureColumn &column :
         {flatbed_column, film_column, camera_column, open_column, ready_column, bytes_column})
      on.as(Role::column_header).text_to_right({column.right, sheets_.y}, style::plan_label, column.name);
    sheets_.y += style::plan_label.leading + 0.8_mm;
    sheets_.rule(style::trim_line);
    sheets_.y += 1.4_mm;
  }

  void person(const content::PersonLine &line) {
    const Length height = style::plan_body.leading + 2.4_mm;
    if (!sheets_.has_room(height)) {
      sheets_.begin();
      people_head();
    }
    Canvas on = sheets_.canvas();
    const Length top = sheets_.y;
    const auto row = on.begin(Role::row);
    on.as(Role::row_header)
        .text({style::margin, top}, style::plan_strong,
              on.shortened(style::plan_strong, name_width, line.name));
    const auto figure = [&](const FigureColumn &column, const std::string &text) {
      on.as(Role::cell).text_to_right({column.right, top}, style::plan_body, text);
    };
    figure(flatbed_column, line.flatbed);
    figure(film_column, line.film);
    figure(camera_column, line.camera);
    figure(open_column, line.open);
    figure(ready_column, line.ready);
    figure(bytes_column, line.bytes);
    sheets_.y = top + height - 1.2_mm;
    sheets_.rule(style::row_rule);
    sheets_.y += 1.2_mm;
    rows_.push_back({sheets_.pages.size() - 1, {style::margin, top, Sheets::width, height}});
  }

  void aside(const std::string &text) {
    const auto lines =
        sheets_.type_lines(style::plan_body, Sheets::width, content::with_figures_kept_whole(text));
    sheets_.broken_paragraph(style::plan_body, lines, [&] { sheets_.begin(); });
    if (!lines.empty()) sheets_.y += 2_mm;
  }

  void troubles_head(std::string_view heading) {
    Canvas on = sheets_.canvas();
    on.as(Role::heading2).text({style::margin, sheets_.y}, style::heading, heading);
    sheets_.y += style::heading.leading + 2_mm;
    const auto row = on.begin(Role::row);
    for (const TextColumn &column : {picture_column, where_column, what_column, remedy_column})
      on.as(Role::column_header).text({column.left, sheets_.y}, style::plan_label, column.name);
    sheets_.y += style::plan_label.leading + 0.8_mm;
    sheets_.rule(style::trim_line);
    sheets_.y += 1.4_mm;
  }

  void troubles() {
    sheets_.y += 4_mm;
    const Length head = style::heading.leading + style::plan_label.leading + 4.2_mm;
    if (!sheets_.has_room(head + height_of(style::plan_body, 4))) sheets_.begin();
    troubles_head("To decide before anybody scans");
    for (const content::PlanTrouble &trouble : content_.troubles) write_trouble(trouble);
  }

  void write_trouble(const content::PlanTrouble &trouble) {
    const auto broken = [&](const TypeStyle &style, const TextColumn &column, const std::string &text) {
      return sheets_.type_lines(style, column.width, content::with_figures_kept_whole(text));
    };
    const auto name = sheets_.few_lines(style::plan_strong, picture_column.width, trouble.name);
    const auto owner = sheets_.few_lines(style::plan_label, picture_column.width, trouble.owner);
    const auto where = sheets_.few_lines(style::plan_body, where_column.width, trouble.where);
    const auto what = broken(style::plan_body, what_column, trouble.what);
    const auto remedy = broken(style::plan_body, remedy_column, trouble.remedy);
    const Length names =
        height_of(style::plan_strong, name.size()) + height_of(style::plan_label, owner.size());
    const Length height =
        std::max(names, height_of(style::plan_body, std::max({where.size(), what.size(), remedy.size()})));
    if (!sheets_.has_room(height + 2.8_mm)) {
      sheets_.begin();
      troubles_head("To decide before anybody scans, continued");
    }
    Canvas on = sheets_.canvas();
    const Length top = sheets_.y;
    const auto row = on.begin(Role::row);
    sheets_.name_cell(picture_column.left, name, owner);
    on.as(Role::cell).lines({where_column.left, top}, style::plan_body, where);
    on.as(Role::cell).lines({what_column.left, top}, style::plan_body, what);
    on.as(Role::cell).lines({remedy_column.left, top}, style::plan_body, remedy);
    sheets_.y = top + height + 1.4_mm;
    sheets_.rule(style::row_rule);
    sheets_.y += 1.4_mm;
  }

  Sheets &sheets_;
  const content::PlanContent &content_;
  std::vector<PersonRow> rows_;
};

} // namespace

std::vector<PersonRow> lay_out_plan_front(Sheets &sheets, const content::PlanContent &content) {
  return FrontWriter(sheets, content).write();
}

} // namespace stoneproof::layout
