// Page labels: a tree of numbers, each the first page of a range (ISO 32000-1, 12.4.2 and 7.9.7). The only
// way in is read_page_labels; tested in tests/engine/import/page_tree.test.cpp.
#include "engine/import/page_tree.h"

#include <algorithm>
#include <map>

namespace stoneproof::finished {

namespace {

constexpr int deepest_tree = 16;
constexpr std::size_t most_nodes = 20'000;

/// `nodes` counts those that were looked at: a tree that holds itself has no end.
void collect(const Object &node, std::map<std::size_t, Object> &ranges, int depth, std::size_t &nodes) {
  if (++nodes > most_nodes) return;
  const Object numbers = node["Nums"], kids = node["Kids"];
  for (std::size_t i = 0; i + 1 < numbers.size(); i += 2)
    if (const double first = numbers.at(i).number_or(-1); first >= 0 && first < most_pages)
      ranges.emplace(static_cast<std::size_t>(first), numbers.at(i + 1));
  if (depth < deepest_tree)
    for (std::size_t i = 0; i < std::min<std::size_t>(kids.size(), 1000); ++i)
      collect(kids.at(i), ranges, depth + 1, nodes);
}

/// 1 is "i"; `number` from 1 to 3999 and above as many "m" as it takes.
std::string roman(std::size_t number) {
  constexpr std::pair<std::size_t, const char *> parts[] = {
      {1000, "m"}, {900, "cm"}, {500, "d"}, {400, "cd"}, {100, "c"}, {90, "xc"}, {50, "l"},
      {40, "xl"},  {10, "x"},   {9, "ix"},  {5, "v"},    {4, "iv"},  {1, "i"}};
  std::string text;
  for (const auto &[value, letters] : parts)
    for (; number >= value; number -= value) text += letters;
  return text;
}

/// 1 is "a", 27 "aa", 53 "aaa".
std::string letters(std::size_t number) {
  return std::string((number - 1) / 26 + 1, static_cast<char>('a' + (number - 1) % 26));
}

std::string upper(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c; });
  return text;
}

std::string counted(const std::string &style, std::size_t number) {
  if (style == "D") return std::to_string(number);
  if (style == "r") return roman(number);
  if (style == "R") return upper(roman(number));
  if (style == "a") return letters(number);
  return style == "A" ? upper(letters(number)) : std::string();
}

} // namespace

std::vector<std::string> read_page_labels(const PdfFile &file, std::size_t pages) {
  std::map<std::size_t, Object> ranges;
  std::size_t nodes = 0;
  collect(file.catalog()["PageLabels"], ranges, 0, nodes);
  std::vector<std::string> labels(pages);
  for (auto range = ranges.begin(); range != ranges.end(); ++range) {
    const auto next = std::next(range);
    const std::size_t end = next == ranges.end() ? pages : std::min(pages, next->first);
    const auto start = static_cast<std::size_t>(range->second["St"].whole_or(1, 1, 100'000));
    const std::string style = range->second["S"].name(), prefix = range->second["P"].text();
    for (std::size_t page = range->first; page < end; ++page)
      labels[page] = prefix + counted(style, start + page - range->first);
  }
  return labels;
}

} // namespace stoneproof::finished
