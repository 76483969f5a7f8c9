// Area averaging, columns first. Only way in: AreaAverage. Tested in
// tests/engine/picture/area_average.test.cpp.
#include "engine/picture/area_average.h"

#include <algorithm>
#include <cmath>

namespace stoneproof {

namespace {

// Ends that arithmetic has moved off a pixel's edge by less than this lie on the edge.
constexpr double sliver = 1e-6;

std::int64_t first_pixel(double begin) { return static_cast<std::int64_t>(std::floor(begin + sliver)); }
std::int64_t pixel_end(double end) { return static_cast<std::int64_t>(std::ceil(end - sliver)); }

// How much of the pixel at `place` lies between `begin` and `end`.
double share(std::int64_t place, double begin, double end) {
  const auto left = static_cast<double>(place);
  return std::max(0.0, std::min(left + 1, end) - std::max(left, begin));
}

} // namespace

AreaAverage::AreaAverage(AverageSpan columns, AverageSpan rows, int width, int height)
    : rows_(rows), row_step_((rows.end - rows.begin) / height), height_(height) {
  const double step = (columns.end - columns.begin) / width;
  area_ = static_cast<float>(step * row_step_);
  first_column_ = first_pixel(columns.begin);
  column_count_ = pixel_end(columns.end) - first_column_;
  first_row_ = row_ = first_pixel(rows.begin);
  row_count_ = pixel_end(rows.end) - first_row_;
  for (int i = 0; i < width; ++i) {
    const double begin = columns.begin + step * i, end = columns.begin + step * (i + 1);
    const std::int64_t first = first_pixel(begin), last = std::max(first, pixel_end(end) - 1);
    columns_.push_back({first - first_column_, last - first_column_,
                        static_cast<float>(share(first, begin, end)),
                        static_cast<float>(share(last, begin, end))});
  }
  const std::size_t samples = static_cast<std::size_t>(width) * 3;
  sums_.resize(samples);
  total_.resize(samples);
  out_.reserve(samples * static_cast<std::size_t>(height));
}

void AreaAverage::sum_columns(const std::uint8_t *rgb) {
  float *sum = sums_.data();
  for (const Column &column : columns_) {
    const std::uint8_t *first = rgb + column.first * 3, *last = rgb + column.last * 3;
    unsigned inner[3] = {0, 0, 0};
    for (const std::uint8_t *pixel = first + 3; pixel < last; pixel += 3)
      for (int c = 0; c < 3; ++c) inner[c] += pixel[c];
    const float last_share = first == last ? 0 : column.last_share;
    for (int c = 0; c < 3; ++c)
      *sum++ = static_cast<float>(first[c]) * column.first_share + static_cast<float>(inner[c]) +
               static_cast<float>(last[c]) * last_share;
  }
}

void AreaAverage::finish_row() {
  for (float &sum : total_) {
    out_.push_back(static_cast<std::uint8_t>(std::clamp(sum / area_ + 0.5F, 0.0F, 255.0F)));
    sum = 0;
  }
  ++done_;
}

void AreaAverage::add(const std::uint8_t *rgb) {
  sum_columns(rgb);
  const auto bottom = static_cast<double>(row_ + 1);
  while (done_ < height_) {
    const double begin = rows_.begin + row_step_ * done_;
    const double end = done_ + 1 == height_ ? rows_.end : rows_.begin + row_step_ * (done_ + 1);
    const auto part = static_cast<float>(share(row_, begin, end));
    for (std::size_t i = 0; i < total_.size(); ++i) total_[i] += part * sums_[i];
    if (end > bottom + sliver) break;
    finish_row();
    if (end >= bottom - sliver) break;
  }
  ++row_;
}

} // namespace stoneproof
