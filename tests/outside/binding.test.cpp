// Published thicknesses of paper, sizes of signatures and measures of cases, and worked examples, each with
// its source beside it. "Arithmetic" means reckoned by hand from the definition.
#include "engine/binding/bound_book.h"
#include "engine/press/read.h"
#include "tests/support/catch.h"

#include <cmath>

using namespace stoneproof;

namespace {

/// A pound of a ream of 500 sheets of 25 x 38 in, in g/m2: 453.59237 g over 500 x 25 x 38 x 0.00064516 m2.
constexpr double pound_per_ream = 453.59237 / (500 * 25 * 38 * 0.00064516);

PressSheet sheet() { return built_in_press_sheet(); }

Book perfect_book(const Stock &block) {
  Book book;
  book.binding.kind = BindingKind::perfect;
  book.stocks.block = block;
  return book;
}

Stock by_caliper(Length caliper) {
  Stock stock;
  stock.caliper = caliper;
  return stock;
}

} // namespace

// GPO, Government Paper Specification Standards, February 1999, standards JCP A55, A70 and A91: average
// thickness in mm and in inches, for a grammage.
TEST_CASE("the two units of each standard thickness agree, and the tolerance is that of the built-in sheet") {
  struct Case {
    const char *standard;
    double grammage, pounds, mm, in;
  };
  const Case cases[] = {
      {"A55", 60, 40, 0.075, 0.0030},  {"A55", 75, 50, 0.100, 0.0039},   {"A55", 90, 60, 0.120, 0.0047},
      {"A55", 105, 70, 0.140, 0.0055}, {"A55", 120, 80, 0.160, 0.0063},  {"A70", 60, 40, 0.075, 0.0030},
      {"A70", 75, 50, 0.105, 0.0041},  {"A70", 90, 60, 0.130, 0.0051},   {"A91", 105, 70, 0.140, 0.0055},
      {"A91", 120, 80, 0.160, 0.0063}, {"A91", 150, 100, 0.200, 0.0079},
  };
  const Length tolerance = sheet().spine.leaf_tolerance;
  CHECK(tolerance.mm() == Approx(0.013).margin(1e-9)); // A55: 0.0005 in, given as 0.013 mm
  for (const Case &each : cases) {
    CAPTURE(each.standard, each.grammage);
    Stock stock = by_caliper(Length::of_mm(each.mm));
    // The bulk that makes this thickness of this grammage; two leaves of four pages in the inch.
    stock.grammage = each.grammage;
    stock.bulk = each.mm * 1000 / each.grammage;
    stock.pages_per_inch = 2 / each.in;
    CHECK_FALSE(contradiction(stock, tolerance));
    CHECK(told_thicknesses(stock)[1].leaf.mm() == Approx(each.mm).margin(1e-6));
    CHECK(told_thicknesses(stock)[2].leaf.in() == Approx(each.in).margin(1e-8));
    // The standard rounds its grammages to whole 15 g; 25 x 38 lb are within its 5 % of them.
    CHECK(each.pounds * pound_per_ream == Approx(each.grammage).epsilon(0.05));
  }
}

TEST_CASE("spines of the standard papers: worked examples") {
  struct Case {
    const char *source;
    std::size_t pages;
    Length leaf;
    double spine_mm, tolerance_mm;
  };
  const Case cases[] = {
      {"A55, 75 g: 64 x 0.100; 64 x 0.013", 128, Length::of_mm(0.1), 6.40, 0.832},
      {"A55, 90 g: 64 x 0.120; 64 x 0.013", 128, Length::of_mm(0.12), 7.68, 0.832},
      {"A70, 75 g: 80 x 0.105; 80 x 0.013", 160, Length::of_mm(0.105), 8.40, 1.04},
      {"A55, 60 lb: 100 x 0.0047 in = 0.470 in; 100 x 0.013", 200, Length::of_in(0.0047), 11.938, 1.3},
      {"arithmetic: 80 x 120 g/m2 x 0.9 cm3/g / 1000", 160, Length::of_mm(0.108), 8.64, 1.04},
      {"arithmetic: 200 pages at 400 in the inch = 0.5 in", 200, Length::of_in(2.0 / 400), 12.7, 1.3},
  };
  for (const Case &each : cases) {
    CAPTURE(each.source);
    const auto spine = spine_of(perfect_book(by_caliper(each.leaf)), each.pages, sheet().spine);
    REQUIRE(spine);
    CHECK(spine->width.length.mm() == Approx(each.spine_mm).margin(0.0005));
    CHECK(spine->width.tolerance.mm() == Approx(each.tolerance_mm).margin(0.0005));
  }
  Stock bulky;
  bulky.grammage = 120;
  bulky.bulk = 0.9;
  CHECK(spine_of(perfect_book(bulky), 160, sheet().spine)->width.length.mm() == Approx(8.64).margin(0.0005));
  Stock counted;
  counted.pages_per_inch = 400;
  CHECK(spine_of(perfect_book(counted), 200, sheet().spine)->width.length.in() == Approx(0.5).margin(1e-6));
}

// GPO Style Manual (2008), 1.15: signatures of 8, 12, 16, 24 or 32 pages, no more than two blanks at the end;
// New Hart's Rules 1.8 begins with 4.
TEST_CASE("signatures of the style manuals") {
  for (const std::size_t pages : {4u, 8u, 12u, 16u, 24u, 32u}) CHECK(is_usual_signature(pages));
  for (const std::size_t pages : {2u, 6u, 10u, 14u, 20u, 28u}) CHECK_FALSE(is_usual_signature(pages));
  CHECK(most_blanks == 2);
}

// Arithmetic from the definition that a folded sheet has four pages and every sheet lies round those inside
// it.
TEST_CASE("creep of the innermost sheet: worked examples") {
  struct Case {
    std::size_t pages;
    double leaf_mm, creep_mm;
  };
  for (const Case &each :
       {Case{16, 0.10, 0.30}, Case{32, 0.10, 0.70}, Case{48, 0.12, 1.32}, Case{64, 0.10, 1.50}}) {
    CAPTURE(each.pages);
    CHECK(creep_of(each.pages / 2, each.pages, Length::of_mm(each.leaf_mm)).mm() ==
          Approx(each.creep_mm).margin(1e-6));
  }
}

TEST_CASE("a case, and the measures that are taken where none is told") {
  const auto mm = [](double value) { return Length::of_mm(value); };
  // Arithmetic: 2 x 19 + 2 x 213 + 2 x 8 + 17 = 497; 280 + 2 x 19 + 2 x 3 = 324.
  CHECK(case_sheet(mm(213), mm(8), mm(17), mm(280), mm(3), mm(19)) == Size{mm(497), mm(324)});
  const Binding common;
  // Squares of 3 mm: Indiana University Libraries, preservation manual. Of 1/8 to 3/16 in, and turn-ins of
  // 3/4 in: Vaughn, Printing and Bookbinding for Schools.
  CHECK(common.square == mm(3));
  CHECK(common.square >= Length::of_in(1.0 / 8) - mm(0.2));
  CHECK(common.square <= Length::of_in(3.0 / 16));
  CHECK(std::abs((common.turn_in - Length::of_in(0.75)).mm()) < 0.1);
  // Hinges of 7 to 10 mm: common practice.
  CHECK(common.hinge >= mm(7));
  CHECK(common.hinge <= mm(10));
}
