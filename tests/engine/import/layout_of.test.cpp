// From places in a PDF to frames, texts and boxes of a book.
#include "engine/import/layout_of.h"
#include "engine/picture/orientation.h"
#include "tests/engine/import/opened.h"

#include <cmath>

using namespace stoneproof;
using namespace stoneproof::test;
using namespace stoneproof::finished;

namespace {

/// A micrometre is 0.0028 pt.
bool near(Length length, double points) { return std::abs(length.pt() - points) < 0.0029; }
bool near(const Rect &rect, double x, double y, double width, double height) {
  return near(rect.x, x) && near(rect.y, y) && near(rect.width, width) && near(rect.height, height);
}

const Outline everywhere = outline_of({-1e4, -1e4, 1e4, 1e4}, {});

Laying laid(const Matrix &place, const Outline &clip = everywhere, int orientation = 1) {
  const auto laying = laying_of(place, shared_part(outline_of({0, 0, 1, 1}, place), clip), orientation);
  REQUIRE(laying);
  return *laying;
}

/// A picture of this width and height whose top left corner is at (x, y), y downwards, as a content stream
/// places it.
Matrix upright(double x, double y, double width, double height) {
  return {width, 0, 0, -height, x, y + height};
}

Matrix turned(double degrees) {
  const double angle = degrees * 3.14159265358979323846 / 180;
  return {std::cos(angle), std::sin(angle), -std::sin(angle), std::cos(angle), 0, 0};
}

Book book_of(const Opened &opened) {
  std::vector<WrittenPicture> pictures;
  for (std::size_t i = 0; i < opened.drawn->parts.images().size(); ++i)
    pictures.push_back({"picture" + std::to_string(i) + ".tif", {}, 1, false});
  return layout_of(*opened.drawn, pictures, "made.pdf", {"made.pdf", "1.6", false, {}, {}});
}

/// The book of one page that knows the font /F; `page` stands in the page's own dictionary.
Book book_of_text(const std::string &content, const std::string &page = {}) {
  MadePdf pdf;
  const int font = pdf.add("<</Type/Font/Subtype/Type1/BaseFont/Made/Encoding/WinAnsiEncoding>>");
  return book_of(Opened(one_page(pdf, content, "/Font<</F " + std::to_string(font) + " 0 R>>", page)));
}

} // namespace

TEST_CASE("an upright picture is its own frame; a clip makes the frame smaller and crops") {
  const Laying whole = laid(upright(10, 20, 100, 50));
  CHECK(near(whole.rect, 10, 20, 100, 50));
  CHECK(whole.turn.degrees == 0);
  CHECK(whole.mirror == Mirror::none);
  CHECK(whole.crop.width == 1);
  const Laying cut = laid(upright(10, 20, 100, 50), outline_of({35, 20, 85, 40}, {}));
  CHECK(near(cut.rect, 35, 20, 50, 20));
  CHECK(cut.crop.x == Approx(0.25));
  CHECK(cut.crop.y == 0);
  CHECK(cut.crop.width == Approx(0.5));
  CHECK(cut.crop.height == Approx(0.4));
}

TEST_CASE("a turn is told clockwise, about the middle of what shows") {
  for (const double degrees : {90.0, -90.0, 180.0, 30.0, -2.5}) {
    CAPTURE(degrees);
    const Laying laying = laid(upright(-50, -25, 100, 50) * turned(degrees));
    CHECK(laying.turn.degrees == Approx(degrees));
    CHECK(near(laying.rect, -50, -25, 100, 50));
  }
  // Half of it shows, the right half before the turn: its middle was at (25, 0), and a quarter turn takes it
  // to (0, 25).
  const Laying half = laid(upright(-50, -25, 100, 50) * turned(90), outline_of({-100, 0, 100, 100}, {}));
  CHECK(near(half.rect, -25, 0, 50, 50));
  CHECK(half.crop.x == Approx(0.5));
  CHECK(half.crop.width == Approx(0.5));
}

TEST_CASE("a mirror is told with the turn that is smaller") {
  const Matrix side_to_side{-1, 0, 0, 1, 0, 0}, upside_down{1, 0, 0, -1, 0, 0};
  const Laying horizontal = laid(upright(-50, -25, 100, 50) * side_to_side);
  CHECK(horizontal.mirror == Mirror::horizontal);
  CHECK(horizontal.turn.degrees == 0);
  CHECK(near(horizontal.rect, -50, -25, 100, 50));
  const Laying vertical = laid(upright(-50, -25, 100, 50) * upside_down * turned(10));
  CHECK(vertical.mirror == Mirror::vertical);
  CHECK(vertical.turn.degrees == Approx(10));
}

TEST_CASE("Exif's orientation, which a PDF does not heed, is turned back") {
  for (int orientation = 1; orientation <= 8; ++orientation) {
    CAPTURE(orientation);
    // Stored 200 x 100 pixels; the left quarter as stored shows.
    const Laying laying = laid(upright(0, 0, 200, 100), outline_of({0, 0, 50, 100}, {}), orientation);
    const Orientation seen(orientation);
    const PixelSize size = seen.seen({200, 100});
    const PixelRect part{laying.crop.x * static_cast<double>(size.width),
                         laying.crop.y * static_cast<double>(size.height),
                         laying.crop.width * static_cast<double>(size.width),
                         laying.crop.height * static_cast<double>(size.height)};
    const PixelRect stored = seen.stored_part(part, {200, 100});
    CHECK(stored.x == Approx(0).margin(1e-3));
    CHECK(stored.width == Approx(50));
    CHECK(stored.height == Approx(100));
    const Point middle = laying.rect.centre();
    CHECK(near(middle.x, 25));
    CHECK(near(middle.y, 50));
    CHECK((laying.mirror != Mirror::none) ==
          (orientation == 2 || orientation == 4 || orientation == 5 || orientation == 7));
  }
}

TEST_CASE("what has no area, lies nowhere or is hidden has no frame") {
  CHECK_FALSE(laying_of({0, 0, 0, 0, 5, 5}, everywhere, 1));
  CHECK_FALSE(laying_of(upright(0, 0, 10, 10), {}, 1));
  CHECK_FALSE(laying_of(upright(1e5, 0, 10, 10), outline_of({0, 0, 1, 1}, upright(1e5, 0, 10, 10)), 1));
  CHECK_FALSE(laying_of({std::nan(""), 0, 0, 1, 0, 0}, everywhere, 1));
}

TEST_CASE("a page lies as it is seen, whatever its turn and its unit") {
  // A picture of 30 x 20 points in the upper left corner of the page as it is seen.
  const std::pair<int, const char *> turns[] = {{0, "30 0 0 20 0 180 cm"},
                                                {90, "0 30 -20 0 20 0 cm"},
                                                {180, "-30 0 0 -20 300 20 cm"},
                                                {270, "0 -30 20 0 280 200 cm"}};
  for (const auto &[turn, place] : turns) {
    CAPTURE(turn);
    MadePdf pdf;
    const int picture =
        pdf.stream("/Subtype/Image/Width 3/Height 2/BitsPerComponent 8/ColorSpace/DeviceGray", "abcdef");
    const Opened opened(one_page(pdf, std::string(place) + " /I Do",
                                 "/XObject<</I " + std::to_string(picture) + " 0 R>>",
                                 "/UserUnit 2/Rotate " + std::to_string(turn)));
    const Book book = book_of(opened);
    REQUIRE(book.pages.at(0).frames.size() == 1);
    const Frame &frame = book.pages[0].frames[0];
    CHECK(near(frame.rect, 0, 0, 60, 40));
    CHECK(frame.turn.degrees == 0);
    const bool on_its_side = turn % 180 != 0;
    CHECK(near(book.trim.width, on_its_side ? 400 : 600));
    CHECK(near(book.trim.height, on_its_side ? 600 : 400));
  }
}

TEST_CASE("pictures that nothing shows of are told apart, and not listed") {
  MadePdf pdf;
  const int picture =
      pdf.stream("/Subtype/Image/Width 3/Height 2/BitsPerComponent 8/ColorSpace/DeviceGray", "abcdef");
  const Book book = book_of(Opened(
      one_page(pdf, "30 0 0 20 500 0 cm /I Do", "/XObject<</I " + std::to_string(picture) + " 0 R>>")));
  CHECK(book.pages[0].frames.empty());
  CHECK(book.pictures.empty());
  REQUIRE(book.pages[0].print->hidden_pictures.size() == 1);
  CHECK(near(book.pages[0].print->hidden_pictures[0], 500, 180, 30, 20));
}

TEST_CASE("lines in one size that follow each other make one block") {
  const Book book = book_of_text("BT /F 10 Tf 12 TL 20 150 Td (A line) Tj 40 0 Td (goes on) Tj "
                                 "-40 -12 Td (and another) Tj /F 7 Tf 0 -40 Td (far) Tj ET "
                                 "BT /F 9 Tf 150 5 Td (12) Tj ET");
  const auto &texts = book.pages[0].texts;
  REQUIRE(texts.size() == 3);
  CHECK(texts[0].text == "A line goes on and another");
  CHECK(near(texts[0].type_size, 10));
  CHECK(near(texts[0].rect.y, 200 - 150 - 7.5));
  CHECK(texts[1].text == "far");
  CHECK(texts[2].kind == TextKind::page_number);
}

TEST_CASE("lines that run up, down, headlong or aslant make one block too") {
  // Each matrix leaves the first line's start at (150, 100); the second follows 12 points below it.
  const std::pair<const char *, const char *> ways[] = {
      {"0 1 -1 0", ""},          {"0 -1 1 0", ""},
      {"-1 0 0 -1", ""},         {"0.866 0.5 -0.5 0.866", ""},
      {"1 0 0 1", "/Rotate 90"}, {"1 0 0 1", "/Rotate 270"},
      {"0 1 -1 0", "/Rotate 90"}};
  for (const auto &[matrix, turn] : ways) {
    CAPTURE(matrix, turn);
    const Book book = book_of_text("BT /F 10 Tf 12 TL " + std::string(matrix) +
                                       " 150 100 Tm (A line) Tj 40 0 Td (goes on) Tj "
                                       "-40 -12 Td (and another) Tj 0 -50 Td (far) Tj ET",
                                   turn);
    const auto &texts = book.pages[0].texts;
    REQUIRE(texts.size() == 2);
    CHECK(texts[0].text == "A line goes on and another");
    CHECK(texts[1].text == "far");
  }
  // Two lines of 40 and 12 points' distance that run upwards lie in a box that is higher than wide.
  const Book book =
      book_of_text("BT /F 10 Tf 0 1 -1 0 150 100 Tm (One line) Tj 0 -12 Td (and one more) Tj ET");
  REQUIRE(book.pages[0].texts.size() == 1);
  const Rect &rect = book.pages[0].texts[0].rect;
  CHECK(near(rect.width, 12 + 10));
  CHECK(near(rect.left(), 150 - 7.5));
  CHECK(near(rect.bottom(), 100));
  CHECK(rect.height > rect.width);
}

TEST_CASE("what is printed beside the crop marks is no text of the page") {
  const auto texts_of = [](const std::string &boxes) {
    const Book book = book_of_text("BT /F 5 Tf 60 3 Td (book.pdf 3 March) Tj ET "
                                   "BT /F 5 Tf 60 191 Td (in the bleed) Tj ET "
                                   "BT /F 9 Tf 60 100 Td (of the page) Tj ET",
                                   boxes);
    std::vector<std::string> texts;
    for (const TextBlock &text : book.pages[0].texts) texts.push_back(text.text);
    return texts;
  };
  using Texts = std::vector<std::string>;
  const Texts own{"in the bleed", "of the page"};
  CHECK(texts_of("/TrimBox[20 20 280 180]/BleedBox[12 12 288 192]") == own);
  CHECK(texts_of("/TrimBox[20 20 280 180]/BleedBox[12 12 288 192]/Rotate 90") == own);
  CHECK(texts_of("/TrimBox[20 17 280 183]") == own); // 3 mm, 8.5 points, are taken for the bleed
  CHECK(texts_of("/TrimBox[20 20 280 180]") == Texts{"of the page"});
  CHECK(texts_of("").size() == 3); // the sheet is the page
}

TEST_CASE("what is painted beside the trim is no paint of the page") {
  const auto painted = [](const std::string &content) {
    const Book book = book_of(Opened(one_page({}, content, {}, "/TrimBox[20 20 280 180]")));
    return book.pages[0].print->painted;
  };
  const std::string marks = "0 G 20 0 m 20 10 l S 280 190 m 280 200 l S 0 20 m 12 20 l S ";
  CHECK_FALSE(painted(marks));
  const auto panel = painted(marks + "0.5 g 20 100 50 80 re f");
  REQUIRE(panel);
  CHECK(near(*panel, 0, 0, 50, 80));
}

TEST_CASE("lengths come in whole micrometres, type in thousandths of a point") {
  MadePdf pdf;
  const int font = pdf.add("<</Type/Font/Subtype/Type1/BaseFont/Made/Encoding/WinAnsiEncoding>>");
  const int picture =
      pdf.stream("/Subtype/Image/Width 3/Height 2/BitsPerComponent 8/ColorSpace/DeviceGray", "abcdef");
  const Book book = book_of(Opened(one_page(
      pdf,
      "BT /F 9.0000001 Tf 30 100 Td (A line) Tj ET 0 G 0.1 w 30 50 m 60 50 l S "
      "255.118 0 0 198.425 40 30 cm /I Do",
      "/Font<</F " + std::to_string(font) + " 0 R>>/XObject<</I " + std::to_string(picture) + " 0 R>>",
      "/MediaBox[0 0 498.9 612.28]/TrimBox[8.5 8.5 490.39 603.78]"
      "/BleedBox[0 0 498.898 612.284]")));
  CHECK(book.trim == Size{Length::of_mm(170), Length::of_mm(210.002)});
  CHECK(book.bleed.top == Length::of_mm(2.999));
  const Rect &frame = book.pages[0].frames.at(0).rect;
  CHECK(frame.size() == Size{Length::of_mm(90), Length::of_mm(70)});
  CHECK(frame.x.ticks() % 360 == 0);
  CHECK(frame.y.ticks() % 360 == 0);
  CHECK(book.pages[0].texts.at(0).type_size == Length::of_pt(9));
  CHECK(book.pages[0].print->lines.at(0).width == Length::of_pt(0.1));
}

TEST_CASE("bleed is what the BleedBoxes leave, and a page of another size says so") {
  MadePdf pdf;
  const int top = pdf.add("");
  const auto page = [&](const std::string &more) {
    return std::to_string(pdf.add("<</Type/Page" + more + ">>")) + " 0 R ";
  };
  const std::string usual = "/MediaBox[0 0 320 220]/TrimBox[10 10 310 210]/BleedBox[1 1 319 219]";
  const std::string kids = page(usual) + page("/MediaBox[0 0 612 792]") + page(usual);
  pdf.set(top, "<</Type/Pages/Kids[" + kids + "]>>");
  const Book book = book_of(Opened(pdf.text(pdf.add("<</Pages " + std::to_string(top) + " 0 R>>"))));
  CHECK(near(book.trim.width, 300));
  CHECK(near(book.bleed.top, 9));
  CHECK_FALSE(book.pages[0].trim);
  REQUIRE(book.pages[1].trim);
  CHECK(near(book.pages[1].trim->height, 792));
  CHECK_FALSE(book.pages[1].blank);
  CHECK(near(book.pages[0].print->boxes.media, -10, -10, 320, 220));
}
