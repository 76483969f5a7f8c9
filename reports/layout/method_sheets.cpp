// Press sheet and method. The only ways in are the functions of method_sheets.h; tested in
// tests/reports/layout/proof_parts.test.cpp.
#include "reports/layout/method_sheets.h"

#include "reports/content/figures.h"
#include "reports/layout/sheets.h"

#include <fmt/format.h>

#include <algorithm>

namespace stoneproof::layout {

namespace {

using namespace literals;

void heading(Sheets &sheets, std::string_view text) {
  sheets.begin();
  sheets.canvas().as(Role::heading2).text({style::margin, sheets.y}, style::heading, text);
  sheets.y = style::head;
}

/// Groups of requirements beside each other, in columns.
class PressWriter {
public:
  PressWriter(const content::ProofContent &content, const Typesetter &type)
      : content_(content), sheets_{type} {}

  std::vector<DocumentPage> write() {
    heading(sheets_, "The press sheet that was used");
    sheets_.paragraph(style::body, content_.press);
    const Length top = sheets_.y + 5_mm;
    for (std::size_t i = 0; i < content_.requirements.size(); ++i)
      group(content_.requirements[i], {style::margin + (width + gap) * static_cast<std::int64_t>(i), top});
    return std::move(sheets_.pages);
  }

private:
  static constexpr Length gap = 8_mm, width = (Sheets::width - gap * 2) / 3, name_width = 32_mm;

  void group(const content::RequirementGroup &group, Point at) {
    Canvas on = sheets_.canvas();
    on.as(Role::heading3).text(at, style::label_strong, group.heading);
    Length y = at.y + style::label_strong.leading + 0.5_mm;
    on.line({at.x, y}, {at.x + width, y}, style::trim_line);
    y += 1.2_mm;
    for (const content::Requirement &row : group.rows) {
      const auto name = on.wrap(style::label_strong, name_width - 2_mm, row.name);
      const auto asks = on.wrap(style::body, width - name_width, content::with_figures_kept_whole(row.asks));
      const auto line = on.begin(Role::row);
      const Length name_end = on.as(Role::row_header).lines({at.x, y}, style::label_strong, name);
      const Length asks_end = on.as(Role::cell).lines({at.x + name_width, y}, style::body, asks);
      y = std::max(name_end, asks_end) + 0.8_mm;
      on.line({at.x, y}, {at.x + width, y}, style::row_rule);
      y += 0.8_mm;
    }
  }

  const content::ProofContent &content_;
  Sheets sheets_;
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
