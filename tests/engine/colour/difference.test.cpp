// What holds for CIEDE2000 whatever the colours; its published pairs are in tests/outside/colour.test.cpp.
#include "engine/colour/difference.h"

#include "tests/support/catch.h"

#include <random>

using namespace stoneproof;

TEST_CASE("equal colours do not differ, and the order does not count") {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> lightness(0, 100), colour(-120, 120);
  for (int i = 0; i < 2000; ++i) {
    const Lab one = {lightness(random), colour(random), colour(random)};
    const Lab other = {lightness(random), colour(random), colour(random)};
    CHECK(ciede2000(one, one) == 0);
    CHECK(ciede2000(one, other) == Approx(ciede2000(other, one)).margin(1e-9));
    CHECK(ciede2000(one, other) > 0);
  }
}

TEST_CASE("grays differ by lightness alone") {
  // By hand: the mean L* is 50, so that SL is 1; at 90 and 100 it is 95: 1 + 0.015 x 2025 / sqrt(2045)
  // = 1.671692.
  CHECK(ciede2000({45, 0, 0}, {55, 0, 0}) == Approx(10));
  CHECK(ciede2000({90, 0, 0}, {100, 0, 0}) == Approx(10 / 1.671692));
}
