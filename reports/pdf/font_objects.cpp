// Embeds fonts (ISO 32000-1, 9.7 and 9.8). The only ways in are write_font() and to_unicode_cmap(); tested in
// tests/reports/pdf/text.test.cpp.
#include "reports/pdf/font_objects.h"

#include "reports/type/unicode.h"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>

namespace stoneproof::pdf {
namespace {

std::vector<GlyphId> glyphs_of(const PdfFont &font) {
  std::vector<GlyphId> glyphs;
  for (const CodedGlyph &coded : font.codes) glyphs.push_back(coded.glyph);
  return glyphs;
}

/// Six letters that tell subsets of one font apart, made from the subset itself by the hash FNV-1a.
std::string subset_tag(std::string_view subset) {
  std::uint64_t hash = 0xcbf29ce484222325;
  for (const char c : subset) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3;
  std::string tag;
  for (int i = 0; i < 6; ++i, hash /= 26) tag += static_cast<char>('A' + hash % 26);
  return tag;
}

std::string thousandths(int units, const FontFacts &facts) {
  return number(units * 1000.0 / facts.units_per_em);
}

/// Width of each code from 0 on.
std::string widths(const PdfFont &font, const Typesetter &typesetter) {
  const FontFacts &facts = typesetter.facts(font.font);
  std::string out = "[0[" + thousandths(typesetter.advance(font.font, 0), facts);
  for (const CodedGlyph &coded : font.codes)
    out += " " + thousandths(typesetter.advance(font.font, coded.glyph), facts);
  return out + "]]";
}

/// Two bytes a code: the number of its glyph.
std::string glyph_map(const PdfFont &font) {
  std::string out(2, '\0');
  for (const CodedGlyph &coded : font.codes) {
    out += static_cast<char>(coded.glyph >> 8 & 0xFF);
    out += static_cast<char>(coded.glyph & 0xFF);
  }
  return out;
}

ObjectNumber write_descriptor(ObjectFile &file, const std::string &name, const FontFacts &facts,
                              std::string_view subset) {
  constexpr int symbolic = 4, italic = 64; // table 123
  const ObjectNumber program = file.reserve(), descriptor = file.reserve();
  file.write_stream(program, {{"Length1", std::to_string(subset.size())}}, subset, Compress::yes);
  // The width of stems is not told by TrueType fonts: an estimate from the weight that is common practice.
  const int stem = 50 + facts.weight * facts.weight / (65 * 65);
  const std::string box = "[" + thousandths(facts.left, facts) + " " + thousandths(facts.bottom, facts) +
                          " " + thousandths(facts.right, facts) + " " + thousandths(facts.top, facts) + "]";
  file.set(descriptor, {{"Type", "/FontDescriptor"},
                        {"FontName", "/" + name},
                        {"Flags", std::to_string(symbolic | (facts.italic_angle < 0 ? italic : 0))},
                        {"FontBBox", box},
                        {"ItalicAngle", number(facts.italic_angle)},
                        {"Ascent", thousandths(facts.ascent, facts)},
                        {"Descent", thousandths(facts.descent, facts)},
                        {"CapHeight", thousandths(facts.cap_height, facts)},
                        {"StemV", std::to_string(stem)},
                        {"FontFile2", reference(program)}});
  return descriptor;
}

} // namespace

std::string to_unicode_cmap(const PdfFont &font) {
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < font.codes.size(); ++i) {
    if (font.codes[i].text.empty()) continue;
    lines.push_back(fmt::format("<{:04X}><{}>\n", i + 1, hex_digits(utf16_be(font.codes[i].text))));
  }
  std::string out = "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
                    "/CIDSystemInfo<</Registry(Adobe)/Ordering(UCS)/Supplement 0>>def\n"
                    "/CMapName/Adobe-Identity-UCS def\n/CMapType 2 def\n"
                    "1 begincodespacerange\n<0000><FFFF>\nendcodespacerange\n";
  constexpr std::size_t most = 100; // entries a section may have (Adobe Technical Note 5014)
  for (std::size_t i = 0; i < lines.size(); i += most) {
    const std::size_t end = std::min(lines.size(), i + most);
    fmt::format_to(std::back_inserter(out), "{} beginbfchar\n", end - i);
    for (std::size_t k = i; k < end; ++k) out += lines[k];
    out += "endbfchar\n";
  }
  return out + "endcmap\nCMapName currentdict/CMap defineresource pop\nend\nend\n";
}

Outcome<ObjectNumber> write_font(ObjectFile &file, const PdfFont &font, const Typesetter &typesetter) {
  const auto subset = typesetter.subset(font.font, glyphs_of(font));
  if (!subset) return subset.fault();
  const FontFacts &facts = typesetter.facts(font.font);
  const std::string name = subset_tag(subset.value()) + "+" + facts.name;
  const ObjectNumber descriptor = write_descriptor(file, name, facts, subset.value());

  const ObjectNumber glyphs = file.reserve(), meaning = file.reserve(), descendant = file.reserve(),
                     type0 = file.reserve();
  file.write_stream(glyphs, {}, glyph_map(font), Compress::yes);
  file.write_stream(meaning, {}, to_unicode_cmap(font), Compress::yes);
  file.set(descendant, {{"Type", "/Font"},
                        {"Subtype", "/CIDFontType2"},
                        {"BaseFont", "/" + name},
                        {"CIDSystemInfo", "<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>"},
                        {"FontDescriptor", reference(descriptor)},
                        {"W", widths(font, typesetter)},
                        {"CIDToGIDMap", reference(glyphs)}});
  file.set(type0, {{"Type", "/Font"},
                   {"Subtype", "/Type0"},
                   {"BaseFont", "/" + name},
                   {"Encoding", "/Identity-H"},
                   {"DescendantFonts", "[" + reference(descendant) + "]"},
                   {"ToUnicode", reference(meaning)}});
  return type0;
}

} // namespace stoneproof::pdf
