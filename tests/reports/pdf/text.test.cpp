#include "reports/pdf/font_objects.h"
#include "reports/pdf/text_operators.h"
#include "tests/reports/pdf/sample.h"

#include <sstream>

using namespace stoneproof;
using namespace stoneproof::literals;
using namespace stoneproof::test;

namespace {

layout::Document of_lines(const std::vector<std::string> &lines) {
  layout::Document document;
  layout::DocumentPage page = page_of({400_mm, 20_mm * static_cast<int>(lines.size() + 1)});
  Length y = 20_mm;
  for (const std::string &line : lines) {
    page.items.emplace_back(
        layout::TextItem{{10_mm, y}, Face(lines.size() % 2 ? Face::text : Face::label), 12_pt, {}, line});
    y += 20_mm;
  }
  document.pages = {page};
  return document;
}

std::vector<std::string> read_back(const std::vector<std::string> &lines,
                                   const Typesetter &fonts = typesetter()) {
  const Folder folder;
  write(of_lines(lines), folder.file("t.pdf"), fonts);
  std::istringstream text(run_command("pdftotext -enc UTF-8 -nopgbrk " + folder.file("t.pdf") + " -"));
  std::vector<std::string> found;
  for (std::string line; std::getline(text, line);)
    if (!line.empty()) found.push_back(line);
  return found;
}

const std::vector<std::string> sentences{
    "Za\u017C\u00F3\u0142\u0107 g\u0119\u015Bl\u0105 ja\u017A\u0144, \u0141\u00F3d\u017A.",
    "\u0397 \u03C6\u03C9\u03C4\u03BF\u03B3\u03C1\u03B1\u03C6\u03AF\u03B1 \u03B5\u03AF\u03BD\u03B1\u03B9 "
    "\u03BC\u03B9\u03BA\u03C1\u03AE.",
    "\u0421\u043D\u0438\u043C\u043E\u043A \u0441\u043B\u0438\u0448\u043A\u043E\u043C \u043C\u0430\u043B; "
    "\u0401\u043B\u043A\u0430.",
    "fi ffl office AVATAR To, \u201Cquoted\u201D \u2013 (12)",
    "a missing one \U000F1234 is a box, \u25B2 is borrowed, \U0001F600 too",
};

} // namespace

TEST_CASE("text is read back as it was written") {
  CHECK(read_back(sentences) == sentences);
  std::vector<std::string> even = sentences;
  even.pop_back();
  CHECK(read_back(even) == even); // the other face
}

TEST_CASE("accents on letters that have no glyph with them are read back") {
  // pdftotext composes what it can: q with an acute stays two characters.
  CHECK(read_back({"q\u0301x\u030C end"}) == std::vector<std::string>{"q\u0301x\u030C end"});
}

TEST_CASE("a no-break space means one, a soft hyphen is gone") {
  pdf::FontTable fonts;
  std::string operators;
  const ShapedLine line = typesetter().shape(Face::text, "a \u00A0b\u00ADc");
  pdf::append_text(operators, line, {0, 0, 10}, typesetter(), fonts);
  const std::string cmap = pdf::to_unicode_cmap(fonts.fonts().at(0));
  CHECK(
      cmap.find(
          "5 beginbfchar\n<0001><0061>\n<0002><0020>\n<0003><00A0>\n<0004><0062>\n<0005><0063>\nendbfchar") !=
      std::string::npos);
  // pdftotext prints every kind of space as U+0020.
  CHECK(read_back({"300\u00A0ppi soft\u00ADhyphen"}) == std::vector<std::string>{"300 ppi softhyphen"});
}

TEST_CASE("text that is not valid is written all the same") {
  CHECK(read_back({"bad \xFF byte \x01 end"}) == std::vector<std::string>{"bad \uFFFD byte \uFFFD end"});
}

TEST_CASE("every font is embedded, a subset, and says what its codes mean") {
  const Folder folder;
  write(of_lines(sentences), folder.file("t.pdf"));
  std::istringstream fonts(run_command("pdffonts " + folder.file("t.pdf")));
  std::string line;
  std::getline(fonts, line);
  std::getline(fonts, line);
  int count = 0;
  for (; std::getline(fonts, line); ++count) {
    INFO(line);
    CHECK(line.find("CID TrueType      Identity-H       yes yes yes") != std::string::npos);
    CHECK(line.find('+') == 6);
  }
  CHECK(count == 2); // the face and the fallback
}

TEST_CASE("words in fonts with CFF outlines are read back from small files") {
  const Typesetter fonts = Typesetter::load(cjk_words + script_words).value();
  const std::vector<std::string> lines{cjk_words, "Ms " + script_words + " Kim", "the same: " + cjk_words};
  CHECK(read_back(lines, fonts) == lines);
  const Folder folder;
  write(of_lines({"plain"}), folder.file("plain.pdf"));
  write(of_lines({"plain", cjk_words + script_words}), folder.file("t.pdf"), fonts);
  const std::string listed = run_command("pdffonts " + folder.file("t.pdf"));
  INFO(listed);
  for (const char *name : {"NotoSansCJKjp-Regular", "STIX-Regular"}) {
    const std::size_t at = listed.find(name);
    REQUIRE(at != std::string::npos);
    CHECK(listed.substr(at, listed.find('\n', at) - at)
              .find("CID Type 0C       Custom           yes yes yes") != std::string::npos);
  }
  const auto size = [&](const char *name) { return content_of(folder.file(name)).size(); };
  CHECK(size("t.pdf") < size("plain.pdf") + 12'000); // the fonts have 19 MB and 0.4 MB
}

TEST_CASE("glyphs of fonts with CFF outlines look as their fonts draw them") {
  const Folder folder;
  const std::vector<std::pair<std::string, std::string>> shown{
      {"山", "opentype/noto/NotoSansCJK-Regular.ttc"}, {"郎", "opentype/noto/NotoSansCJK-Regular.ttc"},
      {"か", "opentype/noto/NotoSansCJK-Regular.ttc"}, {"한", "opentype/noto/NotoSansCJK-Regular.ttc"},
      {"𝒜", "opentype/stix-word/STIX-Regular.otf"},  {"𝓩", "opentype/stix-word/STIX-Regular.otf"}};
  std::string all;
  for (const auto &[sign, font] : shown) all += sign;
  const Typesetter fonts = Typesetter::load(all).value();
  const std::string square = " -trim +repage -filter box -resize 48x48! -depth 8 ";
  layout::Document document; // all in one file, so that codes and CIDs differ
  for (const auto &[sign, font] : shown) {
    document.pages.push_back(page_of({60_mm, 60_mm}));
    document.pages.back().items.emplace_back(layout::TextItem{{10_mm, 50_mm}, Face::text, 100_pt, {}, sign});
  }
  write(document, folder.file("t.pdf"), fonts);
  for (std::size_t i = 0; i < shown.size(); ++i) {
    const std::string number = std::to_string(i);
    run_command("pdftoppm -gray -r 72 -singlefile -f " + std::to_string(i + 1) + " " + folder.file("t.pdf") +
                " " + folder.file("p" + number));
    run_command("convert " + folder.file("p" + number + ".pgm") + square +
                folder.file("drawn" + number + ".png"));
    run_command("convert -background white -fill black -pointsize 100 -font /usr/share/fonts/" +
                shown[i].second + " label:" + shown[i].first + " -colorspace Gray" + square +
                folder.file("own" + number + ".png"));
  }
  const auto difference = [&](std::size_t drawn, std::size_t own) {
    const Printed printed =
        print_of("compare -metric RMSE " + folder.file("drawn" + std::to_string(drawn) + ".png") + " " +
                 folder.file("own" + std::to_string(own) + ".png") + " null: 2>&1");
    return std::stod(printed.out);
  };
  for (std::size_t drawn = 0; drawn < shown.size(); ++drawn)
    for (std::size_t own = 0; own < shown.size(); ++own) {
      INFO(shown[drawn].first << " against " << shown[own].first);
      if (own != drawn) CHECK(difference(drawn, drawn) * 2 < difference(drawn, own));
    }
}

TEST_CASE("words lie where the typesetter measures them") {
  const Folder folder;
  const std::string before = "AVATAR Waltz To";
  write(of_lines({before + " X"}), folder.file("t.pdf"));
  const std::string boxes = run_command("pdftotext -bbox " + folder.file("t.pdf") + " -");
  const auto word = boxes.find(">X</word>");
  REQUIRE(word != std::string::npos);
  const auto x = boxes.rfind("xMin=\"", word) + 6;
  const double expected = (10_mm + typesetter().width(Face::text, 12_pt, before + " ")).pt();
  CHECK(std::stod(boxes.substr(x)) ==
        Approx(expected).margin(0.005)); // points; positions are rounded to a thousandth
}

TEST_CASE("a line turned down the page is read back, and runs from where it begins") {
  layout::Document document;
  layout::DocumentPage page = page_of({100_mm, 200_mm});
  page.items.emplace_back(layout::TextItem{{50_mm, 40_mm}, Face::text, 12_pt, {}, "Downwards", true});
  document.pages = {page};
  const Folder folder;
  write(document, folder.file("t.pdf"));
  CHECK(run_command("pdftotext -enc UTF-8 -nopgbrk " + folder.file("t.pdf") + " -").find("Downwards") !=
        std::string::npos);
  const std::string boxes = run_command("pdftotext -bbox " + folder.file("t.pdf") + " -");
  const auto value = [&](const std::string &name) {
    const std::size_t at = boxes.find(name + "=\"", boxes.find("<word"));
    REQUIRE(at != std::string::npos);
    return std::stod(boxes.substr(at + name.size() + 2));
  };
  CHECK(value("yMin") == Approx((40_mm).pt()).margin(0.5));
  CHECK(value("yMax") - value("yMin") > 3 * (value("xMax") - value("xMin")));
  CHECK(value("xMin") < (50_mm).pt()); // descenders hang to the left of the baseline
  CHECK(value("xMax") > (50_mm).pt() + 6);
}
