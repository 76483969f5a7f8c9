// Sums along columns and rows. Only ways in: StreakMeter, judge_lines. Tested in
// tests/engine/measure/streak_meter.test.cpp.
#include "engine/measure/streak_meter.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace stoneproof {

namespace {

/// Differences are counted in quarters of a level.
constexpr int quarter_cut = 4 * StreakLines::cut;

constexpr int cut_difference(int four_times, int sum_of_four) {
  const int difference = four_times - sum_of_four;
  return difference < -quarter_cut ? -quarter_cut : difference > quarter_cut ? quarter_cut : difference;
}

std::int16_t value_of(std::int64_t sum, std::int64_t pixels) {
  return static_cast<std::int16_t>(sum * StreakLines::unit / 4 / std::max<std::int64_t>(pixels, 1));
}

std::int64_t segment_begin(std::int64_t segment, std::int64_t length) {
  return segment * length / StreakLines::segments;
}

double median(std::vector<double> &values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

/// The least deviation that a segment's lines are held to have, in levels: rounding makes as much.
constexpr double least_deviation = 0.1;

} // namespace

StreakMeter::StreakMeter(std::int64_t width, std::int64_t height)
    : width_(width), height_(height), sums_(static_cast<std::size_t>(width)) {
  columns_.count = width, rows_.count = height;
  columns_.values.resize(static_cast<std::size_t>(width * StreakLines::segments));
  rows_.values.resize(static_cast<std::size_t>(height * StreakLines::segments));
}

void StreakMeter::add(std::int64_t y, const std::uint8_t *row, const std::uint8_t *const near[4]) {
  std::int32_t *sums = sums_.data();
  for (std::int64_t x = 0; x < width_; ++x)
    sums[x] += cut_difference(4 * row[x], row[x - 3] + row[x - 2] + row[x + 2] + row[x + 3]);
  ++segment_rows_;

  const std::uint8_t *a = near[0], *b = near[1], *c = near[2], *d = near[3];
  for (std::int64_t segment = 0; segment < StreakLines::segments; ++segment) {
    const std::int64_t begin = segment_begin(segment, width_), end = segment_begin(segment + 1, width_);
    std::int32_t sum = 0;
    for (std::int64_t x = begin; x < end; ++x) sum += cut_difference(4 * row[x], a[x] + b[x] + c[x] + d[x]);
    rows_.values[static_cast<std::size_t>(segment * height_ + y)] = value_of(sum, end - begin);
  }

  if (y + 1 == segment_begin(segment_ + 1, height_)) finish_segment();
}

void StreakMeter::finish_segment() {
  std::int16_t *values = columns_.values.data() + segment_++ * width_;
  for (std::int64_t x = 0; x < width_; ++x)
    values[x] = value_of(std::exchange(sums_[static_cast<std::size_t>(x)], 0), segment_rows_);
  segment_rows_ = 0;
}

StreakLines StreakMeter::take_columns() { return std::move(columns_); }
StreakLines StreakMeter::take_rows() { return std::move(rows_); }

std::vector<StreakLine> judge_lines(const StreakLines &lines) {
  constexpr int n = StreakLines::segments;
  const auto count = static_cast<std::size_t>(lines.count);
  const auto level = [&](int segment, std::size_t line) {
    return lines.values[static_cast<std::size_t>(segment) * count + line] / double{StreakLines::unit};
  };
  std::array<double, n> middle{}, deviation{};
  for (int s = 0; s < n; ++s) {
    std::vector<double> values(count);
    for (std::size_t i = 0; i < count; ++i) values[i] = level(s, i);
    const double m = middle[static_cast<std::size_t>(s)] = median(values);
    for (double &value : values) value = std::abs(value - m);
    // 1.4826 times the median of deviations is the standard deviation of what is normally spread.
    deviation[static_cast<std::size_t>(s)] = 1.4826 * median(values) + least_deviation;
  }

  std::vector<StreakLine> judged(count);
  for (std::size_t i = 0; i < count; ++i) {
    std::vector<double> levels(n);
    for (int s = 0; s < n; ++s) levels[static_cast<std::size_t>(s)] = level(s, i);
    StreakLine &line = judged[i];
    line.at = static_cast<std::int64_t>(i);
    line.strength = median(levels);
    const double sign = line.strength < 0 ? -1 : 1;
    double sum = 0;
    for (int s = 0; s < n; ++s) {
      const auto at = static_cast<std::size_t>(s);
      const double z = sign * (level(s, i) - middle[at]) / deviation[at];
      sum += std::clamp(z, -4.0, 4.0);
      line.agreeing += (z > 1) / double{n};
    }
    line.deviation = sum / std::sqrt(double{n});
  }
  return judged;
}

} // namespace stoneproof
