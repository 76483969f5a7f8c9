// Lengths are exact: every unit converts to ticks without rounding. Tests engine/units/length.h.
#include "engine/units/length.h"
#include "tests/support/catch.h"

#include <limits>

using namespace stoneproof;
using namespace stoneproof::literals;

static_assert(72_pt == 1_in);
static_assert(10_mm == 1_cm);
static_assert(254_mm == 10_in);
static_assert(127_cm == 50_in);
static_assert(25.4_mm == 1_in);
static_assert(8.5_in == 612_pt);
static_assert(0.125_in == 9_pt);
static_assert(3.175_mm == 9_pt);
static_assert(297_mm + 3_mm * 2 == 303_mm);
static_assert(-(3_mm) < 0_mm && 0_mm < 3_mm && 3_mm <= 3_mm);
static_assert(1_mm / 3 * 3 == 1_mm, "a third of a millimetre is a whole number of ticks");
static_assert(7_in / 300 * 300 == 7_in, "a pixel at 300 ppi is a whole number of ticks");
static_assert(210_mm / 1_mm == 210.0);

// The nearest tick, half away from zero.
static_assert(Length::nearest(0.49).ticks() == 0 && Length::nearest(0.5).ticks() == 1);
static_assert(Length::nearest(-0.49).ticks() == 0 && Length::nearest(-0.5).ticks() == -1);
static_assert(Length::of_ticks(3) / 2 == Length::of_ticks(2) &&
              Length::of_ticks(-3) / 2 == Length::of_ticks(-2));

TEST_CASE("every whole hundredth of a millimetre and thousandth of an inch and a point is exact") {
  for (int n = -3000; n <= 3000; ++n) {
    CAPTURE(n);
    REQUIRE(Length::of_mm(n / 100.0).ticks() == std::int64_t{n} * 3600);
    REQUIRE(Length::of_in(n / 1000.0).ticks() == std::int64_t{n} * 9144);
    REQUIRE(Length::of_pt(n / 1000.0).ticks() == std::int64_t{n} * 127);
  }
}

TEST_CASE("a length converts back to the number it was made from") {
  for (const double n : {0.0, 0.01, 1.0, 3.175, 210.0, 841.89}) {
    CAPTURE(n);
    CHECK(Length::of_mm(n).mm() == Approx(n).epsilon(1e-12));
    CHECK(Length::of_in(n).in() == Approx(n).epsilon(1e-12));
    CHECK(Length::of_pt(n).pt() == Approx(n).epsilon(1e-12));
  }
}

TEST_CASE("what cannot be a length becomes none, or the end of the scale, and sums of ends do not overflow") {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  constexpr std::int64_t end = 1'000'000'000'000'000;
  CHECK(Length::nearest(std::numeric_limits<double>::quiet_NaN()) == Length{});
  CHECK(Length::of_mm(1e308).ticks() == end);
  CHECK(Length::of_mm(-1e308).ticks() == -end);
  CHECK(Length::nearest(infinity).ticks() == end);
  CHECK(Length::nearest(-infinity).ticks() == -end);
  CHECK((Length::nearest(infinity) + Length::nearest(infinity)).ticks() == 2 * end);
  CHECK(Length::nearest(infinity) * 1e300 == Length::nearest(infinity));
}
