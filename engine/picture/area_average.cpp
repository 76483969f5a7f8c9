// Area averaging: rows are summed as they come, columns once a new row is complete; so the loop that runs
// over every pixel is one that the compiler can turn into vector instructions. Only way in: AreaAverage.
// Tested in tests/engine/picture/preview.test.cpp.
#include "engine/picture/area_average.h"

#include "engine/picture/lanes.h"

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
                        first == last ? 0 : static_cast<float>(share(last, begin, end))});
  }
  // A pixel is summed in four lanes; what the last holds belongs to the next and is thrown away.
  total_.resize(static_cast<std::size_t>(column_count_) * 3 + lane_count - 3);
  whole_.resize(total_.size());
  out_.resize(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 3);
}

// Sums of whole bytes are exact in 16 bits for 257 rows, and quicker than in floating point.
void AreaAverage::add_whole(const std::uint8_t *rgb) {
  std::uint16_t *whole = whole_.data();
  const auto count = static_cast<std::size_t>(column_count_) * 3;
  for (std::size_t i = 0; i < count; ++i) whole[i] = static_cast<std::uint16_t>(whole[i] + rgb[i]);
  if (++whole_rows_ == 257) flush();
}

void AreaAverage::flush() {
  float *total = total_.data();
  std::uint16_t *whole = whole_.data();
  const std::size_t count = whole_.size();
  for (std::size_t i = 0; i < count; ++i) total[i] += static_cast<float>(whole[i]);
  std::fill(whole_.begin(), whole_.end(), std::uint16_t{0});
  whole_rows_ = 0;
  has_total_ = true;
}

void AreaAverage::add_share(const std::uint8_t *rgb, float share_inside) {
  float *total = total_.data();
  const auto count = static_cast<std::size_t>(column_count_) * 3;
  for (std::size_t i = 0; i < count; ++i) total[i] += share_inside * static_cast<float>(rgb[i]);
  has_total_ = true;
}

template <class Value>
void AreaAverage::finish_row(std::vector<Value> &sums) {
  std::uint8_t *out = out_.data() + columns_.size() * 3 * static_cast<std::size_t>(done_++);
  const float one = 1 / area_;
  for (const Column &column : columns_) {
    const Value *first = sums.data() + column.first * 3, *last = sums.data() + column.last * 3;
    Lanes sum = lanes_at(first) * column.first_share + lanes_at(last) * column.last_share;
    for (const Value *pixel = first + 3; pixel < last; pixel += 3) sum += lanes_at(pixel);
    for (int c = 0; c < 3; ++c) *out++ = static_cast<std::uint8_t>(std::min(sum[c] * one + 0.5F, 255.0F));
  }
  std::fill(sums.begin(), sums.end(), Value{0});
}

// Where all rows lay wholly inside there is no need to make floating point of them first.
void AreaAverage::finish_row() {
  if (has_total_ && whole_rows_ > 0) flush();
  has_total_ ? finish_row(total_) : finish_row(whole_);
  has_total_ = false;
  whole_rows_ = 0;
}

void AreaAverage::add(const std::uint8_t *rgb) {
  const auto bottom = static_cast<double>(row_ + 1);
  while (done_ < height_) {
    const double begin = rows_.begin + row_step_ * done_;
    const double end = done_ + 1 == height_ ? rows_.end : rows_.begin + row_step_ * (done_ + 1);
    const double inside = share(row_, begin, end);
    if (inside > 1 - sliver)
      add_whole(rgb);
    else if (inside > sliver)
      add_share(rgb, static_cast<float>(inside));
    if (end > bottom + sliver) break;
    finish_row();
    if (end >= bottom - sliver) break;
  }
  ++row_;
}

} // namespace stoneproof
