// Specks stay, flat grounds, ramps and edges go.
#include "engine/measure/speck_filter.h"

#include "tests/support/catch.h"

#include <algorithm>
#include <cstdlib>
#include <functional>
#include <random>

using namespace stoneproof;

namespace {

constexpr int width = 60, rows = 50, reach = SpeckFilter::reach;
constexpr int inner = width - 2 * reach;

std::vector<std::int16_t> filtered(const std::function<int(int x, int y)> &level) {
  std::vector<std::uint8_t> padded;
  for (int y = 0; y < rows; ++y)
    for (int x = 0; x < width; ++x) padded.push_back(static_cast<std::uint8_t>(level(x, y)));
  SpeckFilter filter;
  return filter.apply(padded, width, rows);
}

int at(const std::vector<std::int16_t> &result, int x, int y) {
  return result[static_cast<std::size_t>((y - reach) * inner + x - reach)];
}

} // namespace

TEST_CASE("flat grounds, ramps and straight edges leave nothing") {
  for (const auto &level : std::vector<std::function<int(int, int)>>{
           [](int, int) { return 90; }, [](int x, int y) { return 2 * x + y; },
           [](int x, int) { return x < 30 ? 40 : 200; }, [](int, int y) { return y < 21 ? 200 : 10; }}) {
    const auto result = filtered(level);
    REQUIRE(result.size() == static_cast<std::size_t>(inner * (rows - 2 * reach)));
    CHECK(std::all_of(result.begin(), result.end(), [](std::int16_t r) { return r == 0; }));
  }
}

TEST_CASE("a single pixel is spread by 1-2-1 along both axes") {
  const auto result = filtered([](int x, int y) { return x == 25 && y == 20 ? 140 : 100; });
  CHECK(at(result, 25, 20) == 40 * 4);
  CHECK(at(result, 24, 20) == 40 * 2);
  CHECK(at(result, 26, 21) == 40);
  CHECK(at(result, 27, 20) == 0);
}

TEST_CASE("the middle of a speck and a thin line keep their whole height, lighter or darker") {
  for (const int step : {-30, 50}) {
    const auto speck =
        filtered([&](int x, int y) { return 100 + (std::abs(x - 25) < 3 && std::abs(y - 20) < 3) * step; });
    CHECK(at(speck, 25, 20) == step * SpeckFilter::unit);
    const auto hair = filtered([&](int x, int) { return 100 + (std::abs(x - 25) < 2) * step; });
    CHECK(at(hair, 25, 30) == step * SpeckFilter::unit);
  }
}

TEST_CASE("the surroundings are the median of medians") {
  std::mt19937 random(5);
  std::vector<int> levels(width * rows);
  for (int &level : levels) level = static_cast<int>(random() % 256);
  const auto result = filtered([&](int x, int y) { return levels[static_cast<std::size_t>(y * width + x)]; });
  constexpr int half = SpeckFilter::window / 2;
  const auto median = [](std::vector<int> values) {
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
  };
  const auto raw = [&](int x, int y) {
    std::vector<int> medians;
    for (int v = y - half; v <= y + half; ++v) {
      const auto first = levels.begin() + v * width + x - half;
      medians.push_back(median({first, first + SpeckFilter::window}));
    }
    return levels[static_cast<std::size_t>(y * width + x)] - median(medians);
  };
  for (int y = reach; y < rows - reach; y += 5)
    for (int x = reach; x < width - reach; x += 3) {
      int blurred = 0;
      for (int v = -1; v <= 1; ++v)
        for (int u = -1; u <= 1; ++u) blurred += raw(x + u, y + v) * (2 - std::abs(u)) * (2 - std::abs(v));
      CHECK(at(result, x, y) == blurred);
    }
}
