// The lean estimate: widths by hand, lines at their edges, and real faces, all of which must be wider.
#include "engine/rules/lean_type.h"

#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

TextBlock block(std::string words, Length size = 10_mm) {
  TextBlock text;
  text.text = std::move(words);
  text.type_size = size;
  return text;
}

} // namespace

TEST_CASE("widths of characters, in parts of the type size") {
  struct Case {
    std::string_view text;
    double width;
  };
  const Case cases[] = {
      {"", 0},
      {"a", 0.36},
      {"A4", 0.72},
      {"il.", 0.6},
      {"mW", 1.06},
      {"a b", 0.89},
      {"a\xC2\xA0z", 0.89},      // a space that does not break
      {"ż", 0.295},              // one letter
      {"z\xCC\x87", 0.36},       // the same as a letter with a mark
      {"Ελ", 0.59},              // Greek
      {"дом", 0.885},            // Cyrillic
      {"河水", 1.8},             // a square each
      {"한", 0.9},               // Hangul
      {"。", 0.5},               // half of it may be left out
      {"\xF0\xA0\x80\x80", 0.9}, // an ideograph beyond 16 bits
      {"क\xE0\xA5\x8D", 0.2},    // Devanagari with its virama
      {"co\xC2\xADop", 1.44},    // a hyphen that does not show
      {"\xE2\x80\x8B", 0},       // a space without width
      {"\xFF", 0.2},             // no character
      {"\xE6\xB2", 0.2},         // half a character at the end
  };
  for (const auto &[text, width] : cases) {
    CAPTURE(text);
    CHECK(lean_width(text) == Approx(width));
  }
}

TEST_CASE("lines fill up to the last letter, and a space at a line's end takes no room") {
  // Type of 10 mm: a letter is 3.6 mm, a space 1.7 mm.
  CHECK(lean_lines(block("aaaa"), 14.4_mm) == 1);
  CHECK(lean_lines(block("aaaa"), 14.3_mm) == 2);
  CHECK(lean_lines(block("aa aa"), 7.2_mm) == 2);
  CHECK(lean_lines(block("aa aa"), 7.1_mm) == 3);
  CHECK(lean_lines(block("aa aa"), 16.1_mm) == 1);
  CHECK(lean_lines(block("aaaaaaaa"), 7.2_mm) == 4); // a word without spaces may be broken
  CHECK(lean_lines(block("a\nb"), 100_mm) == 2);
  CHECK(lean_lines(block("a\nbbbb\nc"), 7.2_mm) == 4);
  CHECK(lean_lines(block(""), 100_mm) == 1);
}

TEST_CASE("the first line is as high as capitals, each further one nine tenths of the type size") {
  CHECK(lean_height(block("a"), 100_mm) == 6_mm);
  CHECK(lean_height(block("a\nb\nc"), 100_mm) == 24_mm);
}

TEST_CASE("more words never need less height, nor does a wider block need more") {
  std::string words;
  Length before;
  for (int i = 0; i < 60; ++i) {
    words += i % 3 == 0 ? "river " : "mill, ";
    const Length height = lean_height(block(words, 3_mm), 40_mm);
    CHECK(height >= before);
    CHECK(lean_height(block(words, 3_mm), 41_mm) <= height);
    before = height;
  }
  CHECK(before > 10_mm);
}

TEST_CASE("the estimate is leaner than every measured face") {
  // Mean advances over the demo album's words, tests/bench/type_widths.py; its classes: thin, small, wide.
  struct Face {
    const char *name;
    double space, thin, letter, wide;
  };
  const Face faces[] = {{"Gentium Plus", 0.220, 0.322, 0.488, 0.754},
                        {"Gentium Plus Italic", 0.200, 0.286, 0.436, 0.675},
                        {"Lato", 0.256, 0.315, 0.528, 0.818},
                        {"Roboto Condensed Light Italic", 0.223, 0.258, 0.456, 0.683},
                        {"DejaVu Sans Condensed", 0.286, 0.319, 0.548, 0.800}};
  for (const Face &face : faces) {
    CAPTURE(face.name);
    CHECK(lean::space < face.space);
    CHECK(lean::thin < face.thin);
    CHECK(lean::letter < face.letter);
    CHECK(lean::wide < face.wide);
  }
}
