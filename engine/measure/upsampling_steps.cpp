// Steps between columns. The only way in is ColumnSteps; tested in tests/engine/measure/upsampling.test.cpp.
#include "engine/measure/upsampling_steps.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

namespace stoneproof {

namespace {

std::vector<double> relative_steps(const Tile &tile) {
  constexpr int near = 12;
  constexpr int flat = 2; // one in so many rows steps by a level
  const int count = tile.side - 1;
  std::vector<int> steps(static_cast<std::size_t>(count));
  for (int y = 0; y < tile.side; ++y) {
    const std::uint8_t *row = tile.luma.data() + static_cast<std::ptrdiff_t>(y) * tile.side;
    for (int x = 0; x < count; ++x) steps[static_cast<std::size_t>(x)] += std::abs(row[x + 1] - row[x]);
  }
  std::vector<double> shares;
  for (int x = 0; x < count; ++x) {
    const auto begin = steps.begin() + std::max(0, x - near),
               end = steps.begin() + std::min(count, x + near + 1);
    const int top = *std::max_element(begin, end);
    shares.push_back(flat * top > tile.side ? static_cast<double>(steps[static_cast<std::size_t>(x)]) / top
                                            : -1);
  }
  return shares;
}

/// Where in its repetition, of 0 to 1, a column lies.
double phase_of(std::size_t x, double factor) {
  const double repetition = static_cast<double>(x) / factor;
  return repetition - std::floor(repetition);
}

/// The phase from which on, for 1/factor, columns step most.
double best_phase(const std::vector<double> &steps, double factor) {
  constexpr std::size_t bins = 48;
  std::array<double, 2 * bins> by_phase{};
  for (std::size_t x = 0; x < steps.size(); ++x)
    if (steps[x] >= 0) {
      const auto bin = std::min(bins - 1, static_cast<std::size_t>(phase_of(x, factor) * bins));
      by_phase[bin] += steps[x], by_phase[bin + bins] += steps[x];
    }
  const auto wide = static_cast<std::size_t>(std::lround(bins / factor));
  std::size_t best = 0;
  double most = -1;
  for (std::size_t begin = 0; begin < bins; ++begin) {
    double sum = 0;
    for (std::size_t i = begin; i < begin + wide; ++i) sum += by_phase[i];
    if (sum > most) most = sum, best = begin;
  }
  return static_cast<double>(best) / bins;
}

} // namespace

ColumnSteps::ColumnSteps(const std::vector<Tile> &tiles) {
  for (const Tile &tile : tiles) by_tile_.push_back(relative_steps(tile));
}

double ColumnSteps::likeness(double factor) const {
  double count = 0, stepping = 0, sum = 0, squares = 0, sum_stepping = 0;
  for (const std::vector<double> &steps : by_tile_) {
    const double begin = best_phase(steps, factor);
    for (std::size_t x = 0; x < steps.size(); ++x) {
      if (steps[x] < 0) continue;
      const double after = phase_of(x, factor) - begin;
      ++count, sum += steps[x], squares += steps[x] * steps[x];
      if (after - std::floor(after) < 1 / factor) ++stepping, sum_stepping += steps[x];
    }
  }
  const double spread = (squares - sum * sum / count) * (stepping - stepping * stepping / count);
  constexpr double enough = 100; // columns, our own choice
  return count >= enough && spread > 0 ? (sum_stepping - sum * stepping / count) / std::sqrt(spread) : 0;
}

} // namespace stoneproof
