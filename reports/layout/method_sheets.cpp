// Press sheet and method. The only ways in are the functions of method_sheets.h; tested in
// tests/reports/layout/proof_parts.test.cpp.
#include "reports/layout/method_sheets.h"

#include "reports/content/figures.h"
#include "reports/layout/sheets.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>

namespace stoneproof::layout {

namespace {

using namespace literals;

void heading(Sheets &sheets, std::string_view text) {
  sheets.begin();
  sheets.canvas().as(Role::heading2).text({style::margin, sheets.y}, style::heading, text);
  sheets.y = style::head;
}

/// Groups of requirements in columns beside each other; what finds no column of its own stands in the one
/// that ends highest, or on a further sheet.
class PressWriter {
public:
  PressWriter(const content::ProofContent &content, const Typesetter &type)
      : content_(content), sheets_{type} {}

  std::vector<DocumentPage> write() {
    heading(sheets_, title);
    sheets_.paragraph(style::body, content_.press);
    begin_columns(sheets_.y + 5_mm);
    for (const content::RequirementGroup &group : content_.requirements) put(lay_out(group));
    return std::move(sheets_.pages);
  }

private:
  static constexpr std::string_view title = "The press sheet that was used";
  static constexpr int columns = 3;
  static constexpr Length gap = 8_mm, width = (Sheets::width - gap * (columns - 1)) / columns;
  static constexpr Length name_width = 32_mm, group_gap = 6_mm;
  static constexpr Length head_height = style::label_strong.leading + 1.7_mm;

  struct Row {
    std::vector<std::string> name, asks;
    Length height() const {
      return std::max(height_of(style::label_strong, name.size()), height_of(style::body, asks.size())) +
             1.6_mm;
    }
  };
  struct Group {
    std::string heading;
    std::vector<Row> rows;
    Length height = head_height;
  };

  Group lay_out(const content::RequirementGroup &group) {
    const Canvas measure = sheets_.canvas();
    Group laid{group.heading, {}};
    for (const content::Requirement &row : group.rows) {
      laid.rows.push_back(
          {measure.wrap(style::label_strong, name_width - 2_mm, row.name),
           measure.wrap(style::body, width - name_width, content::with_figures_kept_whole(row.asks))});
      laid.height += laid.rows.back().height();
    }
    return laid;
  }

  void begin_columns(Length top) {
    top_ = top;
    ends_.fill(top);
  }

  void put(const Group &group) {
    auto end = std::ranges::min_element(ends_);
    if (*end > top_ && *end + group_gap + group.height > Sheets::bottom) {
      heading(sheets_, std::string(title) + ", continued");
      begin_columns(sheets_.y);
      end = ends_.begin();
    }
    const Length x = style::margin + (width + gap) * (end - ends_.begin());
    *end = draw(group, {x, *end > top_ ? *end + group_gap : *end});
  }

  /// Gives where it ends.
  Length draw(const Group &group, Point at) {
    Canvas on = sheets_.canvas();
    on.as(Role::heading3).text(at, style::label_strong, group.heading);
    Length y = at.y + head_height;
    on.line({at.x, y - 1.2_mm}, {at.x + width, y - 1.2_mm}, style::trim_line);
    for (const Row &row : group.rows) {
      const auto line = on.begin(Role::row);
      on.as(Role::row_header).lines({at.x, y}, style::label_strong, row.name);
      on.as(Role::cell).lines({at.x + name_width, y}, style::body, row.asks);
      y += row.height();
      on.line({at.x, y - 0.8_mm}, {at.x + width, y - 0.8_mm}, style::row_rule);
    }
    return y;
  }

  const content::ProofContent &content_;
  Sheets sheets_;
  Length top_; ///< of the columns
  std::array<Length, columns> ends_{};
};

/// Two columns of text, then the rules.
class MethodWriter {
public:
  MethodWriter(const content::MethodWords &method, const Typesetter &type) : method_(method), sheets_{type} {}

  std::vector<DocumentPage> write() {
    heading(sheets_, "How it was checked, and what no check can know");
    parts();
    if (!method_.rules.empty()) rules();
    return std::move(sheets_.pages);
  }

private:
  static constexpr Length gap = 12_mm, width = (Sheets::width - gap) / 2;
  static constexpr Length count_left = 78_mm, measure_left = 96_mm;

  void parts() {
    const Length top = sheets_.y;
    Length lowest = top;
    const std::size_t half = (method_.parts.size() + 1) / 2;
    for (std::size_t i = 0; i < method_.parts.size(); ++i) {
      if (i == half) sheets_.y = top;
      const Length x = i < half ? style::margin : style::margin + width + gap;
      const content::MethodPart &part = method_.parts[i];
      Canvas on = sheets_.canvas();
      on.as(Role::heading3).text({x, sheets_.y}, style::verdict, part.heading);
      sheets_.y = on.as(Role::paragraph)
                      .lines({x, sheets_.y + style::verdict.leading + 1_mm}, style::plan_body,
                             on.wrap(style::plan_body, width, content::with_figures_kept_whole(part.text))) +
                  5_mm;
      lowest = std::max(lowest, sheets_.y);
    }
    sheets_.y = lowest + 2_mm;
  }

  void rules() {
    sheets_.canvas()
        .as(Role::heading2)
        .text({style::margin, sheets_.y}, style::verdict, "What was measured where something was found");
    sheets_.y += style::verdict.leading + 1_mm;
    if (method_.silent > 0)
      sheets_.paragraph(style::body_aside,
                        fmt::format("{} looked and found nothing; “stoneproof explain” tells of each.",
                                    content::count(method_.silent, "more rule", "more rules")));
    sheets_.y += 2_mm;
    rules_head();
    for (const content::RuleUsed &rule : method_.rules) {
      Canvas measure = sheets_.canvas();
      const auto title = measure.wrap(style::label_strong, count_left - style::margin - 3_mm, rule.title);
      const auto lines = measure.wrap(style::body, Sheets::right - measure_left,
                                      content::with_figures_kept_whole(rule.measure));
      const Length height =
          std::max(height_of(style::label_strong, title.size()), height_of(style::body, lines.size()));
      if (!sheets_.has_room(height)) {
        heading(sheets_, "What was measured where something was found, continued");
        rules_head();
      }
      Canvas on = sheets_.canvas();
      {
        const auto row = on.begin(Role::row);
        on.as(Role::row_header).lines({style::margin, sheets_.y}, style::label_strong, title);
        on.as(Role::cell).text({count_left, sheets_.y}, style::label_strong, rule.count);
        on.as(Role::cell).lines({measure_left, sheets_.y}, style::body, lines);
      }
      sheets_.y += height + 1.2_mm;
      sheets_.rule(style::row_rule);
      sheets_.y += 1.2_mm;
    }
  }

  void rules_head() {
    Canvas on = sheets_.canvas();
    {
      const auto row = on.begin(Role::row);
      on.as(Role::column_header).text({style::margin, sheets_.y}, style::label, "Fault");
      on.as(Role::column_header).text({count_left, sheets_.y}, style::label, "Found");
      on.as(Role::column_header)
          .text({measure_left, sheets_.y}, style::label, "Measured, and where that comes from");
    }
    sheets_.y += style::label.leading + 0.5_mm;
    sheets_.rule(style::trim_line);
    sheets_.y += 1.2_mm;
  }

  const content::MethodWords &method_;
  Sheets sheets_;
};

} // namespace

std::vector<DocumentPage> lay_out_press(const content::ProofContent &content, const Typesetter &type) {
  return PressWriter(content, type).write();
}

std::vector<DocumentPage> lay_out_method(const content::MethodWords &method, const Typesetter &type) {
  return MethodWriter(method, type).write();
}

} // namespace stoneproof::layout
