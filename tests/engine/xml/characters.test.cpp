#include "engine/xml/characters.h"
#include "tests/support/catch.h"

using namespace stoneproof;

TEST_CASE("UTF-8 is decoded as RFC 3629 says") {
  struct Case {
    std::string_view bytes;
    char32_t character;
    std::size_t length; // 0: not UTF-8
  };
  const Case cases[] = {{"A", U'A', 1},
                        {"\xC5\xBB", 0x17B, 2},
                        {"\xE2\x82\xAC", 0x20AC, 3},
                        {"\xF0\x9F\x93\xB7", 0x1F4F7, 4},
                        {"\xF4\x8F\xBF\xBF", 0x10FFFF, 4},
                        {"", 0, 0},
                        {"\x80", 0, 0},             // a continuation byte alone
                        {"\xC0\xAF", 0, 0},         // overlong "/"
                        {"\xE0\x80\xAF", 0, 0},     // overlong
                        {"\xF0\x80\x80\xAF", 0, 0}, // overlong
                        {"\xED\xA0\x80", 0, 0},     // a surrogate
                        {"\xF4\x90\x80\x80", 0, 0}, // above U+10FFFF
                        {"\xC5", 0, 0},             // cut off
                        {"\xE2\x82", 0, 0},
                        {"\xC5\x41", 0, 0}};
  for (const Case &c : cases) {
    INFO(c.bytes);
    const Decoded decoded = decode(c.bytes, 0);
    CHECK(decoded.bytes == c.length);
    CHECK(decoded.character == c.character);
    if (c.length > 0) CHECK(utf8_of(code_points_of(c.bytes)) == c.bytes);
  }
}

TEST_CASE("what a file says is shown safely and short") {
  CHECK(in_quotes("210") == "\"210\"");
  CHECK(in_quotes("a\x1B[31mb\n") == "\"a\xEF\xBF\xBD[31mb\xEF\xBF\xBD\"");
  CHECK(in_quotes("\xFF") == "\"\xEF\xBF\xBD\"");
  CHECK(in_quotes(std::string(40, 'x')) == "\"" + std::string(40, 'x') + "\"");
  CHECK(in_quotes(std::string(1000, 'x')) == "\"" + std::string(37, 'x') + "...\"");
  CHECK(printable("a\tb", true) == "a\tb");
  CHECK(printable("a\tb") == "a\xEF\xBF\xBD"
                             "b");
}

TEST_CASE("white space is collapsed as XML Schema says") {
  CHECK(collapsed(" \t a \r\n b ") == "a b");
  CHECK(collapsed(" \n ").empty());
  CHECK(collapsed("\xC2\xA0") == "\xC2\xA0"); // a no-break space is no white space of XML
}

TEST_CASE("text is written so that a reader of XML gets it back") {
  CHECK(xml_escaped("plain, Żółć, ελένη, 夏 and \xF0\x9F\x93\xB7") ==
        "plain, Żółć, ελένη, 夏 and \xF0\x9F\x93\xB7");
  CHECK(xml_escaped("<a b=\"c\"> & ]]> 'd'") == "&lt;a b=&quot;c&quot;&gt; &amp; ]]&gt; 'd'");
  CHECK(xml_escaped("a\tb\nc\rd  e") == "a&#9;b&#10;c&#13;d  e");
  CHECK(xml_escaped("a\x01\x1B\xFF"
                    "b\xEF\xBF\xBE") == "a\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD"
                                        "b\xEF\xBF\xBD");
  CHECK(xml_escaped("").empty());
}
