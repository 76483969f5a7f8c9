// Residuals, normalised and thinned. Only ways in: glass_factor, GlassMeter. Tested in
// tests/engine/measure/glass_meter.test.cpp; rates in tests/bench/detail.
#include "engine/measure/glass_meter.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <utility>

namespace stoneproof {

namespace {

constexpr std::int64_t most_pixels = 3'000'000, most_side = 65'535;
constexpr std::int64_t band_rows = 128, block = 16;
constexpr int reach = SpeckFilter::reach;
/// Peaks kept: one in so many reduced pixels, and never more than `most_peaks`.
constexpr std::int64_t pixels_a_peak = 100;
constexpr std::size_t most_peaks = 20'000;
/// A residual counts against the mean around it plus this much, in levels; and as at most so many levels.
constexpr double least_activity = 0.6, most_residual = 40;
/// Where the scan ends there is a shadow or a cut: so many reduced pixels along each edge are left out.
constexpr std::int64_t margin = 6;

} // namespace

int glass_factor(PixelSize stored) {
  int factor = 1;
  while ((stored.width / factor) * (stored.height / factor) > most_pixels ||
         std::max(stored.width, stored.height) / factor > most_side)
    ++factor;
  return factor;
}

GlassMeter::GlassMeter(const RowLayout &layout)
    : stored_(layout.stored), factor_(glass_factor(layout.stored)), reduced_(layout, factor_),
      width_(reduced_.width()), height_(reduced_.height()), stride_(width_ + 2 * reach),
      columns_((width_ + block - 1) / block), any_(std::min(width_, height_) >= least_side),
      most_(std::min(most_peaks, static_cast<std::size_t>(width_ * height_ / pixels_a_peak))), cut_(1) {
  if (!any_) return;
  band_.reserve(static_cast<std::size_t>((band_rows + 2 * reach) * stride_));
  streaks_.emplace(width_, height_);
}

void GlassMeter::add(const std::uint8_t *row) {
  if (!any_ || !reduced_.add(row)) return;
  add_reduced(reduced_.row());
}

void GlassMeter::add_reduced(const std::uint8_t *row) {
  const int copies = band_.empty() ? reach + 1 : 1; // the first row stands for those above it
  for (int i = 0; i < copies; ++i) {
    band_.insert(band_.end(), reach, row[0]);
    band_.insert(band_.end(), row, row + width_);
    band_.insert(band_.end(), reach, row[width_ - 1]);
  }
  if (band_.size() == static_cast<std::size_t>((band_rows + 2 * reach) * stride_)) filter_band();
}

void GlassMeter::filter_band() {
  const auto rows = static_cast<std::int64_t>(band_.size()) / stride_, fresh = rows - 2 * reach;
  const auto row_at = [&](std::int64_t i) { return band_.data() + i * stride_ + reach; };
  for (std::int64_t i = reach; i < reach + fresh; ++i) {
    const std::uint8_t *const near[] = {row_at(i - 3), row_at(i - 2), row_at(i + 2), row_at(i + 3)};
    streaks_->add(band_y_ + i - reach, row_at(i), near);
  }
  const auto &residual = filter_.apply(band_, static_cast<int>(stride_), static_cast<int>(rows));
  residual_.insert(residual_.end(), residual.begin(), residual.end());
  band_.erase(band_.begin(), band_.begin() + fresh * stride_);
  band_y_ += fresh;

  measure_activity();
  const auto whole = static_cast<std::int64_t>(activity_.size()) / columns_;
  judge_blocks(whole * block >= height_ ? whole : whole - 1);
}

/// Of the blocks that are whole now, and of those at the picture's end.
void GlassMeter::measure_activity() {
  constexpr int most = static_cast<int>(most_residual * SpeckFilter::unit);
  while (true) {
    const auto begin = static_cast<std::int64_t>(activity_.size()) / columns_ * block;
    const std::int64_t end = std::min(begin + block, height_);
    if (begin >= height_ || end > band_y_) return;
    for (std::int64_t left = 0; left < width_; left += block) {
      const std::int64_t right = std::min(left + block, width_);
      int sum = 0;
      for (std::int64_t y = begin; y < end; ++y) {
        const std::int16_t *row = residual_.data() + (y - residual_y_) * width_;
        for (std::int64_t x = left; x < right; ++x) sum += std::min(std::abs(int{row[x]}), most);
      }
      activity_.push_back(static_cast<float>(sum) / static_cast<float>((end - begin) * (right - left)));
    }
  }
}

/// All rows of blocks before this one; their lower neighbours are known.
void GlassMeter::judge_blocks(std::int64_t rows_of_blocks) {
  std::int64_t y = residual_y_;
  for (; y / block < rows_of_blocks && y < height_; y += block)
    judge_row_of_blocks(y / block, residual_.data() + (y - residual_y_) * width_);
  y = std::min(y, height_);
  residual_.erase(residual_.begin(), residual_.begin() + (y - residual_y_) * width_);
  residual_y_ = y;
}

double GlassMeter::activity_around(std::int64_t column, std::int64_t row) const {
  double sum = 0;
  int count = 0;
  const auto rows = static_cast<std::int64_t>(activity_.size()) / columns_;
  for (std::int64_t y = std::max<std::int64_t>(0, row - 1); y <= std::min(row + 1, rows - 1); ++y)
    for (std::int64_t x = std::max<std::int64_t>(0, column - 1); x <= std::min(column + 1, columns_ - 1);
         ++x) {
      sum += static_cast<double>(activity_[static_cast<std::size_t>(y * columns_ + x)]);
      ++count;
    }
  return 1.25 * sum / count + least_activity * SpeckFilter::unit;
}

// One candidate at most of 2 x 2 pixels: a speck that is flat on top gives several, wherever noise lifts it.
void GlassMeter::judge_row_of_blocks(std::int64_t block_row, const std::int16_t *residual) {
  const std::int64_t top = block_row * block, end = std::min(top + block, height_ - margin);
  for (std::int64_t column = 0; column < columns_; ++column) {
    const auto around = static_cast<float>(activity_around(column, block_row));
    const std::int64_t right = std::min((column + 1) * block, width_ - margin);
    for (std::int64_t y = std::max(top, margin); y + 1 < end; y += 2) {
      const auto least = static_cast<int>(cut_ * around);
      const std::int16_t *rows[] = {residual + (y - top) * width_, residual + (y + 1 - top) * width_};
      for (std::int64_t x = std::max(column * block, margin); x + 1 < right; x += 2) {
        const int a = std::abs(int{rows[0][x]}), b = std::abs(int{rows[0][x + 1]}),
                  c = std::abs(int{rows[1][x]}), d = std::abs(int{rows[1][x + 1]});
        const int most = std::max(std::max(a, b), std::max(c, d));
        if (most <= least) continue;
        const bool lower = most > std::max(a, b);
        const bool later = lower ? d > c : b > a;
        const GlassPeak peak{static_cast<std::uint16_t>(x + later), static_cast<std::uint16_t>(y + lower),
                             rows[lower][x + later]};
        candidates_.push_back({peak, static_cast<float>(most) / around});
      }
    }
  }
  if (candidates_.size() > 2 * most_) keep_strongest();
}

void GlassMeter::keep_strongest() {
  if (candidates_.size() <= most_) return;
  const auto weakest = candidates_.begin() + static_cast<std::ptrdiff_t>(most_ - 1);
  std::nth_element(candidates_.begin(), weakest, candidates_.end(),
                   [](const Candidate &a, const Candidate &b) { return a.strength > b.strength; });
  cut_ = weakest->strength;
  candidates_.resize(most_);
}

GlassMap GlassMeter::take() {
  GlassMap map{stored_, factor_, 0, 0, {}, {}, {}};
  if (!any_ || band_.empty()) return map;
  const std::vector<std::uint8_t> last(band_.end() - stride_, band_.end());
  for (int i = 0; i < reach; ++i) band_.insert(band_.end(), last.begin(), last.end());
  filter_band();
  keep_strongest();
  std::sort(candidates_.begin(), candidates_.end(), [](const Candidate &a, const Candidate &b) {
    if (a.strength != b.strength) return a.strength > b.strength;
    return std::pair(a.peak.y, a.peak.x) < std::pair(b.peak.y, b.peak.x);
  });
  map.width = width_, map.height = height_;
  map.peaks.reserve(candidates_.size());
  for (const Candidate &candidate : candidates_) map.peaks.push_back(candidate.peak);
  map.columns = streaks_->take_columns();
  map.rows = streaks_->take_rows();
  return map;
}

} // namespace stoneproof
