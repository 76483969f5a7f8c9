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

std::vector<std::string> read_back(const std::vector<std::string> &lines) {
  const Folder folder;
  write(of_lines(lines), folder.file("t.pdf"));
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
