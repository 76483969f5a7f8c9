// UTF-8 (RFC 3629) and the character classes of XML 1.0, fifth edition, productions 2 to 4a.
// Tested in tests/engine/xml/characters.test.cpp.
#include "engine/xml/characters.h"

#include <algorithm>
#include <iterator>

namespace stoneproof {
namespace {

constexpr char32_t replacement = U'\uFFFD';

struct Range {
  char32_t first, last;
};
constexpr Range name_start_ranges[] = {
    {U':', U':'},     {U'A', U'Z'},     {U'_', U'_'},     {U'a', U'z'},
    {0xC0, 0xD6},     {0xD8, 0xF6},     {0xF8, 0x2FF},    {0x370, 0x37D},
    {0x37F, 0x1FFF},  {0x200C, 0x200D}, {0x2070, 0x218F}, {0x2C00, 0x2FEF},
    {0x3001, 0xD7FF}, {0xF900, 0xFDCF}, {0xFDF0, 0xFFFD}, {0x10000, 0xEFFFF}};
constexpr Range further_name_ranges[] = {{U'-', U'-'}, {U'.', U'.'},   {U'0', U'9'},
                                         {0xB7, 0xB7}, {0x300, 0x36F}, {0x203F, 0x2040}};

template <std::size_t N>
bool in(const Range (&ranges)[N], char32_t c) {
  return std::any_of(std::begin(ranges), std::end(ranges),
                     [c](Range r) { return c >= r.first && c <= r.last; });
}

// How many bytes a sequence has by its first byte, and the least character that needs so many.
struct Lead {
  std::size_t bytes;
  char32_t bits, least;
};
Lead lead_of(unsigned char byte) {
  if (byte < 0x80) return {1, byte, 0};
  if (byte >= 0xC2 && byte < 0xE0) return {2, byte & 0x1Fu, 0x80};
  if (byte >= 0xE0 && byte < 0xF0) return {3, byte & 0x0Fu, 0x800};
  if (byte >= 0xF0 && byte < 0xF5) return {4, byte & 0x07u, 0x10000};
  return {0, 0, 0};
}

void append(std::string &text, char32_t c) {
  const auto byte = [&](char32_t bits) { text += static_cast<char>(static_cast<unsigned char>(bits)); };
  if (c < 0x80) return byte(c);
  if (c >= 0x10000)
    byte(0xF0 | c >> 18), byte(0x80 | (c >> 12 & 0x3F));
  else if (c >= 0x800)
    byte(0xE0 | c >> 12);
  if (c >= 0x800)
    byte(0x80 | (c >> 6 & 0x3F));
  else
    byte(0xC0 | c >> 6);
  byte(0x80 | (c & 0x3F));
}

} // namespace

Decoded decode(std::string_view text, std::size_t at) {
  if (at >= text.size()) return {};
  const Lead lead = lead_of(static_cast<unsigned char>(text[at]));
  if (lead.bytes == 0 || lead.bytes > text.size() - at) return {};
  char32_t c = lead.bits;
  for (std::size_t i = 1; i < lead.bytes; ++i) {
    const auto byte = static_cast<unsigned char>(text[at + i]);
    if ((byte & 0xC0) != 0x80) return {};
    c = c << 6 | (byte & 0x3Fu);
  }
  if (c < lead.least || c > 0x10FFFF || (c >= 0xD800 && c <= 0xDFFF)) return {};
  return {c, lead.bytes};
}

std::u32string code_points_of(std::string_view text) {
  std::u32string characters;
  for (std::size_t at = 0; at < text.size();) {
    const Decoded next = decode(text, at);
    characters += next.bytes == 0 ? replacement : next.character;
    at += std::max<std::size_t>(next.bytes, 1);
  }
  return characters;
}

std::string utf8_of(std::u32string_view characters) {
  std::string text;
  for (const char32_t c : characters) append(text, c);
  return text;
}

bool is_xml_character(char32_t c) {
  return c == '\t' || c == '\n' || c == '\r' || (c >= 0x20 && c <= 0xD7FF) || (c >= 0xE000 && c <= 0xFFFD) ||
         (c >= 0x10000 && c <= 0x10FFFF);
}
bool is_name_start(char32_t c) { return in(name_start_ranges, c); }
bool is_name_character(char32_t c) { return is_name_start(c) || in(further_name_ranges, c); }

std::string collapsed(std::string_view text) {
  std::string result;
  for (const char c : text) {
    if (!is_xml_space(c))
      result += c;
    else if (!result.empty() && result.back() != ' ')
      result += ' ';
  }
  if (!result.empty() && result.back() == ' ') result.pop_back();
  return result;
}

std::string printable(std::string_view text, bool keep_tab) {
  std::u32string characters = code_points_of(text);
  for (char32_t &c : characters) {
    const bool control = c < 0x20 || (c >= 0x7F && c < 0xA0) || c == 0x2028 || c == 0x2029;
    if (control && !(keep_tab && c == '\t')) c = replacement;
  }
  return utf8_of(characters);
}

std::string xml_escaped(std::string_view text) {
  std::u32string result;
  for (const char32_t c : code_points_of(text)) {
    switch (c) {
    case U'&': result += U"&amp;"; break;
    case U'<': result += U"&lt;"; break;
    case U'>': result += U"&gt;"; break; // no "]]>" is left
    case U'"': result += U"&quot;"; break;
    case U'\t': result += U"&#9;"; break;
    case U'\n': result += U"&#10;"; break;
    case U'\r': result += U"&#13;"; break;
    default: result += is_xml_character(c) ? c : replacement;
    }
  }
  return utf8_of(result);
}

std::string in_quotes(std::string_view text) {
  constexpr std::size_t most = 40;
  constexpr std::size_t most_bytes = 4 * (most + 1); // of a long value no more is looked at
  std::u32string characters = code_points_of(text.substr(0, most_bytes));
  const bool shorten = characters.size() > most;
  if (shorten) characters.resize(most - 3);
  return "\"" + printable(utf8_of(characters)) + (shorten ? "...\"" : "\"");
}

} // namespace stoneproof
