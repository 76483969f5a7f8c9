// The thickness of paper and of a spine, by cases that are reckoned by hand.
#include "tests/engine/binding/bound_things.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

Stock by_bulk(double grammage, double bulk) {
  Stock stock;
  stock.grammage = grammage;
  stock.bulk = bulk;
  return stock;
}

Stock by_pages(double pages_per_inch) {
  Stock stock;
  stock.pages_per_inch = pages_per_inch;
  return stock;
}

Spine spine(const Book &book, std::size_t pages) {
  const auto found = spine_of(book, pages, sheet_of().spine);
  REQUIRE(found);
  return *found;
}

} // namespace

TEST_CASE("a leaf: hand-worked") {
  struct Case {
    Stock stock;
    double leaf_mm;
    ThicknessFrom from;
    const char *arithmetic;
  };
  const Case cases[] = {
      {paper(0.12), 0.12, ThicknessFrom::caliper, "as told"},
      {by_bulk(90, 1.3), 0.117, ThicknessFrom::bulk, "90 x 1.3 / 1000"},
      {by_bulk(120, 0.9), 0.108, ThicknessFrom::bulk, "120 x 0.9 / 1000"},
      {by_bulk(80, 2), 0.16, ThicknessFrom::bulk, "80 x 2 / 1000"},
      {by_bulk(1, 0.1), 0.0001, ThicknessFrom::bulk, "1 x 0.1 / 1000"},
      {by_pages(400), 0.127, ThicknessFrom::pages_per_inch, "2 x 25.4 / 400"},
      {by_pages(508), 0.1, ThicknessFrom::pages_per_inch, "2 x 25.4 / 508"},
      {by_pages(1), 50.8, ThicknessFrom::pages_per_inch, "2 x 25.4 / 1"},
  };
  for (const Case &each : cases) {
    CAPTURE(each.arithmetic);
    const auto leaf = leaf_thickness(each.stock);
    REQUIRE(leaf);
    CHECK(leaf->leaf.mm() == Approx(each.leaf_mm).margin(1e-6));
    CHECK(leaf->from == each.from);
  }
  CHECK_FALSE(leaf_thickness(std::nullopt));
  CHECK_FALSE(leaf_thickness(Stock{}));
  Stock half;
  half.grammage = 90;
  CHECK_FALSE(leaf_thickness(half)); // a grammage alone tells nothing
}

TEST_CASE("of several figures the most direct counts") {
  Stock stock = by_bulk(90, 1.3);
  stock.pages_per_inch = 400;
  CHECK(leaf_thickness(stock)->from == ThicknessFrom::bulk);
  stock.caliper = mm(0.12);
  CHECK(leaf_thickness(stock)->from == ThicknessFrom::caliper);
  CHECK(told_thicknesses(stock).size() == 3);
}

TEST_CASE("figures contradict each other beyond the tolerance, and the farthest two are named") {
  Stock stock = by_bulk(90, 1.3); // 0.117 mm
  CHECK_FALSE(contradiction(stock, {}));
  stock.caliper = mm(0.13); // 0.013 apart
  CHECK_FALSE(contradiction(stock, mm(0.013)));
  CHECK(contradiction(stock, mm(0.013) - Length::of_ticks(1)));
  stock.pages_per_inch = 400; // 0.127, between the two
  const auto both = contradiction(stock, mm(0.01));
  REQUIRE(both);
  CHECK(both->thinner.from == ThicknessFrom::bulk);
  CHECK(both->thicker.from == ThicknessFrom::caliper);
  CHECK_FALSE(contradiction(Stock{}, {}));
}

TEST_CASE("a paper is found by the part that it is for") {
  Stocks stocks;
  stocks.cover = paper(0.3);
  CHECK(stock_of(stocks, StockPart::cover)->caliper == mm(0.3));
  CHECK_FALSE(stock_of(stocks, StockPart::block));
  CHECK_FALSE(stock_of(stocks, StockPart::endpaper));
}

TEST_CASE("a spine: hand-worked") {
  struct Case {
    BindingKind kind;
    std::size_t pages;
    double block, cover, endpaper, board, lining, width, tolerance;
    const char *arithmetic;
  };
  const auto perfect = BindingKind::perfect, bound = BindingKind::case_bound;
  const Case cases[] = {
      {perfect, 0, 0.1, 0, 0, 0, 0, 0, 0, "no leaf"},
      {perfect, 1, 0.1, 0, 0, 0, 0, 0.1, 0.013, "a page alone still takes a leaf"},
      {perfect, 2, 0.1, 0, 0, 0, 0, 0.1, 0.013, "1 x 0.1"},
      {perfect, 3, 0.1, 0, 0, 0, 0, 0.2, 0.026, "2 x 0.1"},
      {perfect, 40, 0.1, 0.3, 0, 0, 0, 2.6, 0.26, "20 x 0.1 + 2 x 0.3"},
      {perfect, 200, 0.12, 0.25, 0, 0, 0, 12.5, 1.3, "100 x 0.12 + 2 x 0.25"},
      {perfect, 200, 0.12, 0.25, 0.2, 2.5, 1, 12.5, 1.3, "boards, endpapers and lining are none of its"},
      {bound, 24, 0.1, 0, 0, 2.5, 0, 6.2, 0.156, "12 x 0.1 + 2 x 2.5"},
      {bound, 128, 0.12, 0, 0.15, 2.5, 0.5, 13.78, 0.832, "64 x 0.12 + 4 x 0.15 + 2 x 2.5 + 0.5"},
      {bound, 128, 0.12, 0.3, 0.15, 2.5, 0.5, 13.78, 0.832, "the paper of the cover lies outside"},
      {BindingKind::layflat, 40, 0.4, 0.3, 0, 2.5, 0, 8, 0.26, "20 x 0.4"},
      {BindingKind::spiral, 40, 0.1, 0.3, 0, 0, 0, 2, 0.26, "20 x 0.1"},
      {perfect, 99'998, 0.1, 0, 0, 0, 0, 4999.9, 649.987, "49999 x 0.1; 49999 x 0.013"},
  };
  for (const Case &each : cases) {
    CAPTURE(each.pages, each.arithmetic);
    Book book = book_of(each.kind, 0);
    book.stocks.block = paper(each.block);
    if (each.cover > 0) book.stocks.cover = paper(each.cover);
    if (each.endpaper > 0) book.stocks.endpaper = paper(each.endpaper);
    book.binding.board = mm(each.board);
    book.binding.spine_lining = mm(each.lining);
    const Spine found = spine(book, each.pages);
    CHECK(found.width.length.mm() == Approx(each.width).margin(1e-6));
    CHECK(found.width.tolerance.mm() == Approx(each.tolerance).margin(1e-6));
  }
}

TEST_CASE("no spine without paper, and none of a stapled book") {
  CHECK_FALSE(spine_of(book_of(BindingKind::perfect, 0), 100, sheet_of().spine));
  Book stapled = book_of(BindingKind::saddle, 0);
  stapled.stocks.block = paper(0.1);
  CHECK_FALSE(spine_of(stapled, 100, sheet_of().spine));
}

TEST_CASE("a spine grows with every leaf, by one leaf, whatever the binding") {
  for (const BindingKind kind : {BindingKind::perfect, BindingKind::case_bound, BindingKind::layflat}) {
    Book book = book_of(kind, 0);
    book.stocks = {paper(0.1), paper(0.3), paper(0.15)};
    for (std::size_t pages = 0; pages < 600; pages += 2) {
      CAPTURE(pages);
      const Spine thinner = spine(book, pages), thicker = spine(book, pages + 2);
      REQUIRE(thicker.width.length - thinner.width.length == mm(0.1));
      REQUIRE(thicker.width.tolerance > thinner.width.tolerance);
      REQUIRE(thicker.width.least() < thicker.width.most());
    }
  }
}
