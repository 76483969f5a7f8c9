// A lean estimate of the room that a text takes. The only ways in are lean_width, lean_lines and
// lean_height; tested in
// tests/engine/rules/lean_type.test.cpp.
#include "engine/rules/lean_type.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace stoneproof {

namespace {

constexpr char32_t replacement = 0xFFFD; ///< Unicode's own, for bytes that are no character

/// The next character of UTF-8, taken off the text.
char32_t next_character(std::string_view &text) {
  const auto first = static_cast<unsigned char>(text.front());
  text.remove_prefix(1);
  if (first < 0x80) return first;
  if (first < 0xC0 || first >= 0xF8) return replacement;
  const int more = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : 1;
  char32_t code = first & (0x3Fu >> more);
  for (int i = 0; i < more; ++i) {
    if (text.empty() || (static_cast<unsigned char>(text.front()) & 0xC0u) != 0x80u) return replacement;
    code = code << 6 | (static_cast<unsigned char>(text.front()) & 0x3Fu);
    text.remove_prefix(1);
  }
  return code;
}

struct Range {
  char32_t first, last;
};

template <std::size_t N>
bool is_among(const Range (&ranges)[N], char32_t code) {
  return std::any_of(std::begin(ranges), std::end(ranges),
                     [&](const Range &range) { return code >= range.first && code <= range.last; });
}

// Blocks of The Unicode Standard. Combining marks: the general ones, Hebrew points, Arabic vowels, Devanagari
// signs above and below, Thai vowels and tones, the extended and half marks. Then what only joins or directs.
constexpr Range no_width[] = {{0x00AD, 0x00AD},   {0x0300, 0x036F},   {0x0483, 0x0489}, {0x0591, 0x05C7},
                              {0x0610, 0x061A},   {0x064B, 0x065F},   {0x0900, 0x0902}, {0x093A, 0x094D},
                              {0x0E31, 0x0E31},   {0x0E34, 0x0E3A},   {0x0E47, 0x0E4E}, {0x1AB0, 0x1AFF},
                              {0x1DC0, 0x1DFF},   {0x200B, 0x200F},   {0x202A, 0x202E}, {0x2060, 0x206F},
                              {0x20D0, 0x20FF},   {0xFE00, 0xFE0F},   {0xFE20, 0xFE2F}, {0xFEFF, 0xFEFF},
                              {0x1F3FB, 0x1F3FF}, {0xE0000, 0xE01EF}, {0x0000, 0x001F}};
constexpr Range square_marks[] = {{0x3000, 0x303F}, {0xFF01, 0xFF0F}, {0xFF1A, 0xFF1F}, {0xFF5F, 0xFF65}};
constexpr Range squares[] = {{0x1100, 0x115F}, {0x2E80, 0x2FFF}, {0x3040, 0xA4CF}, {0xAC00, 0xD7A3},
                             {0xF900, 0xFAFF}, {0xFF10, 0xFF60}, {0xFFE0, 0xFFE6}, {0x20000, 0x3FFFD}};
constexpr Range lettered[] = {{0x00C0, 0x024F}, {0x0370, 0x0482}, {0x048A, 0x052F}, {0x1E00, 0x1FFF}};

bool is_space(char32_t code) { return code == U' ' || code == 0xA0; }

double width_of(char32_t code) {
  constexpr std::string_view thin_ones = "!\"'()*,-./:;IJ[]\\^`fijlrt{|}1", wide_ones = "%&@MWmw";
  if (is_space(code)) return lean::space;
  if (is_among(no_width, code)) return 0;
  if (code < 0x80) {
    const char letter = static_cast<char>(code);
    if (thin_ones.find(letter) != std::string_view::npos) return lean::thin;
    return wide_ones.find(letter) != std::string_view::npos ? lean::wide : lean::letter;
  }
  if (is_among(lettered, code)) return lean::mean;
  if (is_among(square_marks, code)) return lean::square_mark;
  return is_among(squares, code) ? lean::square : lean::unknown;
}

struct Paragraph {
  double width = 0; ///< with all its spaces
  double spaces = 0;
};

Paragraph measured(std::string_view line) {
  Paragraph paragraph;
  while (!line.empty()) {
    const char32_t code = next_character(line);
    paragraph.width += width_of(code);
    if (is_space(code)) ++paragraph.spaces;
  }
  return paragraph;
}

/// The fewest lines, where a space at the end of each takes no room.
double lines_in(const Paragraph &paragraph, double width) {
  constexpr double rounding = 1e-9;
  const double lines = std::ceil((paragraph.width + lean::space) / (width + lean::space) - rounding);
  if (lines - 1 <= paragraph.spaces) return std::max(lines, 1.0);
  return std::ceil((paragraph.width - paragraph.spaces * lean::space) / width - rounding);
}

} // namespace

double lean_width(std::string_view line) { return measured(line).width; }

double lean_lines(const TextBlock &text, Length width) {
  double lines = 0;
  std::string_view rest = text.text;
  for (;;) {
    const std::size_t end = rest.find('\n');
    lines += lines_in(measured(rest.substr(0, end)), width / text.type_size);
    if (end == std::string_view::npos) return lines;
    rest.remove_prefix(end + 1);
  }
}

Length lean_height(const TextBlock &text, Length width) {
  return text.type_size * ((lean_lines(text, width) - 1) * lean::line + lean::capitals);
}

} // namespace stoneproof
