// Chances by counting covered pixels. Only way in: placed_marks. Tested in
// tests/engine/measure/glass_dirt.test.cpp.
#include "engine/measure/glass_chance.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stoneproof {

namespace {

/// Squares of marks painted on the reduced picture, with counts for the whole and for cells of 64 pixels.
class Coverage {
public:
  explicit Coverage(const GlassMap &map)
      : width_(map.width), height_(map.height), columns_((width_ + cell - 1) / cell),
        rows_((height_ + cell - 1) / cell), covered_(static_cast<std::size_t>(width_ * height_)),
        cells_(static_cast<std::size_t>(columns_ * rows_)) {}

  void paint(const PlacedMark &mark, int reach) {
    const std::int64_t left = std::max<std::int64_t>(mark.x - reach, 0),
                       right = std::min<std::int64_t>(mark.x + reach, width_ - 1),
                       top = std::max<std::int64_t>(mark.y - reach, 0),
                       bottom = std::min<std::int64_t>(mark.y + reach, height_ - 1);
    for (std::int64_t y = top; y <= bottom; ++y)
      for (std::int64_t x = left; x <= right; ++x) {
        if (covered_[static_cast<std::size_t>(y * width_ + x)]) continue;
        covered_[static_cast<std::size_t>(y * width_ + x)] = true;
        ++count_;
        ++cells_[static_cast<std::size_t>(y / cell * columns_ + x / cell)];
      }
  }

  double share() const { return static_cast<double>(count_) / static_cast<double>(width_ * height_); }

  /// How many times closer they stand in the 3 x 3 cells around a mark than in the whole.
  double closeness(const PlacedMark &mark) const {
    double sum = 0, pixels = 0;
    const std::int64_t row = mark.y / cell, column = mark.x / cell;
    for (std::int64_t y = std::max<std::int64_t>(0, row - 1); y <= std::min(row + 1, rows_ - 1); ++y)
      for (std::int64_t x = std::max<std::int64_t>(0, column - 1); x <= std::min(column + 1, columns_ - 1);
           ++x) {
        sum += cells_[static_cast<std::size_t>(y * columns_ + x)];
        pixels += static_cast<double>(std::min(cell, width_ - x * cell) * std::min(cell, height_ - y * cell));
      }
    return sum / pixels / share();
  }

private:
  static constexpr std::int64_t cell = 64;
  std::int64_t width_, height_, columns_, rows_, count_ = 0;
  std::vector<bool> covered_;
  std::vector<int> cells_;
};

} // namespace

std::vector<PlacedMark> placed_marks(const GlassMap &map, int reach) {
  std::vector<PlacedMark> marks;
  std::array<std::vector<std::size_t>, 256> by_strength;
  std::int64_t at = 0;
  for (const GlassMark &mark : map.marks) {
    at += mark.skip;
    if (mark.strength == 0) continue;
    by_strength[mark.strength].push_back(marks.size());
    marks.push_back({static_cast<std::int16_t>(at % map.width), static_cast<std::int16_t>(at / map.width), 0,
                     mark.contrast});
  }
  Coverage coverage(map);
  for (std::size_t strength = by_strength.size(); strength-- > 1;) {
    for (const std::size_t i : by_strength[strength]) coverage.paint(marks[i], reach);
    if (by_strength[strength].empty()) continue;
    const double surprise = -std::log(coverage.share());
    for (const std::size_t i : by_strength[strength]) {
      const double here = surprise - std::log(std::max(1.0, coverage.closeness(marks[i])));
      marks[i].surprise = static_cast<std::uint8_t>(std::clamp(here, 0.0, most_surprise) * surprise_unit);
    }
  }
  return marks;
}

} // namespace stoneproof
