// The bound book in a description: binding details, papers, cover, pages that are blank or of their own size.
#include "engine/book/read.h"
#include "tests/support/catch.h"

#include <fmt/format.h>

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

constexpr std::string_view whole = R"(<book xmlns="urn:stoneproof:book:1" title="T" language="en">
<trim width="210mm" height="280mm"/>
<bleed top="3mm" bottom="3mm" outside="3mm" inside="0mm"/>
<safe-margin top="5mm" bottom="5mm" outside="5mm" inside="5mm"/>
<binding kind="case" signature="16" grind-off="3mm" glue="5mm" board="2mm" board-width="213mm" square="4mm" turn-in="0.75in" hinge="7mm" spine-lining="0.5mm"/>
<stocks>
<stock part="block" caliper="0.12mm" grammage="90g/m2" bulk="1.3" pages-per-inch="400"/>
<stock part="endpaper" grammage="120 g/m2" bulk="0.9"/>
</stocks>
<pages>
<page number="1" width="200mm" height="270mm"><frame id="a" x="0mm" y="0mm" width="9mm" height="9mm"><fill focus-y="50%"/></frame></page>
<spread number="2" blank="yes"/>
<blank number="4" count="3"/>
<page number="8"/>
<blank number="9"/>
</pages>
<cover width="500mm" height="286mm" spine="17mm" flap="20mm">
<text kind="spine" x="260mm" y="9mm" width="9mm" height="90mm" size="9pt">T</text>
<frame id="front" x="0mm" y="0mm" width="9mm" height="9mm"/>
</cover>
</book>
)";

std::string with(std::string_view part, std::string_view replacement) {
  std::string text(whole);
  const std::size_t at = text.find(part);
  REQUIRE(at != std::string::npos);
  return text.replace(at, part.size(), replacement);
}

std::string faults_of(const Reading<Book> &reading) {
  std::string text;
  for (const SourceFault &fault : reading.faults) text += fault.fault.where + ": " + fault.fault.what + "\n";
  return text;
}

Book read(const std::string &text) {
  const auto reading = parse_book(SourceText("b", text));
  INFO(faults_of(reading));
  REQUIRE(reading);
  return *reading.value;
}

} // namespace

TEST_CASE("binding details arrive in the book, or the common ones stand for them") {
  const Binding binding = read(std::string(whole)).binding;
  CHECK(binding.signature == 16);
  CHECK(binding.grind_off == 3_mm);
  CHECK(binding.glue == 5_mm);
  CHECK(binding.board == 2_mm);
  CHECK(binding.board_width == 213_mm);
  CHECK(binding.square == 4_mm);
  CHECK(binding.turn_in == Length::of_in(0.75));
  CHECK(binding.hinge == 7_mm);
  CHECK(binding.spine_lining == Length::of_mm(0.5));
  const std::size_t begin = whole.find(" signature"), end = whole.find("/>", begin);
  const Binding common = read(with(whole.substr(begin, end - begin), "")).binding;
  CHECK_FALSE(common.signature);
  CHECK(common.grind_off == 0_mm);
  CHECK(common.glue == 0_mm);
  CHECK(common.board == Length::of_mm(2.5));
  CHECK_FALSE(common.board_width);
  CHECK(common.square == 3_mm);
  CHECK(common.turn_in == 19_mm);
  CHECK(common.hinge == 8_mm);
  CHECK(common.spine_lining == 0_mm);
}

TEST_CASE("papers arrive with the figures that they were told by") {
  const Stocks stocks = read(std::string(whole)).stocks;
  REQUIRE(stocks.block);
  CHECK(stocks.block->caliper == Length::of_mm(0.12));
  CHECK(stocks.block->grammage == 90);
  CHECK(stocks.block->bulk == 1.3);
  CHECK(stocks.block->pages_per_inch == 400);
  CHECK(stocks.block->place == SourcePlace{7, 1});
  REQUIRE(stocks.endpaper);
  CHECK_FALSE(stocks.endpaper->caliper);
  CHECK(stocks.endpaper->grammage == 120);
  CHECK(stocks.endpaper->bulk == 0.9);
  CHECK_FALSE(stocks.endpaper->pages_per_inch);
  CHECK_FALSE(stocks.cover);
}

TEST_CASE("the cover is the first of the pages, wherever it stands") {
  const Book book = read(std::string(whole));
  REQUIRE(book.cover);
  CHECK(book.cover->size == Size{500_mm, 286_mm});
  CHECK(book.cover->spine == 17_mm);
  CHECK(book.cover->flap == 20_mm);
  CHECK(book.cover->panel() == Length::of_mm(221.5));
  CHECK(book.cover->place == SourcePlace{17, 1});
  REQUIRE(book.pages.size() == 8);
  const Page &cover = book.pages[0];
  CHECK(cover.kind == PageKind::cover);
  CHECK(cover.number == 0);
  CHECK(cover.place == SourcePlace{17, 1});
  REQUIRE(cover.texts.size() == 1);
  CHECK(cover.texts[0].kind == TextKind::spine);
  CHECK(cover.texts[0].order == 0);
  REQUIRE(cover.frames.size() == 1);
  CHECK(cover.frames[0].order == 1);
  const Cover bare = *read(with(" spine=\"17mm\" flap=\"20mm\"", "")).cover;
  CHECK(bare.spine == 0_mm);
  CHECK(bare.flap == 0_mm);
}

TEST_CASE("a run of blank pages is as many pages") {
  const Book book = read(std::string(whole));
  struct Case {
    int number;
    PageKind kind;
    bool blank;
    int line;
  };
  const Case cases[] = {{1, PageKind::page, false, 11}, {2, PageKind::spread, true, 12},
                        {4, PageKind::page, true, 13},  {5, PageKind::page, true, 13},
                        {6, PageKind::page, true, 13},  {8, PageKind::page, false, 14},
                        {9, PageKind::page, true, 15}};
  REQUIRE(book.pages.size() == std::size(cases) + 1);
  for (std::size_t i = 0; i < std::size(cases); ++i) {
    const Page &page = book.pages[i + 1];
    CHECK(page.number == cases[i].number);
    CHECK(page.kind == cases[i].kind);
    CHECK(page.blank == cases[i].blank);
    CHECK(page.place.line == cases[i].line);
  }
  CHECK(book.page_count() == 8);
  CHECK(book.pages[1].trim == Size{200_mm, 270_mm});
  CHECK_FALSE(book.pages[2].trim);
}

TEST_CASE("a focus point is said as soon as one of its halves is") {
  const auto said = [](std::string_view fill) {
    return std::get<Fill>(read(with("<fill focus-y=\"50%\"/>", fill)).pages[1].frames[0].fit).focus_said;
  };
  CHECK(said("<fill focus-y=\"50%\"/>"));
  CHECK(said("<fill focus-x=\"50%\"/>"));
  CHECK_FALSE(said("<fill/>"));
  CHECK_FALSE(said(""));
}

TEST_CASE("each fault of the bound book is told at its place") {
  struct Case {
    std::string_view part, replacement, faults;
  };
  const Case cases[] = {
      {"signature=\"16\"", "signature=\"15\"",
       "b:5:33: signature=\"15\": a folded sheet has an even number of pages\n"},
      {"caliper=\"0.12mm\"", "caliper=\"-0.12mm\"",
       "b:7:30: caliper=\"-0.12mm\": this length must not be negative\n"},
      {"caliper=\"0.12mm\"", "caliper=\"0mm\"",
       "b:7:30: caliper=\"0mm\": this length must be more than zero\n"},
      {"90g/m2", "90gsm", "b:7:48: grammage=\"90gsm\": \"gsm\" is not a unit of grammage\n"},
      {"\"1.3\"", "\"11\"", "b:7:62: bulk=\"11\": a bulk must be from 0.1 to 10 cm3/g\n"},
      {"\"400\"", "\"0\"", "b:7:83: pages-per-inch=\"0\": pages per inch must be from 1 to below 10000\n"},
      {" grammage=\"120 g/m2\"", "", "b:8:1: the stock has a bulk but no grammage\n"},
      {" bulk=\"0.9\"", "", "b:8:1: the stock has a grammage but no bulk, caliper or pages per inch\n"},
      {" grammage=\"120 g/m2\" bulk=\"0.9\"", "", "b:8:1: the stock does not tell how thick it is\n"},
      {"endpaper", "block", "b:8:14: the stock of the block is there already, in line 7\n"},
      {"endpaper", "boards", "b:8:14: part=\"boards\": this is not one of the known words\n"},
      {"hinge=\"7mm\"", "hinge=\"210mm\"", "b:5:1: the hinge leaves nothing of the board\n"},
      {"flap=\"20mm\"", "flap=\"241.5mm\"",
       "b:17:15: the spine and the flaps leave nothing for front and back\n"},
      {"height=\"286mm\"", "height=\"10mm\"", "b:17:30: the safe margin leaves nothing of the cover\n"},
      {"id=\"front\"", "id=\"a\"", "b:11:58: another frame has the id \"a\"\n"},
      {" height=\"270mm\"", "", "b:11:1: the page has a width or a height but not both\n"},
      {"200mm", "10mm", "b:11:25: the safe margin or the gutter loss leaves nothing of this page\n"},
      {"blank=\"yes\"/>",
       "blank=\"yes\"><text x=\"0mm\" y=\"0mm\" width=\"9mm\" height=\"9mm\" size=\"9pt\"/></spread>",
       "b:12:32: there is something on a page that is said to be blank\n"},
      {"<blank number=\"4\"", "<blank number=\"3\"", "b:13:16: page 3 is there already, in line 12\n"},
      {"<page number=\"8\"", "<page number=\"5\"", "b:14:15: page 5 is there already, in line 13\n"},
      {"<blank number=\"9\"", "<blank number=\"7\"", "b:15:16: page 7 comes after page 8 of line 14\n"},
      {"count=\"3\"", "count=\"99999\"", "b:13:16: page 100002 is more than a book can have\n"},
  };
  for (const Case &c : cases) {
    INFO(c.replacement);
    CHECK(faults_of(parse_book(SourceText("b", with(c.part, c.replacement)))) == c.faults);
  }
}

TEST_CASE("runs of blank pages that overlap make no more pages than there are numbers") {
  std::string text(whole);
  const std::string run = "<blank number=\"4\" count=\"99990\"/>\n";
  std::string runs;
  for (int i = 0; i < 2000; ++i) runs += run;
  text.insert(text.find("<blank number=\"4\""), runs);
  const auto reading = parse_book(SourceText("b", text));
  CHECK_FALSE(reading);
  CHECK(reading.faults.front().fault.what == "page 4 is there already, in line 13");
}
