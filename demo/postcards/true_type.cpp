// Reads the tables of a TrueType font (OpenType 1.9: head, hhea, hmtx, post, cmap format 4). Only way in:
// true_type.h.
#include "demo/postcards/true_type.h"

#include <algorithm>
#include <cstdint>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <utility>

namespace stoneproof::demo {

namespace {

constexpr std::pair<char32_t, unsigned char> beyond_latin_1[] = {
    {0x2013, 0x96}, {0x2014, 0x97}, {0x2018, 0x91}, {0x2019, 0x92}, {0x201C, 0x93}, {0x201D, 0x94}};

/// Big-endian numbers of the file; std::out_of_range beyond its end.
class Tables {
public:
  explicit Tables(const std::string &bytes) : bytes_(bytes) {}

  std::size_t at(std::size_t place, int count) const {
    std::size_t value = 0;
    for (int i = 0; i < count; ++i)
      value = value << 8 | static_cast<unsigned char>(bytes_.at(place + static_cast<std::size_t>(i)));
    return value;
  }
  std::size_t word(std::size_t place) const { return at(place, 2); }
  int number(std::size_t place) const { return static_cast<std::int16_t>(at(place, 2)); }

  std::size_t start(const std::string &tag) const {
    for (std::size_t i = 0; i < word(4); ++i)
      if (bytes_.compare(12 + 16 * i, 4, tag) == 0) return at(12 + 16 * i + 8, 4);
    throw std::out_of_range("no table " + tag);
  }

private:
  const std::string &bytes_;
};

/// Where the table of Unicode characters in format 4 begins: platform 3, encoding 1.
std::size_t unicode_table(const Tables &font) {
  const std::size_t cmap = font.start("cmap");
  for (std::size_t i = 0; i < font.word(cmap + 2); ++i) {
    const std::size_t row = cmap + 4 + 8 * i;
    if (font.at(row, 4) == 0x00030001) return cmap + font.at(row + 4, 4);
  }
  throw std::out_of_range("no Unicode characters");
}

std::size_t glyph_of(const Tables &font, std::size_t table, std::size_t character) {
  const std::size_t twice = font.word(table + 6); // the number of segments, doubled
  const std::size_t ends = table + 14, starts = ends + twice + 2, deltas = starts + twice,
                    ranges = deltas + twice;
  for (std::size_t i = 0; i < twice; i += 2) {
    if (font.word(ends + i) < character) continue;
    const std::size_t first = font.word(starts + i), range = font.word(ranges + i);
    if (first > character) return 0;
    if (range == 0) return (character + font.word(deltas + i)) & 0xFFFF;
    const std::size_t glyph = font.word(ranges + i + range + 2 * (character - first));
    return glyph == 0 ? 0 : (glyph + font.word(deltas + i)) & 0xFFFF;
  }
  return 0;
}

void read(TrueType &font) {
  const Tables tables(font.bytes);
  const std::size_t head = tables.start("head"), hhea = tables.start("hhea"), hmtx = tables.start("hmtx");
  const int em = static_cast<int>(tables.word(head + 18));
  const auto thousandths = [&](int units) { return units * 1000 / em; };
  for (std::size_t i = 0; i < 4; ++i) font.box[i] = thousandths(tables.number(head + 36 + 2 * i));
  font.ascent = thousandths(tables.number(hhea + 4));
  font.descent = thousandths(tables.number(hhea + 6));
  font.slant = static_cast<std::int32_t>(tables.at(tables.start("post") + 4, 4)) / 65536.0;
  const std::size_t characters = unicode_table(tables), measured = tables.word(hhea + 34);
  const auto measure = [&](std::size_t code, std::size_t character) {
    const std::size_t glyph = glyph_of(tables, characters, character);
    if (glyph != 0)
      font.advances[code] =
          thousandths(static_cast<int>(tables.word(hmtx + 4 * std::min(glyph, measured - 1))));
  };
  for (std::size_t code = 32; code < 127; ++code) measure(code, code);
  for (std::size_t code = 160; code < 256; ++code) measure(code, code);
  for (const auto &[character, code] : beyond_latin_1) measure(code, character);
}

} // namespace

TrueType read_true_type(const std::filesystem::path &file) {
  std::ifstream in(file, std::ios::binary);
  TrueType font;
  font.bytes = (std::ostringstream() << in.rdbuf()).str();
  try {
    read(font);
  } catch (const std::out_of_range &fault) {
    throw std::runtime_error("cannot read the font " + file.string() + ": " + fault.what());
  }
  return font;
}

unsigned char win_ansi(char32_t character) {
  if (character < 128 || (character >= 160 && character < 256)) return static_cast<unsigned char>(character);
  for (const auto &[listed, code] : beyond_latin_1)
    if (listed == character) return code;
  throw std::runtime_error("a character that WinAnsiEncoding has not, or true_type.cpp does not list");
}

} // namespace stoneproof::demo
