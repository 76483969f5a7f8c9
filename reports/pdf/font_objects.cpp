// Embeds fonts (ISO 32000-1, 9.7 and 9.8). The only ways in are write_font() and to_unicode_cmap(); tested in
// tests/reports/pdf/text.test.cpp.
#include "reports/pdf/font_objects.h"

#include "reports/type/unicode.h"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>
#include <map>

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
std::string widths_of_codes(const PdfFont &font, const Typesetter &typesetter) {
  const FontFacts &facts = typesetter.facts(font.font);
  std::string out = "[0[" + thousandths(typesetter.advance(font.font, 0), facts);
  for (const CodedGlyph &coded : font.codes)
    out += " " + thousandths(typesetter.advance(font.font, coded.glyph), facts);
  return out + "]]";
}

/// Width of each CID that a code leads to.
std::string widths_of_cids(const PdfFont &font, const FontSubset &subset, const Typesetter &typesetter) {
  std::map<int, GlyphId> glyphs{{0, 0}};
  for (std::size_t i = 0; i < font.codes.size(); ++i) glyphs.emplace(subset.numbers[i], font.codes[i].glyph);
  std::string out = "[";
  for (const auto &[cid, glyph] : glyphs)
    out += fmt::format("{}[{}]", cid,
                       thousandths(typesetter.advance(font.font, glyph), typesetter.facts(font.font)));
  return out + "]";
}

/// Two bytes a code: the number of its glyph.
std::string glyph_map(const FontSubset &subset) {
  std::string out(2, '\0');
  for (const std::uint16_t number : subset.numbers) {
    out += static_cast<char>(number >> 8);
    out += static_cast<char>(number & 0xFF);
  }
  return out;
}

/// A CMap of two-byte codes, with `lines` in sections of its `operator_name` (Adobe Technical Note 5014).
std::string cmap(std::string_view name, std::string_view ordering, int type, std::string_view operator_name,
                 const std::vector<std::string> &lines) {
  std::string out = fmt::format("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
                                "/CIDSystemInfo<</Registry(Adobe)/Ordering({})/Supplement 0>>def\n"
                                "/CMapName/{} def\n/CMapType {} def\n"
                                "1 begincodespacerange\n<0000><FFFF>\nendcodespacerange\n",
                                ordering, name, type);
  constexpr std::size_t most = 100; // entries a section may have
  for (std::size_t i = 0; i < lines.size(); i += most) {
    const std::size_t end = std::min(lines.size(), i + most);
    fmt::format_to(std::back_inserter(out), "{} begin{}\n", end - i, operator_name);
    for (std::size_t k = i; k < end; ++k) out += lines[k];
    fmt::format_to(std::back_inserter(out), "end{}\n", operator_name);
  }
  return out + "endcmap\nCMapName currentdict/CMap defineresource pop\nend\nend\n";
}

constexpr std::string_view identity = "<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>";

/// The CMap from codes to CIDs, where no map from CIDs to glyphs may stand beside the font (table 117). The
/// CIDs mean nothing outside of the subset: whatever collection the font was made for, it is called Identity
/// here.
ObjectNumber write_encoding(ObjectFile &file, const std::string &name, const FontSubset &subset) {
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < subset.numbers.size(); ++i)
    lines.push_back(fmt::format("<{:04X}> {}\n", i + 1, subset.numbers[i]));
  const ObjectNumber encoding = file.reserve();
  file.write_stream(encoding,
                    {{"Type", "/CMap"}, {"CMapName", "/" + name}, {"CIDSystemInfo", std::string(identity)}},
                    cmap(name, "Identity", 1, "cidchar", lines), Compress::yes);
  return encoding;
}

ObjectNumber write_descriptor(ObjectFile &file, const std::string &name, const FontFacts &facts,
                              const FontSubset &subset) {
  constexpr int symbolic = 4, italic = 64; // table 123
  const ObjectNumber program = file.reserve(), descriptor = file.reserve();
  const bool cff = subset.outlines == Outlines::cff;
  const Entry about =
      cff ? Entry{"Subtype", "/CIDFontType0C"} : Entry{"Length1", std::to_string(subset.program.size())};
  file.write_stream(program, {about}, subset.program, Compress::yes);
  // The width of stems is not told by OpenType's tables: an estimate from the weight that is common practice.
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
                        {cff ? "FontFile3" : "FontFile2", reference(program)}});
  return descriptor;
}

} // namespace

std::string to_unicode_cmap(const PdfFont &font) {
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < font.codes.size(); ++i) {
    if (font.codes[i].text.empty()) continue;
    lines.push_back(fmt::format("<{:04X}><{}>\n", i + 1, hex_digits(utf16_be(font.codes[i].text))));
  }
  return cmap("Adobe-Identity-UCS", "UCS", 2, "bfchar", lines);
}

Outcome<ObjectNumber> write_font(ObjectFile &file, const PdfFont &font, const Typesetter &typesetter) {
  const auto subset = typesetter.subset(font.font, glyphs_of(font));
  if (!subset) return subset.fault();
  const FontFacts &facts = typesetter.facts(font.font);
  const std::string tag = subset_tag(subset.value().program), name = tag + "+" + facts.name;
  const ObjectNumber descriptor = write_descriptor(file, name, facts, subset.value());

  const ObjectNumber meaning = file.reserve(), descendant = file.reserve(), type0 = file.reserve();
  file.write_stream(meaning, {}, to_unicode_cmap(font), Compress::yes);
  Entries below = {{"Type", "/Font"},
                   {"BaseFont", "/" + name},
                   {"CIDSystemInfo", std::string(identity)},
                   {"FontDescriptor", reference(descriptor)}};
  std::string encoding = "/Identity-H", encoded_name = name;
  if (subset.value().outlines == Outlines::true_type) {
    const ObjectNumber glyphs = file.reserve();
    file.write_stream(glyphs, {}, glyph_map(subset.value()), Compress::yes);
    below.insert(below.end(), {{"Subtype", "/CIDFontType2"},
                               {"W", widths_of_codes(font, typesetter)},
                               {"CIDToGIDMap", reference(glyphs)}});
  } else {
    encoding = reference(write_encoding(file, tag, subset.value()));
    encoded_name += "-" + tag; // table 121
    below.insert(below.end(),
                 {{"Subtype", "/CIDFontType0"}, {"W", widths_of_cids(font, subset.value(), typesetter)}});
  }
  file.set(descendant, below);
  file.set(type0, {{"Type", "/Font"},
                   {"Subtype", "/Type0"},
                   {"BaseFont", "/" + encoded_name},
                   {"Encoding", encoding},
                   {"DescendantFonts", "[" + reference(descendant) + "]"},
                   {"ToUnicode", reference(meaning)}});
  return type0;
}

} // namespace stoneproof::pdf
