// Pages, their boxes and labels, on trees made by hand (ISO 32000-1, 7.7.3, 12.4.2 and 14.11.2).
#include "engine/import/page_tree.h"

#include "tests/engine/import/opened.h"

using namespace stoneproof;
using namespace stoneproof::test;
using namespace stoneproof::finished;

namespace {

std::string ref(int number) { return std::to_string(number) + " 0 R "; }

} // namespace

TEST_CASE("pages take media, crop, turn and resources from their parents, and no other box") {
  MadePdf pdf;
  const int top = pdf.add(""), middle = pdf.add(""),
            own = pdf.add("<</Type/Page/MediaBox[10 20 110 220]/Rotate -90/TrimBox[20 30 100 200]>>");
  const int plain = pdf.add("<</Type/Page/UserUnit 2>>");
  pdf.set(middle, "<</Type/Pages/Kids[" + ref(plain) + "]/CropBox[5 5 50 50]/TrimBox[0 0 1 1]>>");
  pdf.set(top,
          "<</Type/Pages/Kids[" + ref(own) + ref(middle) + "]/Count -7/MediaBox[0 0 300 200]/Rotate 180>>");
  const Opened opened(pdf.text(pdf.add("<</Pages " + ref(top) + ">>")));
  REQUIRE(opened.drawn->sheets.size() == 2);
  const SheetBoxes &first = opened.drawn->sheets[0].boxes, &second = opened.drawn->sheets[1].boxes;
  CHECK(first.media == Box{10, 20, 110, 220});
  CHECK(first.rotate == 270);
  CHECK(first.trim == Box{20, 30, 100, 200});
  CHECK_FALSE(first.crop);
  CHECK(second.media == Box{0, 0, 300, 200});
  CHECK(second.rotate == 180);
  CHECK(second.unit == 2);
  CHECK(second.crop == Box{5, 5, 50, 50});
  CHECK_FALSE(second.trim);
  CHECK(second.seen() == Box{5, 5, 50, 50});
}

TEST_CASE("a tree that holds itself, kids that are nothing and a count of a billion do no harm") {
  MadePdf pdf;
  const int top = pdf.add(""), page = pdf.add("<</Type/Page/MediaBox[9 9 1 1]>>");
  pdf.set(top, "<</Type/Pages/Kids[" + ref(top) + ref(page) + ref(99) + "null 7 " + ref(page) +
                   "]/Count 1000000000>>");
  const Opened opened(pdf.text(pdf.add("<</Pages " + ref(top) + ">>")));
  REQUIRE(opened.drawn->sheets.size() == 1);
  CHECK(opened.drawn->sheets[0].boxes.media == Box{1, 1, 9, 9});
  MadePdf none;
  CHECK(Opened(none.text(none.add("<</Type/Catalog>>"))).drawn->sheets.empty());
}

TEST_CASE("boxes that are none leave Letter, the sheet of readers") {
  for (const char *media : {"[0 0 0 0]", "[1 2 3]", "[0 0 99999999999 5]", "null"}) {
    MadePdf pdf;
    const int top = pdf.add("");
    const int page = pdf.add("<</Type/Page/MediaBox " + std::string(media) + ">>");
    pdf.set(top, "<</Type/Pages/Kids[" + ref(page) + "]>>");
    const Opened opened(pdf.text(pdf.add("<</Pages " + ref(top) + ">>")));
    REQUIRE(opened.drawn->sheets.size() == 1);
    CHECK(opened.drawn->sheets[0].boxes.media == Box{0, 0, 612, 792});
  }
}

TEST_CASE("a tree of too many pages is read as far as the bound, and says so") {
  MadePdf pdf;
  const int top = pdf.add(""), page = pdf.add("<</Type/Pages/Kids[" + [] {
    std::string kids;
    for (std::size_t i = 0; i < most_pages + 5; ++i) kids += "<</Type/Page>>";
    return kids;
  }() + "]>>");
  pdf.set(top, "<</Type/Pages/Kids[" + ref(page) + "]>>");
  const Opened opened(pdf.text(pdf.add("<</Pages " + ref(top) + ">>")));
  CHECK(opened.drawn->sheets.size() == most_pages);
  CHECK(opened.drawn->cut_short);
}

TEST_CASE("page labels count in every style") {
  MadePdf pdf;
  const int top = pdf.add("");
  std::string kids;
  for (int i = 0; i < 8; ++i) kids += ref(pdf.add("<</Type/Page>>"));
  pdf.set(top, "<</Type/Pages/Kids[" + kids + "]>>");
  const int root =
      pdf.add("<</Pages " + ref(top) +
              "/PageLabels<</Nums[0<</S/r>> 2<</S/D/St 9>> 4<</S/A/St 27/P(B-)>> 6<</P(end)>>]>>>>");
  const Opened opened(pdf.text(root));
  std::string labels;
  for (const Sheet &sheet : opened.drawn->sheets) labels += sheet.label + " ";
  CHECK(labels == "i ii 9 10 B-AA B-BB end end ");
}
