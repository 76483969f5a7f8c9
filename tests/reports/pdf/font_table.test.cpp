#include "reports/pdf/font_table.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::pdf;

TEST_CASE("a glyph has one code for each text that it stands for") {
  FontTable table;
  CHECK(table.code_of(3, 7, U" ").code == 1);
  CHECK(table.code_of(3, 7, U"\u00A0").code == 2);
  CHECK(table.code_of(3, 7, U" ").code == 1);
  CHECK(table.code_of(4, 7, U" ").font == 1);
  REQUIRE(table.fonts().size() == 2);
  CHECK(table.fonts()[0].codes.size() == 2);
}

TEST_CASE("a font with no code left is followed by another") {
  FontTable table;
  for (char32_t c = 1; c <= 0xFFFF; ++c) table.code_of(0, 0, std::u32string(1, c));
  CHECK(table.code_of(0, 0, std::u32string(1, 0xFFFF)).code == 0xFFFF);
  const GlyphCode next = table.code_of(0, 0, std::u32string(1, 0x10000));
  CHECK(next.font == 1);
  CHECK(next.code == 1);
}
