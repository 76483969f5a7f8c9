// Places on the finished PDF, worked out by hand: trim 200 x 250 mm, bleed 3 mm but for the inside, page 1
// and a spread 2-3.
#include "reports/record/finished_pdf.h"

#include "tests/support/catch.h"
#include "tests/support/small_book.h"

using namespace stoneproof;
using namespace stoneproof::record;
using namespace stoneproof::test;

namespace {

Rect area(double x, double y, double width, double height) {
  return frame("", std::nullopt, x, y, width, height).rect;
}

/// Page and millimetres from its lower left corner: left, bottom, right, top.
struct Place {
  std::size_t page = 0;
  double left = 0, bottom = 0, right = 0, top = 0;
};

void check(const std::vector<PdfPlace> &places, const std::vector<Place> &wanted) {
  constexpr double mm = 72 / 25.4;
  REQUIRE(places.size() == wanted.size());
  for (std::size_t i = 0; i < places.size(); ++i) {
    const UserRect &rect = places[i].rect;
    CHECK(places[i].page == wanted[i].page);
    CHECK(rect.left == Approx(wanted[i].left * mm).margin(1e-6));
    CHECK(rect.bottom == Approx(wanted[i].bottom * mm).margin(1e-6));
    CHECK(rect.right == Approx(wanted[i].right * mm).margin(1e-6));
    CHECK(rect.top == Approx(wanted[i].top * mm).margin(1e-6));
  }
}

} // namespace

TEST_CASE("a page is its trim with the bleed of its own sides, a spread is two pages") {
  const FinishedPdf pdf(small_book(), FinishedFile::block);
  // Page 1 is bound on its left, where there is no bleed; page 2 on its right.
  check(pdf.places_of(0, area(20, 30, 100, 50)), {{0, 20, 173, 120, 223}});
  check(pdf.places_of(1, area(20, 30, 100, 50)), {{1, 23, 173, 123, 223}});
  check(pdf.places_of(1, area(220, 30, 100, 50)), {{2, 20, 173, 120, 223}});
  check(pdf.places_of(1, area(150, 30, 100, 50)), {{1, 153, 173, 203, 223}, {2, 0, 173, 50, 223}});
  CHECK(pdf.shows(0));
  CHECK(pdf.shows(1));
  CHECK_FALSE(pdf.shows(2));
  CHECK_FALSE(pdf.empty());
}

TEST_CASE("a book whose first page lies on the left, and bleed at the binding") {
  Book book = small_book();
  book.binding.first_page = Side::left;
  book.bleed.inside = Length::of_mm(1);
  book.pages[1].number = 3;
  const FinishedPdf pdf(book, FinishedFile::block);
  check(pdf.places_of(0, area(20, 30, 100, 50)), {{0, 23, 173, 123, 223}});
  // The right page of the spread begins 1 mm before the fold; what is laid out there is shown on the left
  // page.
  check(pdf.places_of(1, area(150, 30, 100, 50)), {{1, 153, 173, 203, 223}, {2, 1, 173, 51, 223}});
}

TEST_CASE("what hangs off the page is cut at its bleed") {
  const FinishedPdf pdf(small_book(), FinishedFile::block);
  check(pdf.places_of(0, area(-10, -10, 220, 270)), {{0, 0, 0, 203, 256}});
  check(pdf.places_of(0, area(150, 200, 100, 100)), {{0, 150, 0, 203, 53}});
  check(pdf.places_of(1, area(-50, 10, 100, 20)), {{1, 0, 223, 53, 243}});
}

TEST_CASE("what passes the fold by a rounding stays on its page") {
  const FinishedPdf pdf(small_book(), FinishedFile::block);
  check(pdf.places_of(1, area(100, 30, 100.04, 50)), {{1, 103, 173, 203, 223}});
  CHECK(pdf.places_of(1, area(100, 30, 100.06, 50)).size() == 2);
}

TEST_CASE("what lies off the pages has no place, and its note stands nearest to it") {
  const FinishedPdf pdf(small_book(), FinishedFile::block);
  constexpr double note = 20 * 25.4 / 72;
  CHECK(pdf.places_of(0, area(300, 30, 100, 50)).empty());
  check({pdf.note_near(0, area(300, 103, 100, 50))}, {{0, 203 - note, 125 - note / 2, 203, 125 + note / 2}});
  check({pdf.note_near(1, area(-100, -100, 50, 50))}, {{1, 0, 256 - note, note, 256}});
  check({pdf.note_near(1, area(500, 300, 50, 50))}, {{2, 203 - note, 0, 203, note}});
}

TEST_CASE("a place too thin to see is made 2 mm wide, also where it has no width at all") {
  const FinishedPdf pdf(small_book(), FinishedFile::block);
  check(pdf.places_of(0, area(100, 100, 0, 50)), {{0, 99, 103, 101, 153}});
  check(pdf.places_of(0, area(100, 100, 40, 0.5)), {{0, 100, 151.75, 140, 153.75}});
}

TEST_CASE("a page of its own size is as large as it says") {
  Book book = small_book();
  book.pages[0].trim = Size{Length::of_mm(100), Length::of_mm(120)};
  const FinishedPdf pdf(book, FinishedFile::block);
  check(pdf.places_of(0, area(-3, -3, 200, 200)), {{0, 0, 0, 103, 126}});
}

TEST_CASE("the cover is one page in a file of its own") {
  Book book = small_book();
  Page cover;
  cover.number = 0;
  cover.kind = PageKind::cover;
  book.pages.insert(book.pages.begin(), cover);
  book.cover = Cover{{Length::of_mm(410), Length::of_mm(250)}, Length::of_mm(10), {}, {}};
  const FinishedPdf block(book, FinishedFile::block), soft(book, FinishedFile::cover);
  CHECK_FALSE(block.shows(0));
  CHECK_FALSE(soft.shows(1));
  check(block.places_of(1, area(20, 30, 100, 50)), {{0, 20, 173, 120, 223}});
  check(soft.places_of(0, area(-10, -10, 500, 300)), {{0, 0, 0, 416, 256}});
  check(soft.places_of(0, area(200, 0, 10, 250)), {{0, 203, 3, 213, 253}});
  book.binding.kind = BindingKind::case_bound; // turned in by 19 mm
  const FinishedPdf hard(book, FinishedFile::cover);
  check(hard.places_of(0, area(-50, -50, 600, 400)), {{0, 0, 0, 448, 288}});
  check(hard.places_of(0, area(200, 0, 10, 250)), {{0, 219, 19, 229, 269}});
  CHECK(FinishedPdf(small_book(), FinishedFile::cover).empty());
}

TEST_CASE("notes without a place stand side by side, and always on the page") {
  FinishedPdf pdf(small_book(), FinishedFile::block);
  check({pdf.next_note(std::nullopt)}, {{0, 0, 253 - 20 * 25.4 / 72, 20 * 25.4 / 72, 253}});
  check({pdf.next_note(0)}, {{0, 24 * 25.4 / 72, 253 - 20 * 25.4 / 72, 44 * 25.4 / 72, 253}});
  check({pdf.next_note(1)}, {{1, 3, 253 - 20 * 25.4 / 72, 3 + 20 * 25.4 / 72, 253}});
  for (int i = 0; i < 1000; ++i) {
    const UserRect rect = pdf.next_note(0).rect;
    CHECK(
        (rect.left >= 0 && rect.bottom >= 0 && rect.right <= 203 / 25.4 * 72 && rect.top <= 256 / 25.4 * 72));
  }
  Book tiny = small_book();
  tiny.pages[0].trim = Size{Length::of_mm(1), Length::of_mm(1)};
  check({FinishedPdf(tiny, FinishedFile::block).next_note(0)}, {{0, 0, 0, 4, 7}});
}
