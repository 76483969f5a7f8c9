// The last page of a letter: how to scan, and the slip to send back. The only way in is lay_out_letter_back;
// tested in tests/reports/layout/letter.test.cpp.
#include "reports/layout/letter_sheets.h"

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Length indent = LetterSheets::left + 9_mm;

void check_list(LetterSheets &sheets, const content::LetterContent &content) {
  sheets.heading(content.check_heading);
  for (const std::string &check : content.checks) {
    const auto lines = sheets.type_lines(style::advice, LetterSheets::right - indent, check);
    sheets.tick_box({LetterSheets::left, sheets.y + 0.4_mm});
    sheets.y = sheets.canvas().as(Role::list_item).lines({indent, sheets.y}, style::advice, lines) + 2.2_mm;
  }
}

/// A line to write on, from the end of the words to the margin.
void to_fill_in(LetterSheets &sheets, Length from, std::string_view words, Role role = Role::paragraph) {
  Canvas on = sheets.canvas();
  on.as(role).text({from, sheets.y}, style::advice, words);
  const Length line_from = from + on.width(style::advice, words) + 3_mm;
  const Length baseline = sheets.y + style::advice.leading - 1_mm;
  if (line_from < LetterSheets::right)
    on.line({line_from, baseline}, {LetterSheets::right, baseline}, style::trim_line);
  sheets.y += style::advice.leading + 3.2_mm;
}

void tick_line(LetterSheets &sheets, std::string_view words, bool fill_in) {
  sheets.tick_box({LetterSheets::left, sheets.y + 0.4_mm});
  if (fill_in) return to_fill_in(sheets, indent, words, Role::list_item);
  sheets.canvas().as(Role::list_item).text({indent, sheets.y}, style::advice, words);
  sheets.y += style::advice.leading + 3.2_mm;
}

} // namespace

void lay_out_letter_back(LetterSheets &sheets, const content::LetterContent &content) {
  sheets.begin();
  check_list(sheets, content);
  sheets.y += 5_mm;
  sheets.canvas().line({Length{}, sheets.y}, {style::letter_sheet.width, sheets.y}, style::bleed_line);
  sheets.y += 6_mm;
  const content::LetterSlip &slip = content.slip;
  sheets.paragraph(style::heading, slip.heading, Role::heading2);
  sheets.paragraph(style::letter_caption, slip.back);
  sheets.y += 3_mm;
  if (content.name.empty()) {
    to_fill_in(sheets, LetterSheets::left, slip.from);
  } else {
    Canvas on = sheets.canvas();
    on.as(Role::paragraph)
        .text({LetterSheets::left, sheets.y}, style::advice,
              on.shortened(style::advice, LetterSheets::width, slip.from));
    sheets.y += style::advice.leading + 2.5_mm;
  }
  tick_line(sheets, slip.sent, true);
  tick_line(sheets, slip.lost, true);
  tick_line(sheets, slip.measure, false);
  tick_line(sheets, slip.help, true);
  to_fill_in(sheets, LetterSheets::left, slip.sign);
}

} // namespace stoneproof::layout
