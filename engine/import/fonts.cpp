// A font's dictionary -> widths and characters. The only way in is read_font; tested in
// tests/engine/import/fonts.test.cpp.
#include "engine/import/fonts.h"

#include <algorithm>
#include <cmath>

namespace stoneproof::finished {

namespace {

constexpr std::size_t most_map_bytes = 4'000'000, most_glyph_bytes = 1'000'000, most_widths = 1'000'000;

/// "ABCDEF+Name" of a subset is "Name" (ISO 32000-1, 9.6.4).
std::string without_tag(const std::string &name) {
  const bool tagged =
      name.size() > 7 && name[6] == '+' &&
      std::all_of(name.begin(), name.begin() + 6, [](char c) { return c >= 'A' && c <= 'Z'; });
  return tagged ? name.substr(7) : name;
}

void read_descriptor(const Object &descriptor, Font &font) {
  font.embedded = descriptor["FontFile"].is_stream() || descriptor["FontFile2"].is_stream() ||
                  descriptor["FontFile3"].is_stream();
  const double ascent = descriptor["Ascent"].number_or(0) / 1000;
  const double descent = -std::abs(descriptor["Descent"].number_or(0)) / 1000;
  // Careless programs write nothing or nonsense here.
  if (ascent > 0.3 && ascent < 1.5) font.ascent = ascent;
  if (descent < 0 && descent > -0.8) font.descent = descent;
  font.other_width = descriptor["MissingWidth"].number_or(font.other_width);
}

void read_simple_widths(const Object &dictionary, Font &font) {
  const Object widths = dictionary["Widths"];
  const auto first = static_cast<unsigned>(dictionary["FirstChar"].whole_or(0, 0, 255));
  for (std::size_t i = 0; i < std::min<std::size_t>(widths.size(), 256); ++i)
    font.widths[first + static_cast<unsigned>(i)] = widths.at(i).number_or(0);
}

/// W of a CIDFont: "first [w1 w2 ...]" or "first last w" (ISO 32000-1, 9.7.4.3).
void read_composite_widths(const Object &descendant, Font &font) {
  font.other_width = descendant["DW"].number_or(1000);
  const Object list = descendant["W"];
  std::size_t told = 0; // a list that tells of every code many times over is cut off
  for (std::size_t i = 0; i + 1 < list.size() && told < most_widths;) {
    const auto first = static_cast<unsigned>(list.at(i).whole_or(0, 0, 65'535));
    const Object next = list.at(i + 1);
    if (next.is_array()) {
      for (std::size_t k = 0; k < std::min<std::size_t>(next.size(), 65'536); ++k)
        font.widths[first + static_cast<unsigned>(k)] = next.at(k).number_or(font.other_width);
      told += next.size();
      i += 2;
      continue;
    }
    const auto last = static_cast<unsigned>(next.whole_or(0, 0, 65'535));
    const double width = list.at(i + 2).number_or(font.other_width);
    for (unsigned code = first; code <= last; ++code, ++told) font.widths[code] = width;
    i += 3;
  }
}

void read_simple_characters(const Object &dictionary, Font &font) {
  const Object encoding = dictionary["Encoding"];
  const std::string base = encoding.is_dictionary() ? encoding["BaseEncoding"].name() : encoding.name();
  for (unsigned code = 32; code < 256; ++code) {
    const std::string character = character_of_code(base, code);
    if (!character.empty()) font.characters.emplace(code, character);
  }
  const Object differences = encoding["Differences"];
  unsigned code = 0;
  for (std::size_t i = 0; i < std::min<std::size_t>(differences.size(), 1000); ++i) {
    const Object item = differences.at(i);
    if (item.number())
      code = static_cast<unsigned>(item.whole_or(0, 0, 255));
    else if (const std::string character = character_of_glyph(item.name()); !character.empty())
      font.characters[code++] = character;
    else
      font.characters.erase(code++);
  }
}

/// Glyphs of a Type 3 font whose content places a picture or holds one.
void read_picture_glyphs(const PdfFile &file, const Object &dictionary, Font &font) {
  const Object differences = dictionary["Encoding"]["Differences"], glyphs = dictionary["CharProcs"];
  unsigned code = 0;
  for (std::size_t i = 0; i < std::min<std::size_t>(differences.size(), 1000); ++i) {
    const Object item = differences.at(i);
    if (item.number()) {
      code = static_cast<unsigned>(item.whole_or(0, 0, 255));
      continue;
    }
    const Object glyph = glyphs[item.name()];
    const std::string content =
        glyph.is_stream() ? file.decoded(glyph, most_glyph_bytes).bytes : std::string();
    if (content.find("Do") != std::string::npos || content.find("BI") != std::string::npos)
      font.pictures.emplace(code, glyph);
    ++code;
  }
}

} // namespace

double Font::width_of(unsigned code) const {
  const auto found = widths.find(code);
  return found == widths.end() ? other_width : found->second;
}

const std::string &Font::character_of(unsigned code) const {
  static const std::string unknown = "\xef\xbf\xbd";
  const auto found = characters.find(code);
  return found == characters.end() ? unknown : found->second;
}

Font read_font(const PdfFile &file, const Object &dictionary) {
  Font font;
  font.dictionary = dictionary;
  font.name = without_tag(dictionary["BaseFont"].name());
  const std::string kind = dictionary["Subtype"].name();
  font.type3 = kind == "Type3";
  font.two_bytes = kind == "Type0";
  if (font.two_bytes) {
    const Object descendant = dictionary["DescendantFonts"].at(0);
    read_descriptor(descendant["FontDescriptor"], font);
    read_composite_widths(descendant, font);
  } else {
    read_descriptor(dictionary["FontDescriptor"], font);
    read_simple_widths(dictionary, font);
    read_simple_characters(dictionary, font);
    if (font.widths.empty()) font.widths = standard_widths(font.name, font.characters);
    if (font.widths.empty()) font.other_width = 500; // none is told; about that of usual text
  }
  if (font.type3) {
    font.embedded = true;
    if (font.name.empty()) font.name = dictionary["Name"].name();
    read_picture_glyphs(file, dictionary, font);
    if (dictionary["FontMatrix"].size() == 6) font.glyph_space = matrix_of(dictionary["FontMatrix"]);
  }
  const Object map = dictionary["ToUnicode"];
  if (map.is_stream())
    for (auto &[code, character] : read_to_unicode(file.decoded(map, most_map_bytes).bytes))
      font.characters[code] = std::move(character);
  return font;
}

} // namespace stoneproof::finished
