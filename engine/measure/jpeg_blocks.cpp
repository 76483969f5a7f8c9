// What JPEG's blocks are made of. The only ways in are those of jpeg_blocks.h; tested through
// tests/engine/measure/jpeg_past.test.cpp.
#include "engine/measure/jpeg_blocks.h"

#include "engine/measure/jpeg_quality.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <numbers>

namespace stoneproof {

namespace {

/// S of jpeg_quality.h (100 x mean of step / Annex K's step). A step that was not found takes the mean of the
/// found ones on the nearest diagonal, as a share of Annex K's, raised by (Annex K's / the mean of Annex K's
/// there)^growth.
double scale_of(std::span<const FoundStep> steps, double growth) {
  constexpr std::size_t diagonals = 2 * jpeg_block - 1;
  const QuantTable standard = standard_luma(50);
  QuantTable found{};
  std::array<double, diagonals> sums{}, standards{}, counts{};
  for (const FoundStep &step : steps) {
    const auto diagonal = static_cast<std::size_t>(step.mode.down + step.mode.across);
    found[step.mode.at()] = static_cast<std::uint16_t>(step.step);
    sums[diagonal] += step.step, standards[diagonal] += standard[step.mode.at()], ++counts[diagonal];
  }
  const auto nearest_found = [&](std::size_t diagonal) {
    for (std::size_t off = 0;; ++off)
      for (const std::size_t other :
           {diagonal - std::min(diagonal, off), std::min(diagonal + off, diagonals - 1)})
        if (counts[other] > 0) return other;
  };
  double sum = 0;
  for (std::size_t i = 0; i < standard.size(); ++i) {
    const double own = standard[i];
    if (found[i] > 0) {
      sum += found[i] / own;
      continue;
    }
    const std::size_t near = nearest_found(i / jpeg_block + i % jpeg_block);
    const double step = sums[near] / counts[near], standard_there = standards[near] / counts[near];
    sum += step * std::pow(own / standard_there, growth) / own;
  }
  return 100 * sum / static_cast<double>(standard.size());
}

int quality_of(double scale) {
  const double quality = scale <= 100 ? (200 - scale) / 2 : 5000 / scale;
  return std::clamp(static_cast<int>(std::lround(quality)), 1, 100);
}

} // namespace

const BlockCosines &block_cosines() {
  static const BlockCosines table = [] {
    BlockCosines values{};
    for (std::size_t u = 0; u < jpeg_block; ++u)
      for (std::size_t x = 0; x < jpeg_block; ++x)
        values[u][x] = static_cast<float>(
            (u == 0 ? std::sqrt(1.0 / 8) : 0.5) *
            std::cos((2 * static_cast<double>(x) + 1) * static_cast<double>(u) * std::numbers::pi / 16));
    return values;
  }();
  return table;
}

std::span<const BlockMode> block_modes() {
  static const std::array<BlockMode, 35> all = [] {
    std::array<BlockMode, 35> list;
    std::size_t i = 0;
    for (int diagonal = 1; diagonal < jpeg_block; ++diagonal)
      for (int down = 0; down <= diagonal; ++down) list[i++] = {down, diagonal - down};
    return list;
  }();
  return all;
}

ClippedColumns::ClippedColumns(const Tile &tile, int top, int rows)
    : clipped_(static_cast<std::size_t>(tile.side)) {
  for (int y = top; y < top + rows; ++y) {
    const std::uint8_t *row = tile.luma.data() + static_cast<std::ptrdiff_t>(y) * tile.side;
    for (std::size_t x = 0; x < clipped_.size(); ++x)
      clipped_[x] = static_cast<std::uint8_t>(clipped_[x] | (row[x] <= 1) | (row[x] >= 254));
  }
}

bool ClippedColumns::any(int left, int columns) const {
  return std::memchr(clipped_.data() + left, 1, static_cast<std::size_t>(columns)) != nullptr;
}

EarlierQuality nearest_quality(std::span<const FoundStep> steps) {
  if (steps.empty()) return {};
  return {quality_of(scale_of(steps, 0.5)), quality_of(scale_of(steps, 1)) - 2,
          quality_of(scale_of(steps, 0)) + 2, false};
}

} // namespace stoneproof
