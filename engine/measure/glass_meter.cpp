// Residuals, normalised and thinned. Only ways in: glass_factor, GlassMeter. Tested in
// tests/engine/measure/glass_meter.test.cpp; rates in tests/bench/detail.
#include "engine/measure/glass_meter.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

namespace stoneproof {

namespace {

constexpr std::int64_t most_pixels = 3'000'000, most_side = 32'767;
constexpr std::int64_t band_rows = 64, block = 16;
constexpr int reach = SpeckFilter::reach;
/// One pixel of so many is kept.
constexpr std::int64_t pixels_a_mark = 20;
/// The least strength is a residual of so many times the activity around it; the strength doubles in so many
/// steps.
constexpr float least_ratio = 1.5f, steps = 16;
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
      most_(static_cast<std::size_t>(width_ * height_ / pixels_a_mark)) {
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

void GlassMeter::judge_row_of_blocks(std::int64_t block_row, const std::int16_t *residual) {
  const std::int64_t top = std::max(block_row * block, margin),
                     end = std::min((block_row + 1) * block, height_ - margin);
  std::vector<int> least(static_cast<std::size_t>(columns_));
  std::vector<float> scale(least.size());
  for (std::int64_t column = 0; column < columns_; ++column) {
    const auto at = static_cast<std::size_t>(column);
    scale[at] = 1 / (least_ratio * static_cast<float>(activity_around(column, block_row)));
    least[at] = static_cast<int>(std::exp2(static_cast<float>(least_ - 1) / steps) / scale[at]);
  }
  for (std::int64_t y = top; y < end; ++y) {
    const std::int16_t *row = residual + (y - block_row * block) * width_;
    for (std::int64_t x = margin; x < width_ - margin; ++x) {
      const auto column = static_cast<std::size_t>(x / block);
      const int size = std::abs(int{row[x]});
      if (size <= least[column]) continue;
      const float doublings = std::log2(static_cast<float>(size) * scale[column]);
      candidates_.push_back({static_cast<std::uint32_t>(y * width_ + x),
                             static_cast<std::uint8_t>(std::clamp(1 + doublings * steps, 1.0f, 255.0f)),
                             static_cast<std::int8_t>(std::clamp(row[x] / SpeckFilter::unit, -127, 127))});
    }
  }
  if (candidates_.size() > 2 * most_) keep_strongest();
}

/// Raises the least strength until no more than wanted are left.
void GlassMeter::keep_strongest() {
  std::array<std::size_t, 256> counts{};
  for (const Candidate &candidate : candidates_) ++counts[candidate.strength];
  std::size_t kept = 0;
  int strength = 255;
  while (strength >= least_ && kept + counts[static_cast<std::size_t>(strength)] <= most_)
    kept += counts[static_cast<std::size_t>(strength--)];
  least_ = strength + 1;
  candidates_.erase(std::remove_if(candidates_.begin(), candidates_.end(),
                                   [&](const Candidate &c) { return c.strength < least_; }),
                    candidates_.end());
}

GlassMap GlassMeter::take() {
  GlassMap map{stored_, factor_, 0, 0, {}, {}, {}};
  if (!any_ || band_.empty()) return map;
  const std::vector<std::uint8_t> last(band_.end() - stride_, band_.end());
  for (int i = 0; i < reach; ++i) band_.insert(band_.end(), last.begin(), last.end());
  filter_band();
  keep_strongest();
  map.width = width_, map.height = height_;
  map.marks.reserve(candidates_.size() * 9 / 8);
  std::uint32_t at = 0;
  for (const Candidate &candidate : candidates_) {
    for (; candidate.at - at > 255; at += 255) map.marks.push_back({255, 0, 0});
    map.marks.push_back(
        {static_cast<std::uint8_t>(candidate.at - at), candidate.strength, candidate.contrast});
    at = candidate.at;
  }
  map.columns = streaks_->take_columns();
  map.rows = streaks_->take_rows();
  return map;
}

} // namespace stoneproof
