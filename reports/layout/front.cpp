// The front sheets. The only way in is lay_out_front; tested in tests/reports/layout.
#include "reports/layout/front.h"

#include "reports/content/figures.h"
#include "reports/content/sentences.h"
#include "reports/layout/column.h"

#include <fmt/format.h>

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Length table_bottom = style::sheet.height - style::foot;
constexpr Length table_width = style::sheet.width - style::margin * 2;

/// The columns of the table: what stands over them, where they begin, how wide they are.
struct TableColumn {
  std::string_view name;
  Length left, width;
};
constexpr TableColumn number_column{"No.", style::margin, 9_mm};
constexpr TableColumn grade_column{"Grade", 27_mm, 13_mm};
constexpr TableColumn page_column{"Page and frame", 42_mm, 26_mm};
constexpr TableColumn subject_column{"Picture and whose it is", 70_mm, 43_mm};
constexpr TableColumn message_column{"What was found", 115_mm, 76_mm};
constexpr TableColumn remedy_column{"What to do", 196_mm, 87_mm};
constexpr const TableColumn *table_columns[] = {&number_column,  &grade_column,   &page_column,
                                                &subject_column, &message_column, &remedy_column};

class FrontWriter {
public:
  FrontWriter(const content::ProofContent &content, const Typesetter &type)
      : content_(content), type_(type) {}

  Front write() {
    begin_sheet();
    head();
    if (!content_.gravest_first.empty()) table_head("What was found, most grave first");
    for (const std::size_t index : content_.gravest_first) row(index);
    return std::move(front_);
  }

private:
  Canvas canvas() { return {type_, front_.sheets.back()}; }

  void begin_sheet() {
    front_.sheets.emplace_back();
    front_.sheets.back().size = style::sheet;
    y_ = style::margin;
  }

  void head() {
    Canvas on = canvas();
    on.text({style::margin, y_}, style::label, "Layout proof");
    y_ += style::label.leading + 1_mm;
    y_ = on.lines({style::margin, y_}, style::title, title_lines(on));
    y_ = on.lines({style::margin, y_}, style::body_aside,
                  on.wrap(style::body_aside, table_width, content_.job));
    y_ += 4_mm;
    y_ =
        on.lines({style::margin, y_}, style::verdict, on.wrap(style::verdict, table_width, content_.verdict));
    if (!content_.round.empty())
      y_ = on.lines({style::margin, y_}, style::body, on.wrap(style::body, table_width, content_.round));
    y_ += 2_mm;
    counts(on);

    y_ = on.lines({style::margin, y_}, style::body_aside,
                  on.wrap(style::body_aside, table_width, content_.press));
    y_ += 5_mm;
  }

  /// A title that runs on is cut short: the verdict must stay on the first sheet.
  std::vector<std::string> title_lines(const Canvas &on) const {
    constexpr std::size_t most = 2;
    std::vector<std::string> lines = on.wrap(style::title, table_width, content_.title);
    if (lines.size() <= most) return lines;
    lines.resize(most);
    lines.back() = on.shortened(style::title, table_width, lines.back() + " …");
    return lines;
  }

  /// Doubles as the key to the lines and tags of the marks.
  void counts(Canvas &on) {
    struct Block {
      std::string_view one, many, meaning;
    };
    constexpr Block blocks[] = {{"hold", "holds", "must be mended before printing"},
                                {"query", "queries", "somebody must decide"},
                                {"note", "notes", "good to know"}};
    Length x = style::margin;
    for (std::size_t grade = 0; grade < 3; ++grade) {
      const std::string words = content::count(content_.counts[grade], blocks[grade].one, blocks[grade].many);
      const std::string meaning = fmt::format("{}", blocks[grade].meaning);
      const Length line_y = y_ + style::label_strong.leading / 2;
      on.line({x, line_y}, {x + 9_mm, line_y}, style::grade_line(static_cast<Grade>(grade)));
      on.text({x + 11_mm, y_}, style::label_strong, words);
      const Length after = x + 11_mm + on.width(style::label_strong, words) + 2_mm;
      on.text({after, y_ + 0.5_pt}, style::label, meaning);
      x = after + on.width(style::label, meaning) + 9_mm;
    }
    y_ += style::label_strong.leading + 3_mm;
  }

  void table_head(std::string_view heading) {
    Canvas on = canvas();
    on.text({style::margin, y_}, style::heading, heading);
    y_ += style::heading.leading + 2_mm;
    for (const TableColumn *column : table_columns) on.text({column->left, y_}, style::label, column->name);
    y_ += style::label.leading + 0.5_mm;
    on.line({style::margin, y_}, {style::margin + table_width, y_}, style::trim_line);
    y_ += 1.2_mm;
  }

  void row(std::size_t index) {
    const content::Mark &mark = content_.marks[index];
    const auto broken = [&](const TypeStyle &style, const TableColumn &column, std::string_view text) {
      return canvas().wrap(style, column.width, text);
    };
    const auto title = broken(style::label_strong, message_column, mark.title);
    const auto message = broken(style::body, message_column, content::with_figures_kept_whole(mark.message));
    const auto remedy = broken(style::body, remedy_column, content::with_figures_kept_whole(mark.remedy));
    // Three lines of a very long file name tell it apart; its middle is left out.
    const auto subject = broken(style::label, subject_column,
                                canvas().shortened(style::label, subject_column.width * 2.7, mark.subject));
    const auto frame = broken(style::label, page_column, mark.frame);
    const auto owner = broken(style::label, subject_column, mark.owner);
    const Length height =
        std::max({height_of(style::label_strong, title.size()) + height_of(style::body, message.size()),
                  height_of(style::body, remedy.size()),
                  style::label_strong.leading + height_of(style::label, frame.size()),
                  height_of(style::label, subject.size() + owner.size())});
    if (y_ + height > table_bottom) {
      begin_sheet();
      table_head("What was found, continued");
    }
    Canvas on = canvas();
    const Length top = y_;
    draw_tag(on, {number_column.left, top}, mark.number, mark.grade);
    on.text({grade_column.left, top}, style::label_strong, content::grade_name(mark.grade));
    on.text({page_column.left, top}, style::label_strong, mark.page);
    on.lines({page_column.left, top + style::label_strong.leading}, style::label, frame);
    const Length owner_top = on.lines({subject_column.left, top + 0.5_pt}, style::label, subject);
    on.lines({subject_column.left, owner_top}, style::label, owner);
    const Length message_top = on.lines({message_column.left, top}, style::label_strong, title);
    on.lines({message_column.left, message_top}, style::body, message);
    on.lines({remedy_column.left, top}, style::body, remedy);
    y_ = top + height + 1.2_mm;
    on.line({style::margin, y_}, {style::margin + table_width, y_}, style::row_rule);
    if (!mark.surface) // no drawing carries its note
      on.page().notes.push_back(note_of(mark, {number_column.left, top, tag_size.width, tag_size.height}));
    front_.rows.push_back({index, front_.sheets.size() - 1, {style::margin, top, table_width, y_ - top}});
    y_ += 1.2_mm;
  }

  const content::ProofContent &content_;
  const Typesetter &type_;
  Front front_;
  Length y_;
};

} // namespace

Front lay_out_front(const content::ProofContent &content, const Typesetter &type) {
  return FrontWriter(content, type).write();
}

} // namespace stoneproof::layout
