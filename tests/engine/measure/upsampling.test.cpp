// Enlargements made by known factors and kernels are found, and what was only blurred or is sharp is not
// accused.
#include "engine/measure/upsampling.h"

#include "tests/engine/measure/made_tiles.h"
#include "tests/support/catch.h"

#include <numbers>

using namespace stoneproof;

namespace {

Upsampling judged(const made::Gray &gray) { return upsampling(made::tiles_of(gray)); }

void check_firm(const Upsampling &found, double factor) {
  CHECK(found.certainty == Certainty::firm);
  REQUIRE(found.factor);
  CHECK(*found.factor == Approx(factor).epsilon(0.02));
}

} // namespace

TEST_CASE("an enlargement is found with the factor that made it, whatever the kernel") {
  const made::Gray small = made::discs(400, 400);
  const std::pair<made::Kernel, const char *> kernels[] = {
      {made::triangle, "triangle"}, {made::cubic, "cubic"}, {made::nearest, "nearest"}};
  for (const auto &[kernel, name] : kernels)
    for (const double factor : {1.75, 2.6}) {
      CAPTURE(name, factor);
      const Upsampling found = judged(made::enlarged(small, factor, kernel));
      check_firm(found, factor);
      CHECK(found.nearest == (kernel == made::nearest));
      CHECK(found.detail.across == Approx(1 / factor).epsilon(0.02));
      CHECK(found.detail.down == Approx(1 / factor).epsilon(0.02));
    }
}

TEST_CASE("sharp, grainy, soft and repetitive natives are not accused") {
  for (const unsigned seed : {1u, 2u}) {
    const made::Gray sharp = made::discs(900, 700, seed);
    CHECK(judged(sharp).certainty == Certainty::no);
    CHECK(judged(made::discs(900, 700, seed, 10)).certainty == Certainty::no);
    for (const double sigma : {1.0, 2.0})
      CHECK(judged(made::blurred(sharp, sigma)).certainty == Certainty::no);
  }
  const made::Gray fence = made::drawn(800, 800, [](int x, int y) {
    return 128 + 60 * std::sin(x * 2 * std::numbers::pi / 7.3) + 30 * std::sin((x + 2 * y) * 0.21);
  });
  CHECK(judged(fence).certainty != Certainty::firm);
}

TEST_CASE("a mirror and a quarter turn change nothing but the axes") {
  const made::Gray picture = made::enlarged(made::discs(420, 380), 2.2, made::cubic);
  const Upsampling plain = judged(picture), mirrored = judged(made::mirrored(picture)),
                   turned = judged(made::transposed(picture));
  check_firm(plain, 2.2);
  check_firm(mirrored, 2.2);
  check_firm(turned, 2.2);
  // Focus by one direction only.
  const made::Gray wide = made::widened(made::discs(400, 900, 5), 2, made::cubic);
  const DetailLimit across = judged(wide).detail, down = judged(made::transposed(wide)).detail;
  CHECK(across.across < 0.8 * across.down);
  CHECK(down.across == Approx(across.down));
  CHECK(down.down == Approx(across.across));
}

TEST_CASE("noise added to an enlargement weakens the trace and never invents another factor") {
  made::Gray picture = made::enlarged(made::discs(400, 400), 2, made::cubic);
  std::mt19937 random(7);
  double last = 1e9;
  for (const double sigma : {0.0, 2.0, 6.0, 18.0}) {
    std::normal_distribution<double> noise(0, std::max(sigma, 1e-9));
    made::Gray noisy = picture;
    if (sigma > 0)
      for (double &value : noisy.values) value += noise(random);
    const Upsampling found = judged(noisy);
    CHECK(found.strength < last * 1.05);
    last = found.strength;
    if (found.certainty == Certainty::firm) CHECK(*found.factor == Approx(2).epsilon(0.02));
  }
}

// check-values, analytic: a Gaussian's transfer function falls to 0.32 times the pixel's own where
// DetailLimit says.
TEST_CASE("the end of detail follows a known blur within its range") {
  for (const double sigma : {0.8, 1.0, 1.5, 2.0, 3.0}) {
    double low = 0.001, high = 0.5;
    for (int i = 0; i < 50; ++i) {
      const double v = (low + high) / 2, x = std::numbers::pi * v;
      (std::sin(x) / x * std::exp(-2 * x * x * sigma * sigma) > 0.32 ? low : high) = v;
    }
    const DetailLimit limit = judged(made::blurred(made::discs(700, 700, 4, 0), sigma)).detail;
    CAPTURE(sigma, limit.across, limit.down, low / 0.5);
    CHECK(limit.known);
    for (const double told : {limit.across, limit.down}) {
      CHECK(low / 0.5 >= told * DetailLimit::least);
      CHECK(low / 0.5 <= told * DetailLimit::most);
    }
  }
}

TEST_CASE("what holds too little to look at cannot tell") {
  CHECK(judged(made::drawn(600, 600, [](int, int) { return 200.0; })).certainty == Certainty::cannot_tell);
  CHECK(judged(made::discs(120, 600)).certainty == Certainty::cannot_tell);
  const made::Gray sky = made::drawn(
      600, 600, [](int x, int y) { return 180 + 0.02 * x + 2 * std::sin(y * 0.9) * std::sin(x * 0.7); });
  CHECK_FALSE(judged(sky).detail.known);
}
