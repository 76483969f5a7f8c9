// Lays the words of measured files into lines. The only way in is measure_summary; tested in
// tests/reports/terminal.
#include "reports/terminal/measure_summary.h"

#include "engine/xml/characters.h"
#include "reports/content/measure_words.h"
#include "reports/content/proof_content.h"
#include "reports/terminal/wrap.h"

#include <algorithm>

namespace stoneproof::terminal {

namespace {

constexpr std::size_t indent = 2, label_width = 10, between_columns = 3;

std::size_t columns_of(std::string_view text) { return code_points_of(text).size(); }

std::string padded(const std::string &text, std::size_t width, bool to_the_right) {
  const std::string space(width - std::min(width, columns_of(text)), ' ');
  return to_the_right ? space + text : text + space;
}

/// The label, and the text beside it, broken under itself.
std::string fact_lines(const content::FactRow &fact, int width) {
  const std::size_t beside = indent + label_width;
  std::string text, before = std::string(indent, ' ') + padded(fact.label, label_width, false);
  for (const std::string &line : wrapped(printable(fact.text), width - static_cast<int>(beside))) {
    text += before + line + "\n";
    before.assign(beside, ' ');
  }
  return text;
}

std::string table_lines(const content::PrintTable &table, std::size_t table_indent) {
  std::vector<std::size_t> widths(table.to_the_right.size());
  for (const auto &row : table.rows)
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], columns_of(row[i]));
  std::string text;
  for (const auto &row : table.rows) {
    std::string line(table_indent, ' ');
    for (std::size_t i = 0; i < row.size(); ++i)
      line += (i == 0 ? "" : std::string(between_columns, ' ')) +
              padded(row[i], widths[i], table.to_the_right[i]);
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + "\n";
  }
  return text;
}

std::string block(const content::MeasureWords &words, int width, bool bold) {
  const std::string name = printable(words.name);
  std::string text = (bold ? "\033[1m" + name + "\033[0m" : name) + "\n";
  for (const content::FactRow &fact : words.facts) text += fact_lines(fact, width);
  if (words.filling.empty()) return text;
  text += "\n" + table_lines(words.largest, indent);
  text += "\n" + std::string(indent, ' ') + words.filling + "\n";
  return text + table_lines(words.filled, indent * 2);
}

} // namespace

std::string measure_summary(const std::vector<MeasuredFile> &files, const PressSheet &press, int width,
                            bool bold) {
  std::string text;
  for (const MeasuredFile &file : files)
    text += (text.empty() ? "" : "\n") + block(content::measure_words(file, press), width, bold);
  return text + "\n" + wrapped_text(printable(content::press_line(press)), width);
}

} // namespace stoneproof::terminal
