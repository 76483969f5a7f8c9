// The edges of pages and spreads. Tests engine/placement/page_space.h.
#include "engine/placement/page_space.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

constexpr Rect mm(int x, int y, int width, int height) {
  return {1_mm * x, 1_mm * y, 1_mm * width, 1_mm * height};
}

Book a_book() {
  Book book;
  book.trim = {200_mm, 250_mm};
  book.bleed = {1_mm, 2_mm, 3_mm, 4_mm};
  book.safe_margin = {5_mm, 6_mm, 7_mm, 8_mm};
  return book;
}

PageSpace space_of(const Book &book, int number, bool spread = false, const PressSheet &press = {}) {
  Page page;
  page.number = number;
  page.kind = spread ? PageKind::spread : PageKind::page;
  return page_space(book, press, page);
}

} // namespace

static_assert(side_of(1, Side::right) == Side::right && side_of(2, Side::right) == Side::left);
static_assert(side_of(1, Side::left) == Side::left && side_of(2, Side::left) == Side::right);
static_assert(reach_past(mm(-3, 10, 100, 250), mm(0, 0, 200, 250)) ==
              Reach{-(10_mm), 10_mm, 3_mm, -(103_mm)});

TEST_CASE("a right page is bound at its left side") {
  const PageSpace space = space_of(a_book(), 3);
  CHECK(space.bound == PageSide::left);
  CHECK_FALSE(space.fold);
  CHECK(space.trim == mm(0, 0, 200, 250));
  CHECK(space.bleed == mm(-4, -1, 207, 253));
  CHECK(space.safe == mm(8, 5, 185, 239));
  CHECK(space.name_of(PageSide::left) == "inside");
  CHECK(space.name_of(PageSide::right) == "outside");
  CHECK(space.name_of(PageSide::top) == "top");
  CHECK(space.name_of(PageSide::bottom) == "bottom");
}

TEST_CASE("a left page is bound at its right side") {
  const PageSpace space = space_of(a_book(), 2);
  CHECK(space.bound == PageSide::right);
  CHECK(space.bleed == mm(-3, -1, 207, 253));
  CHECK(space.safe == mm(7, 5, 185, 239));
  CHECK(space.name_of(PageSide::right) == "inside");
}

TEST_CASE("with the first page on the left the sides change over") {
  Book book = a_book();
  book.binding.first_page = Side::left;
  CHECK(space_of(book, 1).bound == PageSide::right);
  CHECK(space_of(book, 2).bound == PageSide::left);
}

TEST_CASE("a spread is twice as wide, with outer edges all round and a fold in the middle") {
  const PageSpace space = space_of(a_book(), 2, true);
  CHECK(space.fold == 200_mm);
  CHECK(space.fold_margin == 8_mm);
  CHECK_FALSE(space.bound);
  CHECK(space.trim == mm(0, 0, 400, 250));
  CHECK(space.bleed == mm(-3, -1, 406, 253));
  CHECK(space.safe == mm(7, 5, 386, 239));
  CHECK(space.name_of(PageSide::left) == "outside");
  CHECK(space.name_of(PageSide::right) == "outside");
  CHECK(space.name_of(PageSide::fold) == "inside");
}

TEST_CASE("the larger of the book's and the press sheet's edges is wanted, edge by edge") {
  PressSheet press;
  press.bleed = {3_mm, 0_mm, 3_mm, 0_mm};
  press.safe_margin = {0_mm, 10_mm, 0_mm, 10_mm};
  const PageSpace space = space_of(a_book(), 1, false, press);
  CHECK(space.bleed_wanted == Reach{3_mm, 2_mm, 4_mm, 3_mm});
  CHECK(space.margin_wanted == Reach{5_mm, 10_mm, 10_mm, 7_mm});
}

TEST_CASE("what the binding swallows is not safe") {
  Book book = a_book();
  book.binding.gutter_loss = 12_mm;
  CHECK(space_of(book, 1).margin_wanted == Reach{5_mm, 6_mm, 12_mm, 7_mm});
  CHECK(space_of(book, 2).margin_wanted == Reach{5_mm, 6_mm, 7_mm, 12_mm});
  CHECK(space_of(book, 2, true).fold_margin == 12_mm);
  CHECK(space_of(book, 1).gutter_loss == 12_mm);
}
