// Telling screens. The only way in is screen_likeness; tested in
// tests/engine/measure/screen_likeness.test.cpp, scored by tests/bench/detail/history.cpp.
#include "engine/measure/screen_likeness.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <functional>
#include <numeric>

namespace stoneproof {

namespace {

struct Tally {
  std::int64_t pixels = 0, equal = 0;
  std::array<std::int64_t, 256> levels{}, right_steps{}, down_steps{}; ///< steps to neighbours
};

void add(Tally &tally, const Tile &tile) {
  const auto side = static_cast<std::size_t>(tile.side);
  for (std::size_t y = 0; y + 1 < side; ++y) {
    const std::uint8_t *here = tile.luma.data() + y * side, *below = here + side;
    for (std::size_t x = 0; x + 1 < side; ++x) {
      const auto right_step = static_cast<std::size_t>(std::abs(here[x] - here[x + 1]));
      const auto down_step = static_cast<std::size_t>(std::abs(here[x] - below[x]));
      ++tally.levels[here[x]];
      ++tally.right_steps[right_step];
      ++tally.down_steps[down_step];
      tally.equal += right_step == 0 && down_step == 0;
    }
    tally.pixels += tile.side - 1;
  }
}

/// Of those that are not nought.
int ninth_tenth(const Tally &tally) {
  std::array<std::int64_t, 256> steps{};
  for (std::size_t step = 1; step < steps.size(); ++step)
    steps[step] = tally.right_steps[step] + tally.down_steps[step];
  const std::int64_t all = std::accumulate(steps.begin(), steps.end(), std::int64_t{0});
  std::int64_t sum = 0;
  for (std::size_t step = 1; step < steps.size(); ++step)
    if ((sum += steps[step]) * 10 >= all * 9) return static_cast<int>(step);
  return 0;
}

} // namespace

ScreenLikeness screen_likeness(const std::vector<Tile> &tiles) {
  if (tiles.empty()) return {};
  Tally tally;
  for (const Tile &tile : tiles) add(tally, tile);
  ScreenLikeness result;
  const auto pixels = static_cast<double>(tally.pixels);
  result.equal = static_cast<double>(tally.equal) / pixels;
  if (tally.equal < tally.pixels) result.step = ninth_tenth(tally);
  constexpr int few = 8;
  std::partial_sort(tally.levels.begin(), tally.levels.begin() + few, tally.levels.end(), std::greater<>());
  result.few_levels = static_cast<double>(std::accumulate(tally.levels.begin(), tally.levels.begin() + few,
                                                          std::int64_t{0})) /
                      pixels;

  constexpr int large_step = 48; // photographs reach 34 where a third is equal
  const auto beyond = [&](double equal, double levels) {
    return result.equal >= equal && result.few_levels >= levels && result.step >= large_step;
  };
  result.certainty = beyond(0.6, 0.75)    ? Certainty::firm
                     : beyond(0.33, 0.48) ? Certainty::hint
                                          : Certainty::no;
  return result;
}

} // namespace stoneproof
