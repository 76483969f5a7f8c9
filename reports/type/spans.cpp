// Finds script and direction of each part of a line. The only way in is spans_of(); tested in
// tests/reports/type/spans.test.cpp.
#include "reports/type/spans.h"

#include <algorithm>
#include <hb.h>
#include <ranges>

namespace stoneproof {
namespace {

enum class Kind : unsigned char { left, right, number, neutral };

struct Character {
  hb_script_t script;
  Kind kind;
  Kind flow = Kind::left;  ///< the direction that neighbours take from it
  unsigned char level = 0; ///< odd runs right to left, as in UAX #9
};

bool is_real(hb_script_t script) {
  return script != HB_SCRIPT_COMMON && script != HB_SCRIPT_INHERITED && script != HB_SCRIPT_UNKNOWN;
}

Kind kind_of(char32_t c, hb_script_t script) {
  hb_unicode_funcs_t *unicode = hb_unicode_funcs_get_default();
  if (hb_unicode_general_category(unicode, c) == HB_UNICODE_GENERAL_CATEGORY_DECIMAL_NUMBER)
    return Kind::number;
  if (!is_real(script)) return Kind::neutral;
  return hb_script_get_horizontal_direction(script) == HB_DIRECTION_RTL ? Kind::right : Kind::left;
}

/// Signs take the script of the letters before them in their word, at its start of those after them. A word
/// without letters is Latin.
void settle_scripts(std::u32string_view text, std::vector<Character> &line) {
  for (std::size_t i = 0; i < line.size();) {
    std::size_t end = i;
    while (end < line.size() && (text[end] == U' ') == (text[i] == U' ')) ++end;
    const auto word = std::ranges::subrange(line.begin() + static_cast<std::ptrdiff_t>(i),
                                            line.begin() + static_cast<std::ptrdiff_t>(end));
    const auto letter = std::ranges::find_if(word, is_real, &Character::script);
    hb_script_t current = letter == word.end() ? HB_SCRIPT_LATIN : letter->script;
    for (Character &c : word) c.script = current = is_real(c.script) ? c.script : current;
    i = end;
  }
}

std::vector<Character> characters_of(std::u32string_view text) {
  std::vector<Character> line;
  line.reserve(text.size());
  for (const char32_t c : text) {
    const hb_script_t script = hb_unicode_script(hb_unicode_funcs_get_default(), c);
    line.push_back({script, kind_of(c, script)});
  }
  settle_scripts(text, line);
  return line;
}

/// Letters and numbers get their level; a number flows as the letter before it (rule W2). Gives false when
/// the line has no right-to-left letter.
bool level_letters(std::vector<Character> &line, Kind base) {
  bool any_right = false;
  const unsigned char left_level = base == Kind::right ? 2 : 0;
  Kind strong = base;
  for (Character &c : line) {
    if (c.kind == Kind::left || c.kind == Kind::right) strong = c.kind;
    any_right |= c.kind == Kind::right;
    c.flow = strong;
    if (c.kind == Kind::right) c.level = 1;
    if (c.kind == Kind::left) c.level = left_level;
    if (c.kind == Kind::number) c.level = strong == Kind::right ? 2 : left_level;
  }
  return any_right;
}

/// Neutral characters between two of one flow take it, all others that of the line (rules N1 and N2).
void level_neutrals(std::vector<Character> &line, Kind base) {
  Kind before = base;
  for (std::size_t i = 0; i < line.size();) {
    std::size_t end = i;
    while (end < line.size() && line[end].kind == Kind::neutral) ++end;
    const Kind after = end == line.size() ? base : line[end].flow;
    const Kind flow = before == after ? before : base;
    for (; i < end; ++i) line[i].level = flow == Kind::right ? 1 : (base == Kind::right ? 2 : 0);
    for (; i < line.size() && line[i].kind != Kind::neutral; ++i) before = line[i].flow;
  }
}

/// Rule L2: from the highest level there can be down, every stretch at or above the level is turned round.
void put_in_visual_order(std::vector<TextSpan> &spans, std::vector<unsigned char> &levels) {
  for (int level = 2; level > 0; --level) {
    for (std::size_t i = 0; i < spans.size(); ++i) {
      std::size_t end = i;
      while (end < spans.size() && levels[end] >= level) ++end;
      const auto from = static_cast<std::ptrdiff_t>(i), to = static_cast<std::ptrdiff_t>(end);
      std::reverse(spans.begin() + from, spans.begin() + to);
      std::reverse(levels.begin() + from, levels.begin() + to);
      i = std::max(i, end);
    }
  }
}

} // namespace

std::vector<TextSpan> spans_of(std::u32string_view text) {
  std::vector<Character> line = characters_of(text);
  const auto letter = std::find_if(line.begin(), line.end(), [](const Character &c) {
    return c.kind == Kind::left || c.kind == Kind::right;
  });
  const Kind base = letter == line.end() ? Kind::left : letter->kind;
  if (level_letters(line, base)) level_neutrals(line, base);

  std::vector<TextSpan> spans;
  std::vector<unsigned char> levels;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Character &c = line[i];
    const bool at_space = i > 0 && (text[i] == U' ') != (text[i - 1] == U' ');
    if (spans.empty() || at_space || spans.back().script != c.script || levels.back() != c.level) {
      spans.push_back({i, 0, c.script, c.level % 2 == 1});
      levels.push_back(c.level);
    }
    ++spans.back().count;
  }
  put_in_visual_order(spans, levels);
  return spans;
}

} // namespace stoneproof
