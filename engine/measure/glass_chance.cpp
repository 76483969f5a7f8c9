// Chances by counting covered pixels. Only way in: marks_of. Tested in
// tests/engine/measure/glass_dirt.test.cpp.
#include "engine/measure/glass_chance.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stoneproof {

namespace {

/// Squares of peaks painted on the reduced picture, with counts for the whole and for cells of 64 pixels.
class Coverage {
public:
  explicit Coverage(const GlassMap &map)
      : width_(map.width), height_(map.height), columns_((width_ + cell - 1) / cell),
        rows_((height_ + cell - 1) / cell), covered_(static_cast<std::size_t>(width_ * height_)),
        cells_(static_cast<std::size_t>(columns_ * rows_)) {}

  void paint(const GlassPeak &peak) {
    for (std::int64_t y = std::max(0, peak.y - 1); y <= std::min<std::int64_t>(peak.y + 1, height_ - 1); ++y)
      for (std::int64_t x = std::max(0, peak.x - 1); x <= std::min<std::int64_t>(peak.x + 1, width_ - 1);
           ++x) {
        if (covered_[static_cast<std::size_t>(y * width_ + x)]) continue;
        covered_[static_cast<std::size_t>(y * width_ + x)] = true;
        ++count_;
        ++cells_[static_cast<std::size_t>(y / cell * columns_ + x / cell)];
      }
  }

  double share() const { return static_cast<double>(count_) / static_cast<double>(width_ * height_); }

  /// How many times closer they stand in the 3 x 3 cells around a peak than in the whole.
  double closeness(const GlassPeak &peak) const {
    double sum = 0, pixels = 0;
    const std::int64_t row = peak.y / cell, column = peak.x / cell;
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

std::vector<GlassMark> marks_of(const GlassMap &map) {
  Coverage coverage(map);
  std::vector<double> surprises;
  surprises.reserve(map.peaks.size());
  for (const GlassPeak &peak : map.peaks) {
    coverage.paint(peak);
    surprises.push_back(-std::log(coverage.share()));
  }
  std::vector<GlassMark> marks;
  marks.reserve(map.peaks.size());
  for (std::size_t i = 0; i < map.peaks.size(); ++i) {
    const GlassPeak &peak = map.peaks[i];
    const double surprise = surprises[i] - std::log(std::max(1.0, coverage.closeness(peak)));
    const double code = std::clamp(surprise, 0.0, most_surprise) * surprise_unit;
    marks.push_back({peak.x, peak.y, static_cast<std::uint8_t>(code), peak.contrast});
  }
  std::sort(marks.begin(), marks.end(),
            [](const GlassMark &a, const GlassMark &b) { return std::pair(a.y, a.x) < std::pair(b.y, b.x); });
  return marks;
}

} // namespace stoneproof
