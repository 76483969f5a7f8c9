#include "reports/type/typesetter.h"
#include "reports/type/cff_charset.h"
#include "reports/type/font.h"
#include "reports/type/font_search.h"
#include "reports/type/unicode.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <array>
#include <random>
#include <thread>

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

constexpr std::array faces{Face::text, Face::text_bold, Face::text_italic, Face::label, Face::label_bold};

const Typesetter &typesetter() {
  static const Typesetter loaded = Typesetter::load().value();
  return loaded;
}

std::vector<ShapedGlyph> glyphs(Face face, std::string_view line) {
  std::vector<ShapedGlyph> all;
  for (const ShapedRun &run : typesetter().shape(face, line).runs)
    all.insert(all.end(), run.glyphs.begin(), run.glyphs.end());
  return all;
}

double drawn_ems(const ShapedLine &line) {
  double ems = 0;
  for (const ShapedRun &run : line.runs)
    for (const ShapedGlyph &glyph : run.glyphs)
      ems += static_cast<double>(glyph.advance) / typesetter().facts(run.font).units_per_em;
  return ems;
}

/// Ten ticks are 1/36 micrometre.
bool near(Length a, Length b) { return std::abs((a - b).ticks()) <= 10; }

} // namespace

TEST_CASE("pairs are kerned and ligatures are left out") {
  for (const Face face : faces) {
    INFO(static_cast<int>(face));
    CHECK(typesetter().width(face, 10_pt, "AV") <
          typesetter().width(face, 10_pt, "A") + typesetter().width(face, 10_pt, "V"));
    CHECK(glyphs(face, "fi ffl").size() == 6);
  }
}

TEST_CASE("figures of the label faces have one width") {
  for (const Face face : {Face::label, Face::label_bold}) {
    const Length zero = typesetter().width(face, 10_pt, "0");
    for (char digit = '0'; digit <= '9'; ++digit)
      CHECK(typesetter().width(face, 10_pt, std::string(8, digit)) == zero * 8);
  }
}

TEST_CASE("every face sets Latin, Greek and Cyrillic letters from its own font") {
  // Letters of ISO 8859-1, -2, -5 and -7 and of their neighbours in Unicode's blocks.
  std::u32string letters =
      U"ABCXYZabcxyz0123456789.,:;!?()-\u2013\u2014\u2018\u2019\u201C\u201D\u2026\u00D7\u00B0%";
  for (char32_t c = 0xC0; c <= 0x17E; ++c)
    if (c != 0x149) letters += c; // deprecated by Unicode; Gentium leaves it out
  for (char32_t c = 0x386; c <= 0x3CE; ++c)
    if (c != 0x387 && c != 0x38B && c != 0x38D && c != 0x3A2) letters += c;
  for (char32_t c = 0x401; c <= 0x45F; ++c) letters += c;
  for (const Face face : faces) {
    const ShapedLine line = typesetter().shape(face, utf8(letters));
    REQUIRE(line.runs.size() == 1);
    CHECK(std::none_of(line.runs[0].glyphs.begin(), line.runs[0].glyphs.end(),
                       [](const ShapedGlyph &glyph) { return glyph.id == 0; }));
  }
}

TEST_CASE("a letter and its accent set apart or as one look the same") {
  for (const Face face : faces)
    for (const auto &[one, apart] : {std::pair{"\u00E9", "e\u0301"},
                                     {"\u0142\u00F3d\u017A", "\u0142o\u0301dz\u0301"},
                                     {"\u0439", "\u0438\u0306"},
                                     {"\u03AE", "\u03B7\u0301"}}) {
      INFO(one);
      CHECK(near(typesetter().width(face, 10_pt, one), typesetter().width(face, 10_pt, apart)));
      CHECK(glyphs(face, one).size() == glyphs(face, apart).size());
    }
}

TEST_CASE("a character that the face lacks comes from the fallback font, at last as a white square") {
  const ShapedLine square = typesetter().shape(Face::text, "\u25A1");
  const ShapedLine line =
      typesetter().shape(Face::text, "ab \u25B2 \u05D0 \U000F1234 cd"); // private use: no font has it
  REQUIRE(line.runs.size() >= 3);
  CHECK(line.runs.front().font != line.runs[1].font);
  CHECK(line.runs.front().font == line.runs.back().font);
  int squares = 0;
  for (const ShapedRun &run : line.runs)
    for (const ShapedGlyph &glyph : run.glyphs) {
      CHECK(glyph.id != 0);
      if (line.text[glyph.first] != U'\U000F1234') continue;
      ++squares;
      CHECK(run.font == square.runs[0].font);
      CHECK(glyph.id == square.runs[0].glyphs[0].id);
      CHECK(glyph.advance == square.runs[0].glyphs[0].advance);
    }
  CHECK(squares == 1);
}

TEST_CASE("characters beyond our fonts come from other installed ones, where the words were known") {
  const std::string words = "漢字とかな and Żółw";
  const Typesetter with = Typesetter::load(words).value();
  for (const Face face : faces) {
    const ShapedLine line = with.shape(face, words);
    CHECK(line.text == code_points(words));
    std::size_t first = 0; // what is set next, in the order of the text
    for (const ShapedRun &run : line.runs)
      for (const ShapedGlyph &glyph : run.glyphs) {
        CHECK(glyph.id != 0);
        CHECK(glyph.first == first);
        first += glyph.count;
      }
    CHECK(first == line.text.size());
    CHECK(with.width(face, 10_pt, "漢") > 8_pt);
    // What our fonts have stays theirs.
    CHECK(with.shape(face, "Żółw").runs.at(0).font == typesetter().shape(face, "Żółw").runs.at(0).font);
    const auto missing = glyphs(face, "漢");
    REQUIRE(missing.size() == 1);
    CHECK(missing[0].id != 0);
  }
}

TEST_CASE("a font with CFF outlines gives small subsets, whichever of a collection it is") {
  const std::u32string characters = U"漢字山田太郎한글かな";
  const auto found = find_fonts_with(characters);
  REQUIRE(found.size() == 1);
  CHECK(found[0].path.ends_with("NotoSansCJK-Regular.ttc"));
  std::vector<std::string> programs;
  for (const unsigned index : {0U, 2U}) {
    const Font font = Font::load({found[0].path, index}, "").value();
    CHECK(font.facts().name == (index == 0 ? "NotoSansCJKjp-Regular" : "NotoSansCJKsc-Regular"));
    std::vector<GlyphId> wanted;
    const HbBuffer buffer(hb_buffer_create());
    for (std::size_t i = 0; i < characters.size(); ++i) {
      font.shape(characters, {i, 1, HB_SCRIPT_HAN, false}, buffer.get(), 0);
      wanted.push_back(hb_buffer_get_glyph_infos(buffer.get(), nullptr)->codepoint);
    }
    const FontSubset subset = font.subset(wanted).value();
    CHECK(subset.outlines == Outlines::cff);
    CHECK(subset.program.size() < 4000); // the whole collection has 19 MB
    // In this font the CIDs are the glyphs' numbers.
    CHECK(std::vector<GlyphId>(subset.numbers.begin(), subset.numbers.end()) == wanted);
    const auto cids = cids_of(subset.program);
    REQUIRE(cids);
    for (const std::uint16_t number : subset.numbers)
      CHECK(std::count(cids->begin(), cids->end(), number) == 1);
    std::reverse(wanted.begin(), wanted.end());
    CHECK(font.subset(wanted).value().program == subset.program);
    programs.push_back(subset.program);
  }
  CHECK(programs[0] != programs[1]);
}

TEST_CASE("what comes from another font is bold in bold faces") {
  const Typesetter with = Typesetter::load("漢").value();
  const auto font_of = [&](Face face) { return with.facts(with.shape(face, "漢").runs.at(0).font); };
  for (const Face face : {Face::text, Face::text_italic, Face::label})
    CHECK(font_of(face).name == "NotoSansCJKjp-Regular");
  for (const Face face : {Face::text_bold, Face::label_bold}) {
    CHECK(font_of(face).name == "NotoSansCJKjp-Bold");
    CHECK(font_of(face).weight == 700);
  }
  CHECK_FALSE(find_bold_of({"/no/such/font.ttf", 0}));
}

TEST_CASE("a sign is written as the language writes it") {
  const std::string sign = "直"; // U+76F4: one code, drawn one way in China, another in Japan
  const auto glyph_in = [&](const std::string &language) {
    return Typesetter::load(sign, language).value().shape(Face::text, sign).runs.at(0).glyphs.at(0).id;
  };
  CHECK(glyph_in("ja") != glyph_in("zh"));
  CHECK(glyph_in("zh-CN") == glyph_in("zh"));
  CHECK(glyph_in("pl") == glyph_in("ja")); // the font's own way
}

TEST_CASE("fonts for characters are as few as can be, and the same every time") {
  CHECK(find_fonts_with(U"").empty());
  CHECK(find_fonts_with(U"\U000F1234").empty()); // private use: no font has it
  const auto files = find_fonts_with(U"漢字");
  REQUIRE(files.size() == 1);
  for (int i = 0; i < 3; ++i) CHECK(find_fonts_with(U"漢字").at(0).path == files[0].path);
}

TEST_CASE("fonts with TrueType and with CFF outlines are found, each once") {
  std::vector<FontFile> all;
  for (auto files = find_fonts_with(U"漢"); !files.empty(); files = find_fonts_with(U"漢", all)) {
    REQUIRE(files.size() == 1);
    CHECK(std::find(all.begin(), all.end(), files[0]) == all.end());
    all.push_back(files[0]);
  }
  for (const char *name : {"NotoSansCJK-Regular.ttc", "DroidSansFallbackFull.ttf"}) {
    INFO(name);
    CHECK(std::any_of(all.begin(), all.end(),
                      [name](const FontFile &file) { return file.path.ends_with(name); }));
  }
}

TEST_CASE("what cannot be set is shown, what is no sign is not") {
  CHECK(typesetter().shape(Face::label, "a\tb\nc\rd").text == U"a b c d");
  CHECK(typesetter().shape(Face::label, std::string("a\0\x1B\x7F\xC2\x85z", 7)).text ==
        U"a\uFFFD\uFFFD\uFFFD\uFFFDz");
  CHECK(typesetter().shape(Face::label, "a\xFFz").text == U"a\uFFFDz");
  CHECK(typesetter().width(Face::text, 10_pt, "soft\u00ADhyphen") ==
        typesetter().width(Face::text, 10_pt, "softhyphen"));
  CHECK(typesetter().width(Face::text, 10_pt, "300\u00A0ppi") ==
        typesetter().width(Face::text, 10_pt, "300 ppi"));
  CHECK(typesetter().width(Face::text, 10_pt, "") == 0_pt);
  CHECK(typesetter().width(Face::text, 10_pt, "\xFF") > 0_pt);
  CHECK(typesetter().width(Face::text, 10_pt, "\U0001FAE0") > 0_pt);
}

TEST_CASE("the width of a line is that of its drawn glyphs and adds up at spaces") {
  for (const char *line :
       {"Waltz, Ave. To Tom: 12 To 74", "\u0422\u0430\u043C 12 \u043C\u043C",
        "AV \u05D0\u05D1 (12) \u25B2 To", "  two  ", "V\u0301 A", "a \u0301V", "line\nend To"})
    for (const Face face : faces) {
      INFO(line);
      const Length width = typesetter().width(face, 100_pt, line);
      CHECK(near(width, 100_pt * drawn_ems(typesetter().shape(face, line))));
      CHECK(near(typesetter().width(face, 100_pt, std::string(line) + " Tom"),
                 width + typesetter().width(face, 100_pt, " ") + typesetter().width(face, 100_pt, "Tom")));
    }
}

TEST_CASE("whatever the bytes, the glyphs' characters cover the text in order and the width is theirs") {
  std::mt19937 random(7);
  const std::vector<std::string> parts{
      "a",      "V",          " ",    "\u0301", "\u05D0", "\u0628", "\u0644", "12",     "(",   "\u200D",
      "\uFE0F", "\U0001F600", "\xFF", "\u00AD", "\u0410", "\u0E33", "\u202E", "\u4E00", "\x01"};
  for (int i = 0; i < 3000; ++i) {
    std::string line;
    for (auto n = random() % 12; n > 0; --n) line += parts[random() % parts.size()];
    INFO(line);
    const ShapedLine shaped = typesetter().shape(faces[random() % faces.size()], line);
    for (const ShapedRun &run : shaped.runs)
      for (const ShapedGlyph &glyph : run.glyphs) {
        REQUIRE(glyph.count >= 1);
        REQUIRE(glyph.first + glyph.count <= shaped.text.size());
      }
    const Face face = faces[random() % faces.size()];
    REQUIRE(near(typesetter().width(face, 10_pt, line), 10_pt * drawn_ems(typesetter().shape(face, line))));
  }
}

TEST_CASE("threads measure alike") {
  const std::string line = "The picture \u0142\u00F3d\u017A has too few pixels \u25B2 \u05D0\u05D1";
  const Length expected = typesetter().width(Face::text, 10_pt, line);
  std::array<Length, 4> widths;
  std::vector<std::thread> threads;
  for (Length &width : widths)
    threads.emplace_back([&width, &line] {
      for (int i = 0; i < 500; ++i) width = typesetter().width(Face::text, 10_pt, line + std::to_string(i));
      width = typesetter().width(Face::text, 10_pt, line);
    });
  for (std::thread &thread : threads) thread.join();
  for (const Length width : widths) CHECK(width == expected);
}

TEST_CASE("heights are those of the font files") {
  // Bytes 68 to 71 and 88 to 89 of table OS/2 in Lato-Regular.ttf, version 2.0: 1610, -390 and 1433 of
  // 2000.
  CHECK(typesetter().ascent(Face::label, 2000_pt) == 1610_pt);
  CHECK(typesetter().descent(Face::label, 2000_pt) == 390_pt);
  CHECK(typesetter().cap_height(Face::label, 2000_pt) == 1433_pt);
}

TEST_CASE("a subset is small, repeatable and numbers its glyphs in the order of the font") {
  const ShapedLine line = typesetter().shape(Face::text, "\u00E9x");
  std::vector<GlyphId> wanted;
  for (const ShapedGlyph &glyph : line.runs[0].glyphs) wanted.push_back(glyph.id);
  const auto first = typesetter().subset(line.runs[0].font, wanted);
  std::reverse(wanted.begin(), wanted.end());
  const auto second = typesetter().subset(line.runs[0].font, wanted);
  REQUIRE(first);
  REQUIRE(second);
  CHECK(first.value().program == second.value().program);
  CHECK(first.value().outlines == Outlines::true_type);
  CHECK(first.value().program.substr(0, 4) == std::string("\0\1\0\0", 4));
  CHECK(first.value().program.size() < 2'000);
  REQUIRE(first.value().numbers.size() == 2);
  CHECK(first.value().numbers[0] == second.value().numbers[1]);
  CHECK(first.value().numbers[1] == second.value().numbers[0]);
  CHECK((first.value().numbers[0] < first.value().numbers[1]) == (wanted[1] < wanted[0])); // now reversed
}

TEST_CASE("a font that is not installed is named with the package that has it") {
  const auto files = find_fonts(std::array{FontWanted{"DejaVu Sans", "fonts-dejavu-core"},
                                           FontWanted{"Font Nobody Made", "fonts-nobody", true, true}});
  REQUIRE_FALSE(files);
  CHECK(files.fault() == Fault{"the font is not installed", "Font Nobody Made bold italic",
                               "Install the Debian package fonts-nobody."});
}
