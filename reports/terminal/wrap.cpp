// Breaking and shortening lines. The only ways in are the functions of wrap.h; tested in
// tests/reports/terminal.
#include "reports/terminal/wrap.h"

#include "engine/xml/characters.h"

#include <algorithm>

namespace stoneproof::terminal {

namespace {

std::size_t characters(std::string_view text) { return code_points_of(text).size(); }

} // namespace

std::vector<std::string> wrapped(std::string_view text, int width) {
  const auto room = static_cast<std::size_t>(std::max(width, 1));
  std::vector<std::string> lines;
  std::size_t used = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (word.empty()) continue;
    const std::size_t length = characters(word);
    if (lines.empty() || used + 1 + length > room) {
      lines.emplace_back(word);
      used = length;
    } else {
      lines.back().append(" ").append(word);
      used += 1 + length;
    }
  }
  return lines;
}

std::string wrapped_text(std::string_view text, int width, int indent) {
  const std::string spaces(static_cast<std::size_t>(indent), ' ');
  std::string result;
  for (const std::string &line : wrapped(text, width - indent)) result += spaces + line + "\n";
  return result;
}

std::string shortened(std::string_view text, int width) {
  const auto room = static_cast<std::size_t>(std::max(width, 1));
  std::u32string letters = code_points_of(text);
  if (letters.size() <= room) return std::string(text);
  letters.resize(room - 1);
  return utf8_of(letters) + "…";
}

std::vector<std::string> few_lines(std::string_view text, int width, std::size_t most) {
  std::vector<std::string> lines = wrapped(printable(text), width);
  if (lines.size() > most) {
    lines[most - 1] += " " + lines[most] + "…";
    lines.resize(most);
  }
  for (std::string &line : lines) line = shortened(line, width);
  return lines;
}

} // namespace stoneproof::terminal
