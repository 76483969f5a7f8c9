#include "reports/content/figures.h"

#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::content;

TEST_CASE("a density is rounded down, so that no rounding hides a shortfall") {
  CHECK(ppi(Density::of_ppi(299.89)) == "299 ppi");
  CHECK(ppi(Density::of_ppi(199.5)) == "199 ppi");
  CHECK(ppi(Density::of_ppi(1740.4)) == "1740 ppi");
  CHECK(ppi(Density::of_ppi(300)) == "300 ppi");
  CHECK(ppi(Density::of_ppi(299.908)) == "300 ppi"); // 1,063 pixels on 90.03 mm
  CHECK(ppi(Pixels{3000} / Length::of_in(10)) == "300 ppi");
  CHECK(ppi(Density::of_ppi(0.4)) == "0 ppi");
}

TEST_CASE("lengths are shown to a hundredth of a millimetre, without needless zeros") {
  struct Case {
    double mm;
    std::string text;
  };
  for (const Case &c : {Case{3, "3 mm"}, Case{2.999, "2.99 mm"}, Case{2.5, "2.5 mm"}, Case{0, "0 mm"},
                        Case{0.004, "0 mm"}, Case{-1.25, "-1.25 mm"}, Case{1000, "1000 mm"}})
    CHECK(millimetres(Length::of_mm(c.mm)) == c.text);
}

TEST_CASE("a share is never shown as nothing or everything when it is not") {
  CHECK(per_cent(0) == "0 %");
  CHECK(per_cent(1) == "100 %");
  CHECK(per_cent(0.125) == "12.5 %");
  CHECK(per_cent(0.0001) == "less than 0.1 %");
  CHECK(per_cent(0.9999) == "more than 99.9 %");
}

TEST_CASE("a size that a picture may be printed at is rounded down on both sides") {
  CHECK(size_down({Length::of_mm(101.99), Length::of_mm(67.5)}) == "101 × 67 mm");
  CHECK(size_down({Length::of_mm(84), Length::of_mm(0.49)}) == "84 × 0.4 mm");
  CHECK(size_down({Length::of_mm(299.9999), Length::of_mm(89.99996)}) == "300 × 90 mm");
  CHECK(size_down({Length::of_mm(9.9999), Length::of_mm(9.99)}) == "10 × 9.9 mm");
  CHECK(millimetres_up(Length::of_mm(2.501)) == "2.51 mm");
  CHECK(millimetres_up(Length::of_mm(2.5)) == "2.5 mm");
}

TEST_CASE("a size that something has is rounded to the nearest on both sides") {
  CHECK(content::size({Length::of_mm(89.99996), Length::of_mm(67.5)}) == "90 × 68 mm");
  CHECK(content::size({Length::of_mm(67.49), Length::of_mm(0.49)}) == "67 × 0.5 mm");
  CHECK(content::size({Length::of_mm(9.96), Length::of_mm(9.94)}) == "10 × 9.9 mm");
}

TEST_CASE("one thing is told as one") {
  CHECK(count(1, "hold", "holds") == "1 hold");
  CHECK(count(0, "hold", "holds") == "0 holds");
  CHECK(count(12, "query", "queries") == "12 queries");
}

TEST_CASE("no line may end inside a figure") {
  CHECK(with_figures_kept_whole("Print at 300 ppi, 3 mm, 5 % or 88 × 132 mm; a mm is a mm.") ==
        "Print at 300\u00a0ppi, 3\u00a0mm, 5\u00a0% or 88\u00a0×\u00a0132\u00a0mm; a mm is a mm.");
}

TEST_CASE("a share is rounded away from the one that is wanted, and only then") {
  CHECK(figure_beside(Share{3.0004}, Share{3}) == "300.1 %");
  CHECK(figure_beside(Share{0.0504}, Share{0.05}) == "5.1 %");
  CHECK(figure_beside(Share{0.3999}, Share{0.4}) == "39.9 %");
  CHECK(figure_beside(Share{0.4}, Share{0.4}) == "40 %");
  CHECK(figure_beside(Share{0.224}, Share{0.1}) == "22.4 %");
  CHECK(figure_beside(Share{0.0504}, Share{0}) == "5 %");
  CHECK(figure_beside(Share{0.0504}, {}) == "5 %");
  CHECK(figure_beside(Density::of_ppi(299.908), Density::of_ppi(300)) == "299.90 ppi");
  CHECK(figure_beside(Density::of_ppi(299.2), Density::of_ppi(300)) == "299 ppi");
  CHECK(figure_beside(Density::of_ppi(299.908), Density::of_ppi(200)) == "300 ppi");
}
