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

TEST_CASE("the fonts that every reader has bring their widths") {
  // Adobe's metrics of the 14 standard fonts: A, e acute, and a code of Symbol's own, alpha.
  const std::unordered_map<unsigned, std::string> characters = {{'A', "A"}, {0xe9, "\xC3\xA9"}};
  CHECK(standard_widths("Helvetica", characters).at('A') == 667);
  CHECK(standard_widths("Helvetica", characters).at(0xe9) == 556);
  CHECK(standard_widths("Times-Roman", characters).at(0xe9) == 444);
  CHECK(standard_widths("Arial,Bold", characters).at('A') == 722);
  CHECK(standard_widths("Courier-BoldOblique", characters).at('A') == 600);
  CHECK(standard_widths("Symbol", {}).at(0x61) == 631);
  CHECK(standard_widths("Gentium", characters).empty());
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

TEST_CASE("a map cannot make a long text of every code") {
  const auto map =
      read_to_unicode("1 beginbfrange <0000> <ffff> <" + std::string(100'000, '4') + "> endbfrange");
  CHECK(map.size() == 65'536);
  CHECK(map.at(7).size() <= 512 * 3 / 2);
}

TEST_CASE("a broken map gives what makes sense of it") {
  CHECK(read_to_unicode("beginbfchar <01> endbfchar <02").empty());
  CHECK(read_to_unicode("1 beginbfchar <01> <D83D> endbfchar").at(1) == "\xEF\xBF\xBD");
  CHECK(read_to_unicode("1 beginbfrange <0000> <ffffffff> <0041> endbfrange").size() <= 65'536);
}
