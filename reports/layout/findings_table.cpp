// The tables of findings and of what was mended. The only ways in are the functions of findings_table.h;
// tested in tests/reports/layout/proof_parts.test.cpp.
#include "reports/layout/findings_table.h"

#include "reports/content/figures.h"
#include "reports/content/sentences.h"
#include "reports/layout/column.h"

#include <fmt/format.h>

#include <span>

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

// The table of what was mended.
constexpr TableColumn mended_page{"Page", style::margin, 26_mm};
constexpr TableColumn mended_grade{"Was a", 42_mm, 14_mm};
constexpr TableColumn mended_title{"Fault", 58_mm, 60_mm};
constexpr TableColumn mended_message{"What was found then", 122_mm, 161_mm};
constexpr const TableColumn *mended_columns[] = {&mended_page, &mended_grade, &mended_title, &mended_message};

class TableWriter {
public:
  TableWriter(const content::ProofContent &content, const Typesetter &type)
      : content_(content), type_(type) {}

  FindingsTable write() {
    if (!content_.gravest_first.empty()) {
      begin_sheet();
      table_head("What was found, most grave first");
    }
    for (const std::size_t index : content_.gravest_first) row(index);
    return std::move(table_);
  }

  std::vector<DocumentPage> write_mended() {
    if (!content_.mended.empty()) mended();
    return std::move(table_.sheets);
  }

private:
  Canvas canvas() { return {type_, table_.sheets.back()}; }

  void begin_sheet() {
    table_.sheets.emplace_back();
    table_.sheets.back().size = style::sheet;
    y_ = style::margin;
  }

  void table_head(std::string_view heading) { head_of(heading, table_columns); }

  void head_of(std::string_view heading, std::span<const TableColumn *const> columns) {
    Canvas on = canvas();
    on.as(Role::heading2).text({style::margin, y_}, style::heading, heading);
    y_ += style::heading.leading + 2_mm;
    {
      const auto row = on.begin(Role::row);
      for (const TableColumn *column : columns)
        on.as(Role::column_header).text({column->left, y_}, style::label, column->name);
    }
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
    {
      const auto row = on.begin(Role::row);
      {
        const auto number = on.begin(Role::row_header);
        draw_tag(on, {number_column.left, top}, mark.number, mark.grade);
      }
      cell_lines(on, {grade_column.left, top}, style::label_strong,
                 {std::string(content::grade_name(mark.grade))}, style::label, {mark.fresh ? "new" : ""});
      cell_lines(on, {page_column.left, top}, style::label_strong, {mark.page}, style::label, frame);
      cell_lines(on, {subject_column.left, top + 0.5_pt}, style::label, subject, style::label, owner);
      cell_lines(on, {message_column.left, top}, style::label_strong, title, style::body, message);
      cell_lines(on, {remedy_column.left, top}, style::body, remedy, style::body, {});
    }
    y_ = top + height + 1.2_mm;
    on.line({style::margin, y_}, {style::margin + table_width, y_}, style::row_rule);
    if (!mark.surface) // no drawing carries its note
      on.page().notes.push_back(note_of(mark, {number_column.left, top, tag_size.width, tag_size.height}));
    table_.rows.push_back({index, table_.sheets.size() - 1, {style::margin, top, table_width, y_ - top}});
    y_ += 1.2_mm;
  }

  /// One cell: lines of one style under those of another.
  static void cell_lines(Canvas &on, Point at, const TypeStyle &first, const std::vector<std::string> &above,
                         const TypeStyle &second, const std::vector<std::string> &below) {
    const auto cell = on.begin(Role::cell);
    on.lines({at.x, on.lines(at, first, above)}, second, below);
  }

  /// What the last round found and this one does not, in the words of its record.
  void mended() {
    begin_sheet();
    mended_head("Mended since the last round");
    for (const content::MendedMark &mark : content_.mended) {
      const auto message =
          canvas().wrap(style::body, mended_message.width, content::with_figures_kept_whole(mark.message));
      const auto title = canvas().wrap(style::label_strong, mended_title.width, mark.title);
      const Length height =
          std::max(height_of(style::body, message.size()), height_of(style::label_strong, title.size()));
      if (y_ + height > table_bottom) {
        begin_sheet();
        mended_head("Mended since the last round, continued");
      }
      Canvas on = canvas();
      {
        const auto row = on.begin(Role::row);
        on.as(Role::row_header)
            .text({mended_page.left, y_}, style::label_strong,
                  on.shortened(style::label_strong, mended_page.width, mark.page));
        on.as(Role::cell).text({mended_grade.left, y_}, style::label_strong, mark.grade);
        on.as(Role::cell).lines({mended_title.left, y_}, style::label_strong, title);
        on.as(Role::cell).lines({mended_message.left, y_}, style::body, message);
      }
      y_ += height + 1.2_mm;
      on.line({style::margin, y_}, {style::margin + table_width, y_}, style::row_rule);
      y_ += 1.2_mm;
    }
  }

  void mended_head(std::string_view heading) { head_of(heading, mended_columns); }

  const content::ProofContent &content_;
  const Typesetter &type_;
  FindingsTable table_;
  Length y_;
};

} // namespace

FindingsTable lay_out_findings(const content::ProofContent &content, const Typesetter &type) {
  return TableWriter(content, type).write();
}

std::vector<DocumentPage> lay_out_mended(const content::ProofContent &content, const Typesetter &type) {
  return TableWriter(content, type).write_mended();
}

} // namespace stoneproof::layout
