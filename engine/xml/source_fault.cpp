// Renders a fault with its source line and a caret. Only way in: with_caret.
// Tested in tests/engine/xml/source_fault.test.cpp.
#include "engine/xml/source_fault.h"

#include "engine/xml/characters.h"

#include <algorithm>

namespace stoneproof {
namespace {

constexpr std::string_view indent = "    ";
constexpr std::string_view cut = "...";

struct Shown {
  std::string line;
  std::size_t caret = 0; // characters before the caret
};

// The part of a line that fits, with the caret's character in it.
Shown shortened(std::u32string line, std::size_t caret, std::size_t width) {
  std::replace(line.begin(), line.end(), U'\t', U' ');
  if (line.size() <= width) return {utf8_of(line), caret};
  const std::size_t room = width - 2 * cut.size();
  const std::size_t latest = line.size() - room;
  const std::size_t begin = std::min(caret > room / 2 ? caret - room / 2 : 0, latest);
  Shown shown;
  if (begin > 0) shown.line += cut;
  shown.caret = caret - begin + (begin > 0 ? cut.size() : 0);
  shown.line += utf8_of(line.substr(begin, room));
  if (begin < latest) shown.line += cut;
  return shown;
}

} // namespace

std::string with_caret(const SourceFault &fault, int width) {
  constexpr int narrowest = 20;
  std::string text = fault.fault.where + ": " + fault.fault.what + "\n";
  if (fault.column > 0) {
    const auto room = static_cast<std::size_t>(std::max(width, narrowest)) - indent.size();
    const auto shown =
        shortened(code_points_of(fault.source_line), static_cast<std::size_t>(fault.column - 1), room);
    text.append(indent).append(shown.line).append("\n");
    text.append(indent).append(shown.caret, ' ').append("^\n");
  }
  if (!fault.fault.remedy.empty()) text += "  " + fault.fault.remedy + "\n";
  return text;
}

} // namespace stoneproof
