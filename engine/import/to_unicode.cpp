// A font's ToUnicode map -> characters by code (Adobe Technical Note 5411). The only way in is
// read_to_unicode; tested in tests/engine/import/fonts.test.cpp.
#include "engine/import/content_parser.h"
#include "engine/import/fonts.h"
#include "engine/xml/characters.h"

#include <algorithm>

namespace stoneproof::finished {

namespace {

using Characters = std::unordered_map<unsigned, std::string>;

/// No more codes than two bytes can tell; no longer texts than the note allows, 512 bytes.
constexpr std::size_t most_codes = 65'536, most_text = 512;

unsigned code_of(const Operand &operand) {
  unsigned code = 0;
  for (const char c : operand.text) code = code << 8 | static_cast<unsigned char>(c);
  return code;
}

/// UTF-16 with the high byte first.
std::u32string characters_of(const std::string &bytes) {
  std::u32string characters;
  const auto unit = [&](std::size_t at) {
    return static_cast<char32_t>(static_cast<unsigned char>(bytes[at]) << 8 |
                                 static_cast<unsigned char>(bytes[at + 1]));
  };
  for (std::size_t at = 0; at + 1 < std::min(bytes.size(), most_text); at += 2) {
    char32_t character = unit(at);
    if (character >= 0xd800 && character < 0xdc00 && at + 3 < bytes.size()) {
      character = 0x10000 + ((character - 0xd800) << 10) + (unit(at + 2) - 0xdc00);
      at += 2;
    }
    const bool valid = character != 0 && character < 0x110000 && (character < 0xd800 || character > 0xdfff);
    characters += valid ? character : U'\ufffd';
  }
  return characters;
}

void add_range(const Operand &first, const Operand &last, const Operand &target, Characters &map) {
  const unsigned from = code_of(first), to = std::min(code_of(last), from + 65'535);
  if (target.is(Operand::Kind::array)) {
    for (std::size_t i = 0; i < target.items.size() && from + i <= to && map.size() < most_codes; ++i)
      map[from + static_cast<unsigned>(i)] = utf8_of(characters_of(target.items[i].text));
    return;
  }
  std::u32string characters = characters_of(target.text);
  if (characters.empty()) return;
  for (unsigned code = from; code <= to && map.size() < most_codes; ++code) {
    map[code] = utf8_of(characters);
    if (characters.back() < 0xd7ff || (characters.back() > 0xdfff && characters.back() < 0x10ffff))
      ++characters.back();
  }
}

} // namespace

Characters read_to_unicode(std::string_view map) {
  Characters characters;
  ContentParser parser(map);
  for (Operation step; parser.next(step);) {
    const auto &given = step.operands;
    if (step.name == "endbfchar")
      for (std::size_t i = 0; i + 1 < given.size() && characters.size() < most_codes; i += 2)
        characters[code_of(given[i])] = utf8_of(characters_of(given[i + 1].text));
    if (step.name == "endbfrange")
      for (std::size_t i = 0; i + 2 < given.size(); i += 3)
        add_range(given[i], given[i + 1], given[i + 2], characters);
  }
  return characters;
}

} // namespace stoneproof::finished
