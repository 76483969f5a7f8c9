// Enlargements made by known factors and kernels are found, and what was only blurred or is sharp is not
// accused.
#include "engine/measure/upsampling.h"

#include "engine/measure/upsampling_lines.h"
#include "engine/measure/upsampling_rows.h"

#include "tests/engine/measure/made_tiles.h"
#include "tests/support/catch.h"

#include <array>
#include <numbers>

using namespace stoneproof;

namespace {

Upsampling judged(const made::Gray &gray) { return upsampling(made::tiles_of(gray)); }

void check_firm(const Upsampling &found, double factor) {
  CHECK(found.certainty == Certainty::firm);
  REQUIRE(found.factor);
  CHECK(*found.factor == Approx(factor).epsilon(0.02));
}

/// What a JPEG does: every block of 8 x 8 is transformed (DCT-II) and rounded to steps that grow with
/// frequency.
made::Gray in_blocks(made::Gray gray, double step) {
  std::array<std::array<double, 8>, 8> wave{};
  for (std::size_t k = 0; k < 8; ++k)
    for (std::size_t x = 0; x < 8; ++x)
      wave[k][x] = (k == 0 ? std::sqrt(0.125) : 0.5) *
                   std::cos(static_cast<double>((2 * x + 1) * k) * std::numbers::pi / 16);
  using Block = std::array<std::array<double, 8>, 8>;
  const auto turned = [&](const Block &block, bool forth) { // along one side, transposed
    Block to{};
    for (std::size_t i = 0; i < 8; ++i)
      for (std::size_t k = 0; k < 8; ++k)
        for (std::size_t x = 0; x < 8; ++x) to[k][i] += (forth ? wave[k][x] : wave[x][k]) * block[i][x];
    return to;
  };
  const auto width = static_cast<std::size_t>(gray.width), height = static_cast<std::size_t>(gray.height);
  for (std::size_t top = 0; top + 8 <= height; top += 8)
    for (std::size_t left = 0; left + 8 <= width; left += 8) {
      Block block{};
      for (std::size_t y = 0; y < 8; ++y)
        for (std::size_t x = 0; x < 8; ++x) block[y][x] = gray.values[(top + y) * width + left + x];
      block = turned(turned(block, true), true);
      for (std::size_t v = 0; v < 8; ++v)
        for (std::size_t u = 0; u < 8; ++u) {
          const double by = step * (1 + static_cast<double>(u + v) / 2);
          block[v][u] = std::round(block[v][u] / by) * by;
        }
      block = turned(turned(block, false), false);
      for (std::size_t y = 0; y < 8; ++y)
        for (std::size_t x = 0; x < 8; ++x) gray.values[(top + y) * width + left + x] = block[y][x];
    }
  return gray;
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

TEST_CASE("sharp, grainy, soft and repetitive natives are not accused", "[figures]") {
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

TEST_CASE("factors at eighths, where blocks leave lines too, are told from blocks", "[figures]") {
  for (const double sigma : {1.0, 3.0})
    for (const double step : {2.0, 6.0}) {
      CAPTURE(sigma, step);
      const Upsampling found = judged(in_blocks(made::blurred(made::discs(900, 700), sigma), step));
      CHECK(found.certainty == Certainty::no);
    }
  for (const double factor : {1.6, 2.0, 4.0}) {
    CAPTURE(factor);
    const made::Gray picture = made::enlarged(made::discs(400, 400), factor, made::cubic);
    check_firm(judged(picture), factor);
    check_firm(judged(in_blocks(picture, 2)), factor);
  }
}

TEST_CASE("blocks of a JPEG that was enlarged do not pass for the enlargement") {
  for (const double factor : {1.7, 2.3}) {
    CAPTURE(factor);
    const made::Gray small = in_blocks(made::discs(500, 500), 3);
    check_firm(judged(made::enlarged(small, factor, made::cubic)), factor);
  }
}

TEST_CASE("blocks of a JPEG that was reduced do not pass for an enlargement") {
  const made::Gray packed = in_blocks(made::blurred(made::discs(1100, 900, 1, 0), 2), 24);
  for (const double share : {0.9, 0.8, 0.72, 0.55}) {
    CAPTURE(share);
    CHECK(judged(made::reduced(packed, share)).certainty == Certainty::hint);
  }
}

TEST_CASE("lines of reduced blocks are told from those of enlarged ones and of repeated pixels") {
  struct Case {
    const char *what;
    double alpha;
    std::vector<TracePeak> beside;
    bool reduced;
  };
  const Case cases[] = {
      {"nothing beside it", 0.625, {}, false},
      {"blocks of 6.4 pixels, the third and fifth beside the fourth",
       0.625,
       {{1, 0.469}, {1.5, 0.781}},
       true},
      {"the same, seen mirrored", 0.6875, {{1, 0.781}}, true},
      {"too weak", 0.625, {{0.4, 0.469}}, false},
      {"blocks of 16 pixels, enlarged twice", 0.5, {{1, 0.4375}, {1, 0.3125}, {1, 0.5625}}, false},
      {"repeated 2.2 times", 0.4545, {{1.5, 0.909 - 0.182}, {1.5, 0.6365}}, false},
      {"straight interpolation", 0.3333, {{1.5, 0.6667}}, false},
      {"saved as a JPEG since", 0.5714, {{1, 0.375}, {1, 0.625}}, false},
  };
  for (const Case &row : cases) {
    CAPTURE(row.what);
    std::vector<TracePeak> peaks = row.beside;
    peaks.push_back({2, row.alpha});
    CHECK(of_reduced_blocks(peaks, row.alpha) == row.reduced);
  }
}

TEST_CASE("a line that no enlargement explains speaks of a pattern") {
  CHECK_FALSE(of_a_pattern({{2, 0.4483}}, 0.4483));
  CHECK(of_a_pattern({{2, 0.4483}, {1.5, 0.2586}}, 0.4483));
  CHECK_FALSE(of_a_pattern({{2, 0.4483}, {1, 0.2586}}, 0.4483));
  // Its second multiple, mirrored at one; one of its blocks; an eighth, and the trace against an eighth.
  for (const double explained : {0.8966, 0.1034, 3 * 0.4483 / 8, 0.375, 0.4483 + 0.25})
    CHECK_FALSE(of_a_pattern({{2, 0.4483}, {1.5, explained}}, 0.4483));
}

TEST_CASE("drawn boards are not accused: their rows are one row") {
  for (const double wide : {8.7, 11.2, 14.5}) {
    CAPTURE(wide);
    std::mt19937 random(3);
    std::uniform_real_distribution<double> shade(90, 165);
    std::vector<double> shades;
    for (int i = 0; i < 200; ++i) shades.push_back(shade(random));
    const auto board = [&](double x) { return shades[static_cast<std::size_t>(x / wide)]; };
    const made::Gray boards = made::drawn(1000, 800, [&](int x, int y) {
      double sum = 0;
      for (int part = 0; part < 8; ++part) sum += board(x + (part + 0.5) / 8);
      return sum / 8 * (1 - 2e-7 * ((x - 500) * (x - 500) + (y - 400) * (y - 400)));
    });
    CHECK(judged(boards).certainty != Certainty::firm);
    CHECK(judged(made::transposed(boards)).certainty != Certainty::firm);
    CHECK(different_rows(made::tiles_of(boards), 0.4) < 1.5);
  }
  CHECK(different_rows(made::tiles_of(made::discs(600, 600)), 0.4) > 4);
  CHECK(different_rows({}, 0.4) == 0);
}

TEST_CASE("what is nearly flat shows an enlargement, and is not cleared without one") {
  const auto faint = [](made::Gray gray) {
    for (double &value : gray.values) value = 128 + (value - 128) / 20;
    return gray;
  };
  const made::Gray sharp = made::discs(500, 500, 1, 0);
  check_firm(judged(faint(made::enlarged(sharp, 2.2, made::cubic))), 2.2);
  CHECK(judged(faint(made::blurred(made::discs(900, 700, 1, 0), 2))).certainty == Certainty::cannot_tell);
}

TEST_CASE("repeated pixels keep their factor under noise", "[figures]") {
  for (const double factor : {1.6, 1.75, 1.9, 2.3, 3.7}) {
    made::Gray picture = made::enlarged(made::discs(500, 500), factor, made::nearest);
    std::mt19937 random(11);
    std::normal_distribution<double> noise(0, 3);
    for (double &value : picture.values) value += noise(random);
    CAPTURE(factor);
    const Upsampling found = judged(picture);
    check_firm(found, factor);
    CHECK(found.nearest);
  }
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
