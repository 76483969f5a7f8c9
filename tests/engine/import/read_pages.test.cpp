// What each operator does to the places of pictures and texts, on pages made by hand (ISO 32000-1, annex A).
#include "tests/engine/import/opened.h"

#include <cmath>

using namespace stoneproof;
using namespace stoneproof::test;
using namespace stoneproof::finished;

namespace {

constexpr const char *dot =
    "/Type/XObject/Subtype/Image/Width 1/Height 1/BitsPerComponent 8/ColorSpace/DeviceGray";

/// A page that knows the picture /I, made of `content`.
std::string with_picture(const std::string &content, const std::string &more_resources = {},
                         const std::string &catalog = {}) {
  MadePdf pdf;
  const int picture = pdf.stream(dot, "x");
  return one_page(pdf, content, "/XObject<</I " + std::to_string(picture) + " 0 R>>" + more_resources, {},
                  catalog);
}

Box box_of_picture(const Opened &opened, std::size_t index = 0) {
  REQUIRE(index < opened.page().images.size());
  return box_round(outline_of({0, 0, 1, 1}, opened.page().images[index].place)).value();
}

Box visible_box(const Opened &opened, std::size_t index = 0) {
  return box_round(opened.page().images[index].visible).value();
}

bool alike(const Box &one, const Box &other) {
  const auto near = [](double a, double b) { return std::abs(a - b) < 1e-6; };
  return near(one.left, other.left) && near(one.bottom, other.bottom) && near(one.right, other.right) &&
         near(one.top, other.top);
}

} // namespace

TEST_CASE("matrices are put one before the other, and taken back with the state") {
  const Opened opened(with_picture("q 2 0 0 2 10 20 cm 30 0 0 40 1 2 cm /I Do Q 5 0 0 5 0 0 cm /I Do"));
  REQUIRE(opened.page().images.size() == 2);
  CHECK(alike(box_of_picture(opened), {12, 24, 72, 104}));
  CHECK(alike(box_of_picture(opened, 1), {0, 0, 5, 5}));
  CHECK(opened.drawn->parts.images().size() == 1);
}

TEST_CASE("clips cut what shows: of a rectangle itself, of other paths the box, of several what they share") {
  CHECK(alike(visible_box(Opened(with_picture("10 10 20 20 re W n 100 0 0 100 0 0 cm /I Do"))),
              {10, 10, 30, 30}));
  CHECK(alike(
      visible_box(Opened(with_picture("10 10 20 20 re W n 25 0 50 50 re W n 100 0 0 100 0 0 cm /I Do"))),
      {25, 10, 30, 30}));
  CHECK(alike(visible_box(Opened(with_picture("0 0 m 40 0 l 20 30 l h W n 100 0 0 100 0 0 cm /I Do"))),
              {0, 0, 40, 30}));
  CHECK(alike(visible_box(Opened(with_picture("0 0 m 0 50 60 50 60 0 c h W* n 100 0 0 100 0 0 cm /I Do"))),
              {0, 0, 60, 50}));
  // A clip that is turned with the picture stays itself.
  const Opened turned(with_picture("0.6 0.8 -0.8 0.6 100 10 cm 10 10 20 20 re W n 80 0 0 80 0 0 cm /I Do"));
  CHECK(area_of(turned.page().images.at(0).visible) == Approx(400));
  // Q brings the clip back; W alone clips nothing.
  CHECK(alike(visible_box(Opened(with_picture("q 1 1 2 2 re W n Q 100 0 0 100 0 0 cm /I Do"))),
              {0, 0, 100, 100}));
}

TEST_CASE("the sheet clips, and what a clip hides wholly shows nothing") {
  CHECK(alike(visible_box(Opened(with_picture("100 0 0 100 250 -50 cm /I Do"))), {250, 0, 300, 50}));
  CHECK(Opened(with_picture("100 0 0 100 400 0 cm /I Do")).page().images.at(0).visible.empty());
  CHECK(Opened(with_picture("0 0 5 5 re W n 10 0 0 10 50 50 cm /I Do")).page().images.at(0).visible.empty());
}

TEST_CASE("forms bring their matrix, their box and their resources, to any depth") {
  MadePdf pdf;
  const int picture = pdf.stream(dot, "x");
  const int inner = pdf.stream("/Subtype/Form/BBox[0 0 10 10]/Matrix[2 0 0 2 0 0]/Resources<</XObject<</P " +
                                   std::to_string(picture) + " 0 R>>>>",
                               "20 0 0 20 0 0 cm /P Do");
  const int outer =
      pdf.stream("/Subtype/Form/BBox[0 0 300 200]/Matrix[1 0 0 1 5 5]/Resources<</XObject<</N " +
                     std::to_string(inner) + " 0 R>>>>",
                 "q 1 0 0 1 100 0 cm /N Do Q /N Do");
  const Opened opened(one_page(pdf, "/F Do", "/XObject<</F " + std::to_string(outer) + " 0 R>>"));
  REQUIRE(opened.page().images.size() == 2);
  CHECK(alike(box_of_picture(opened), {105, 5, 145, 45}));
  CHECK(alike(visible_box(opened), {105, 5, 125, 25})); // the inner form's box, enlarged twice
  CHECK(alike(box_of_picture(opened, 1), {5, 5, 45, 45}));
}

TEST_CASE("a form that draws itself is drawn once, and one that is drawn a million times ends") {
  MadePdf pdf;
  const int picture = pdf.stream(dot, "x");
  const int form = pdf.add("");
  const std::string content = "9 0 0 9 0 0 cm /P Do /F Do";
  pdf.set(form, "<</Subtype/Form/BBox[0 0 300 200]/Resources<</XObject<</P " + std::to_string(picture) +
                    " 0 R/F " + std::to_string(form) + " 0 R>>>>/Length " + std::to_string(content.size()) +
                    ">>\nstream\n" + content + "\nendstream");
  CHECK(Opened(one_page(pdf, "/F Do", "/XObject<</F " + std::to_string(form) + " 0 R>>"))
            .page()
            .images.size() == 1);

  MadePdf many; // ten forms, each drawing the one before it ten times
  int last = many.stream("/Subtype/Form/BBox[0 0 9 9]", "n");
  for (int i = 0; i < 10; ++i) {
    std::string calls;
    for (int n = 0; n < 10; ++n) calls += "/N Do ";
    last = many.stream(
        "/Subtype/Form/BBox[0 0 9 9]/Resources<</XObject<</N " + std::to_string(last) + " 0 R>>>>", calls);
  }
  CHECK(Opened(one_page(many, "/F Do", "/XObject<</F " + std::to_string(last) + " 0 R>>")).page().cut_short);
}

TEST_CASE("inline pictures stand where they are written") {
  const Opened opened(one_page({}, "q 50 0 0 25 10 10 cm BI /W 2 /H 1 /BPC 8 /CS /RGB ID abcdef EI Q"));
  CHECK(alike(box_of_picture(opened), {10, 10, 60, 35}));
  const ImageSource &source = opened.drawn->parts.images().at(0);
  CHECK(source.stands_in);
  CHECK(source.dictionary["Width"].number() == 2);
  CHECK(source.bytes.substr(0, 6) == "abcdef");
}

TEST_CASE("layers that are off show nothing") {
  MadePdf pdf;
  const int picture = pdf.stream(dot, "x");
  const int on = pdf.add("<</Type/OCG/Name(on)>>"), off = pdf.add("<</Type/OCG/Name(off)>>");
  const auto ref = [](int number) { return std::to_string(number) + " 0 R"; };
  const int hidden = pdf.stream(std::string(dot) + "/OC " + ref(off), "x");
  const int all = pdf.add("<</Type/OCMD/OCGs[" + ref(on) + " " + ref(off) + "]/P/AllOn>>");
  const std::string resources = "/XObject<</I " + ref(picture) + "/H " + ref(hidden) + ">>/Properties<</On " +
                                ref(on) + "/Off " + ref(off) + "/All " + ref(all) + ">>";
  const std::string catalog =
      "/OCProperties<</OCGs[" + ref(on) + " " + ref(off) + "]/D<</OFF[" + ref(off) + "]>>>>";
  const auto count = [&](const std::string &content) {
    return Opened(one_page(pdf, content, resources, {}, catalog)).page().images.size();
  };
  CHECK(count("/OC /On BDC /I Do EMC") == 1);
  CHECK(count("/OC /Off BDC /I Do EMC /I Do") == 1);
  CHECK(count("/OC /Off BDC /Span BMC /I Do EMC /I Do EMC") == 0);
  CHECK(count("/OC /All BDC /I Do EMC") == 0);
  CHECK(count("/H Do") == 0);
}

TEST_CASE("text ends with its last glyph that is no space, whatever the codes") {
  MadePdf pdf;
  const int map = pdf.stream("", "2 beginbfchar <20> <0070> <21> <0020> endbfchar");
  const int font = pdf.add("<</Type/Font/Subtype/TrueType/FirstChar 32/Widths[500 250]/ToUnicode " +
                           std::to_string(map) + " 0 R>>");
  const Opened opened(
      one_page(pdf, "BT /F 10 Tf 20 50 Td ( ! !!) Tj ET", "/Font<</F " + std::to_string(font) + " 0 R>>"));
  REQUIRE(opened.page().texts.size() == 1);
  CHECK(opened.page().texts[0].text == "p p  ");
  CHECK(alike(box_round(opened.page().texts[0].outline).value(), {20, 47.5, 32.5, 57.5}));
}

TEST_CASE("a membership of one group heeds its policy; unlisted groups count as none") {
  MadePdf pdf;
  const int picture = pdf.stream(dot, "x");
  const int group = pdf.add("<</Type/OCG/Name(group)>>");
  const auto ref = [](int number) { return std::to_string(number) + " 0 R"; };
  const int one = pdf.add("<</Type/OCMD/OCGs " + ref(group) + "/P/AllOff>>");
  const int list = pdf.add("<</Type/OCMD/OCGs[" + ref(group) + "]/P/AllOff>>");
  const std::string resources =
      "/XObject<</I " + ref(picture) + ">>/Properties<</One " + ref(one) + "/List " + ref(list) + ">>";
  const auto count = [&](const std::string &content, const std::string &catalog) {
    return Opened(one_page(pdf, content, resources, {}, catalog)).page().images.size();
  };
  const std::string listed = "/OCProperties<</OCGs[" + ref(group) + "]/D<<>>>>";
  CHECK(count("/OC /One BDC /I Do EMC", listed) == 0);
  CHECK(count("/OC /List BDC /I Do EMC", listed) == 0);
  CHECK(count("/OC /One BDC /I Do EMC", "") == 1);
  CHECK(count("/OC /List BDC /I Do EMC", "") == 1);
}

TEST_CASE("a picture in a tiling pattern is placed where the pattern is filled in") {
  MadePdf pdf;
  const int picture = pdf.stream(dot, "x");
  const int pattern =
      pdf.stream("/PatternType 1/PaintType 1/TilingType 1/BBox[0 0 10 10]/XStep 10/YStep 10/Matrix[2 0 "
                 "0 2 0 0]/Resources<</XObject<</P " +
                     std::to_string(picture) + " 0 R>>>>",
                 "10 0 0 10 0 0 cm /P Do");
  const Opened opened(one_page(pdf, "/Pattern cs /T scn 105 105 30 30 re f",
                               "/Pattern<</T " + std::to_string(pattern) + " 0 R>>"));
  REQUIRE(opened.page().images.size() == 1);
  CHECK(opened.page().images[0].tiled);
  CHECK(alike(box_of_picture(opened),
              {120, 120, 140, 140})); // the cell over the middle of the area, (120, 120)
  CHECK(alike(visible_box(opened), {120, 120, 135, 135}));
}

TEST_CASE("lines are as wide as their matrix leaves them") {
  const Opened opened(
      one_page({}, "0.5 w q 0.2 0 0 0.2 0 0 cm 0 0 m 100 0 l S Q 3 w 0 9 m 9 9 l S 0 w 1 1 m 5 5 l s "
                   "10 20 50 0.3 re f 1 g 10 30 50 0.1 re f"));
  const auto &lines = opened.page().lines;
  REQUIRE(lines.size() == 3);
  CHECK(lines[0].width == Approx(0.1));
  CHECK(lines[1].width == 0);
  CHECK(lines[2].width == Approx(0.3));
}

TEST_CASE("paint is boxed, what is white is not, and its colours are told") {
  const Opened opened(
      one_page({}, "1 1 1 rg 0 0 300 200 re f 1 0 0 rg 10 10 30 20 re f 0 0 0 1 k 50 50 20 20 re f"));
  CHECK(alike(opened.page().paints.box, {10, 10, 70, 70}));
  CHECK(opened.page().colours.rgb);
  CHECK(opened.page().colours.cmyk);
  CHECK_FALSE(opened.page().colours.gray);
  CHECK_FALSE(Opened(one_page({}, "1 g 0 0 9 9 re f")).page().paints.any);
}

TEST_CASE("transparency is told") {
  CHECK_FALSE(Opened(one_page({}, "/G gs", "/ExtGState<</G<</ca 1/BM/Normal>>>>")).page().transparent);
  CHECK(Opened(one_page({}, "/G gs", "/ExtGState<</G<</ca 0.5>>>>")).page().transparent);
  CHECK(Opened(one_page({}, "/G gs", "/ExtGState<</G<</BM/Multiply>>>>")).page().transparent);
  CHECK(Opened(one_page({}, "/G gs", "/ExtGState<</G<</SMask<</S/Alpha>>>>>>")).page().transparent);
}

TEST_CASE("text has its size, its place and its words") {
  MadePdf pdf;
  const int font =
      pdf.add("<</Type/Font/Subtype/Type1/BaseFont/ABCDEF+Made/Encoding/WinAnsiEncoding/FirstChar 32/Widths["
              "250 500 500]/FontDescriptor<</Ascent 800/Descent -200/MissingWidth 600/FontFile " +
              std::to_string(pdf.stream("", "x")) + " 0 R>>>>");
  const Opened opened(
      one_page(pdf, "BT /F 10 Tf 2 0 0 2 20 100 Tm (Hi) Tj 0 -15 Td [(A)-500(B)] TJ 3 Tr (unseen) Tj ET",
               "/Font<</F " + std::to_string(font) + " 0 R>>"));
  const auto &texts = opened.page().texts;
  REQUIRE(texts.size() == 3);
  CHECK(texts[0].text == "Hi");
  CHECK(texts[0].size == Approx(20));
  CHECK(alike(*box_round(texts[0].outline), {20, 96, 44, 116})); // two letters of 0.6 em
  CHECK(texts[1].text == "A B");
  CHECK(alike(*box_round(texts[1].outline), {20, 66, 54, 86})); // 0.6 + 0.5 + 0.6 em
  CHECK_FALSE(texts[2].seen);
  const Font &read = opened.drawn->parts.fonts().at(0);
  CHECK(read.name == "Made");
  CHECK(read.embedded);
}

TEST_CASE("a composite font has two bytes a code, widths by range and characters by its map") {
  MadePdf pdf;
  const int map =
      pdf.stream("", "1 begincodespacerange <0000> <ffff> endcodespacerange 1 beginbfchar <0003> <00660069> "
                     "endbfchar 1 beginbfrange <0005> <0006> <0141> endbfrange");
  const int font = pdf.add(
      "<</Type/Font/Subtype/Type0/BaseFont/Made/Encoding/Identity-H/ToUnicode " + std::to_string(map) +
      " 0 R/DescendantFonts[<</Subtype/CIDFontType2/DW 1000/W[3[400]5 6 700]/FontDescriptor<<>>>>]>>");
  const Opened opened(one_page(pdf, "BT /F 10 Tf 10 10 Td <000300050006> Tj ET",
                               "/Font<</F " + std::to_string(font) + " 0 R>>"));
  REQUIRE(opened.page().texts.size() == 1);
  CHECK(opened.page().texts[0].text == "fi\xC5\x81\xC5\x82");
  CHECK(box_round(opened.page().texts[0].outline)->width() == Approx(18));
  CHECK_FALSE(opened.drawn->parts.fonts().at(0).embedded);
}

TEST_CASE("glyphs that are pictures are placed, those that are stencils are letters") {
  MadePdf pdf;
  const int picture =
      pdf.stream("", "500 0 0 0 0 0 d1 400 0 0 300 0 0 cm BI /W 2 /H 1 /BPC 8 /CS /G ID ab EI");
  const int stencil = pdf.stream("", "500 0 0 0 0 0 d1 400 0 0 300 0 0 cm BI /W 8 /H 1 /IM true ID a EI");
  const auto ref = [](int number) { return std::to_string(number) + " 0 R"; };
  const int font = pdf.add(
      "<</Type/Font/Subtype/Type3/FontBBox[0 0 500 500]/FontMatrix[0.001 0 0 0.001 0 0]/FirstChar 97/Widths["
      "500 500]/Encoding<</Differences[97/p/s]>>/CharProcs<</p " +
      ref(picture) + "/s " + ref(stencil) + ">>>>");
  const Opened opened(one_page(pdf, "BT /F 100 Tf 20 50 Td (ba) Tj ET", "/Font<</F " + ref(font) + ">>"));
  REQUIRE(opened.page().images.size() == 1);
  CHECK(alike(box_of_picture(opened), {70, 50, 110, 80}));
}

TEST_CASE("a glyph that shows text in fonts of its own leaves the text that it stands in alone") {
  MadePdf pdf;
  const auto ref = [](int number) { return std::to_string(number) + " 0 R"; };
  std::string inner, fonts;
  for (int i = 0; i < 20; ++i) {
    const std::string name = "/A" + std::to_string(i);
    fonts += name + " " + ref(pdf.add("<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>"));
    inner += " BT " + name + " 100 Tf (x) Tj ET";
  }
  const int glyph = pdf.stream("", "500 0 d0 400 0 0 300 0 0 cm BI /W 2 /H 1 /BPC 8 /CS /G ID ab EI" + inner);
  const int font =
      pdf.add("<</Type/Font/Subtype/Type3/FontMatrix[0.001 0 0 0.001 0 0]/FirstChar 97/Widths[500]"
              "/Encoding<</Differences[97/a]>>/Resources<</Font<<" +
              fonts + ">>>>/CharProcs<</a " + ref(glyph) + ">>>>");
  const Opened opened(one_page(pdf, "BT /F 10 Tf 20 50 Td (aa) Tj ET", "/Font<</F " + ref(font) + ">>"));
  const auto &texts = opened.page().texts;
  CHECK(opened.page().images.size() == 2);
  REQUIRE(texts.size() == 41);
  CHECK(texts.back().text == "aa");
  CHECK(alike(box_round(texts.back().outline).value(), {20, 47.5, 30, 57.5}));
}

TEST_CASE("what prints of an annotation is drawn over the page, brought to its rectangle") {
  MadePdf pdf;
  const int picture = pdf.stream(dot, "x");
  const std::string image = "<</XObject<</I " + std::to_string(picture) + " 0 R>>>>";
  const std::string form = "/Subtype/Form/BBox[0 0 10 20]/Resources" + image;
  const int upright = pdf.stream(form, "10 0 0 20 0 0 cm /I Do");
  const int turned = pdf.stream(form + "/Matrix[0 1 -1 0 0 0]", "10 0 0 20 0 0 cm /I Do");
  const auto note = [&](const std::string &flags, const std::string &normal) {
    return "<</Subtype/Stamp/Rect[100 50 140 70]/F " + flags + "/AP<</N " + normal + ">>>>";
  };
  const auto ref = [](int number) { return std::to_string(number) + " 0 R"; };
  const auto notes = [&](const std::string &list) {
    return Opened(one_page(pdf, "9 0 0 9 0 0 cm 0 0 1 1 re W n", "", "/Annots[" + list + "]"));
  };
  const Opened stretched = notes(note("4", ref(upright)));
  REQUIRE(stretched.page().images.size() == 1);
  CHECK(alike(box_of_picture(stretched), {100, 50, 140, 70})); // whatever state the page was left in
  CHECK(alike(visible_box(stretched), {100, 50, 140, 70}));
  const Opened on_its_side = notes(note("4", ref(turned)));
  REQUIRE(on_its_side.page().images.size() == 1);
  CHECK(alike(box_of_picture(on_its_side), {100, 50, 140, 70}));
  CHECK(on_its_side.page().images[0].place.a == Approx(0).margin(1e-9));
  // On the screen alone, hidden, of another state, without an area.
  CHECK(notes(note("0", ref(upright))).page().images.empty());
  CHECK(notes(note("6", ref(upright))).page().images.empty());
  CHECK(notes(note("4", "<</On " + ref(upright) + ">>")).page().images.empty());
  CHECK(notes("<</Subtype/Widget/AS/On/Rect[100 50 140 70]/F 4/AP<</N<</On " + ref(upright) + ">>>>>>")
            .page()
            .images.size() == 1);
}

TEST_CASE("a hundred thousand saves and restores end where they began") {
  std::string content;
  for (int i = 0; i < 100'000; ++i) content += "q ";
  content += "2 0 0 2 0 0 cm ";
  for (int i = 0; i < 100'000; ++i) content += "Q ";
  const Opened opened(with_picture(content + "10 0 0 10 0 0 cm /I Do"));
  CHECK(alike(box_of_picture(opened), {0, 0, 10, 10}));
}

TEST_CASE("numbers that are none and pictures without an area do no harm") {
  const Opened opened(with_picture("q 1e999 0 0 1 0 0 cm /I Do Q q 0 0 0 0 5 5 cm /I Do Q "
                                   "9999999999999999999999999999999999999999 0 0 1 0 0 cm "
                                   "9999999999999999999999999999999999999999 0 0 1 0 0 cm "
                                   "9999999999999999999999999999999999999999 0 0 1 0 0 cm "
                                   "9999999999999999999999999999999999999999 0 0 1 0 0 cm "
                                   "9999999999999999999999999999999999999999 0 0 1 0 0 cm "
                                   "9999999999999999999999999999999999999999 0 0 1 0 0 cm "
                                   "9999999999999999999999999999999999999999 0 0 1 0 0 cm "
                                   "9999999999999999999999999999999999999999 0 0 1 0 0 cm /I Do"));
  for (const ShownImage &image : opened.page().images) CHECK(image.place.finite());
}

TEST_CASE("contents in parts are one stream; a damaged one is told") {
  MadePdf pdf;
  const int picture = pdf.stream(dot, "x");
  const int first = pdf.stream("", "q 10 0 0"), second = pdf.stream("", "10 5 5 cm /I Do Q");
  const int broken = pdf.stream("/Filter/FlateDecode", "nonsense");
  const auto page_with = [&](const std::string &contents) {
    MadePdf whole = pdf;
    const int pages = whole.add("");
    const int page = whole.add("<</Type/Page/Contents[" + contents + "]/Resources<</XObject<</I " +
                               std::to_string(picture) + " 0 R>>>>>>");
    whole.set(pages, "<</Type/Pages/Kids[" + std::to_string(page) + " 0 R]/MediaBox[0 0 300 200]>>");
    return whole.text(whole.add("<</Pages " + std::to_string(pages) + " 0 R>>"));
  };
  const auto ref = [](int number) { return std::to_string(number) + " 0 R "; };
  const Opened whole(page_with(ref(first) + ref(second)));
  CHECK(alike(box_of_picture(whole), {5, 5, 15, 15}));
  CHECK_FALSE(whole.page().broken);
  CHECK(Opened(page_with(ref(broken))).page().broken);
  CHECK(Opened(page_with("")).page().images.empty());
}
