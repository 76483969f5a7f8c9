#include "reports/type/unicode.h"
#include "tests/support/catch.h"

#include <vector>

using namespace stoneproof;

TEST_CASE("what is not UTF-8 becomes one replacement character a byte") {
  struct Case {
    std::string bytes;
    std::u32string text;
  };
  // Well-formed sequences are those of the Unicode Standard, table 3-7.
  for (const Case &c : std::vector<Case>{
           {"", U""},
           {"a\xC5\x82\xE2\x82\xAC\xF0\x9F\x98\x80", U"a\u0142\u20AC\U0001F600"},
           {"\x80", U"\uFFFD"},
           {"\xC0\xAF", U"\uFFFD\uFFFD"},
           {"\xE0\x80\x80", U"\uFFFD\uFFFD\uFFFD"},
           {"\xED\xA0\x80", U"\uFFFD\uFFFD\uFFFD"},
           {"\xF4\x90\x80\x80", U"\uFFFD\uFFFD\uFFFD\uFFFD"},
           {"\xF5x", U"\uFFFDx"},
           {"\xE2\x82", U"\uFFFD\uFFFD"},
           {"\xE2x\x82", U"\uFFFDx\uFFFD"},
           {"\xEF\xBF\xBF", U"\uFFFF"},
           {std::string("a\0b", 3), std::u32string(U"a\0b", 3)},
       }) {
    INFO(c.bytes);
    CHECK(code_points(c.bytes) == c.text);
  }
}

TEST_CASE("every code point survives the way to UTF-8 and back") {
  std::u32string all;
  for (char32_t c = 0; c <= 0x10FFFF; ++c)
    if (c < 0xD800 || c > 0xDFFF) all += c;
  CHECK((code_points(utf8(all)) == all));
  CHECK(utf8(std::u32string{0xD800, 0x110000}) == "\xEF\xBF\xBD\xEF\xBF\xBD");
}

TEST_CASE("UTF-16 writes what lies beyond the basic plane as two units") {
  // The example of RFC 2781, section 2.1 and 4.
  CHECK(utf16_be(std::u32string{0x12345, U'='}) == std::string("\xD8\x08\xDF\x45\x00\x3D", 6));
  CHECK(utf16_be(std::u32string{0xDC00}) == "\xFF\xFD");
}
