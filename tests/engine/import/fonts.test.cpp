// Characters of codes, glyph names and maps.
#include "engine/import/fonts.h"

#include "tests/support/catch.h"

using namespace stoneproof::finished;

TEST_CASE("codes and glyph names give their characters") {
  // ISO 32000-1, annex D.
  CHECK(character_of_code("WinAnsiEncoding", 0x80) == "\xE2\x82\xAC");
  CHECK(character_of_code("WinAnsiEncoding", 0xE9) == "\xC3\xA9");
  CHECK(character_of_code("MacRomanEncoding", 0x8E) == "\xC3\xA9");
  CHECK(character_of_code("", 'A') == "A");
  CHECK(character_of_code("", 300).empty());
  // Adobe Glyph List.
  CHECK(character_of_glyph("lslash") == "\xC5\x82");
  CHECK(character_of_glyph("a.alt") == "a");
  CHECK(character_of_glyph("uni0142") == "\xC5\x82");
  CHECK(character_of_glyph("nothing-of-the-kind").empty());
  CHECK(character_of_glyph("").empty());
}

TEST_CASE("a map of characters is read, ranges, lists and pairs beyond the first plane too") {
  const auto map = read_to_unicode("2 beginbfrange <01> <03> <0061> <10> <11> [<0041> <00420043>] endbfrange "
                                   "1 beginbfchar <20> <D83DDE00> endbfchar");
  CHECK(map.at(1) == "a");
  CHECK(map.at(3) == "c");
  CHECK(map.at(0x11) == "BC");
  CHECK(map.at(0x20) == "\xF0\x9F\x98\x80");
  CHECK(map.size() == 6);
}

TEST_CASE("a broken map gives what makes sense of it") {
  CHECK(read_to_unicode("beginbfchar <01> endbfchar <02").empty());
  CHECK(read_to_unicode("1 beginbfchar <01> <D83D> endbfchar").at(1) == "\xEF\xBF\xBD");
  CHECK(read_to_unicode("1 beginbfrange <0000> <ffffffff> <0041> endbfrange").size() <= 65'536);
}
