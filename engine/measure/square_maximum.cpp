// A moving window over cells. Only way in: SquareMaximum. Tested in tests/engine/measure/ink_meter.test.cpp.
#include "engine/measure/square_maximum.h"

#include <algorithm>

namespace stoneproof {

SquareMaximum::SquareMaximum(std::int64_t columns, std::int64_t width, std::int64_t height)
    : columns_(columns), width_(std::min(width, columns)), height_(height),
      last_(static_cast<std::size_t>(height)), column_sums_(static_cast<std::size_t>(columns)) {}

void SquareMaximum::add(const std::vector<Cell> &row) {
  last_[static_cast<std::size_t>(rows_ % height_)] = row;
  ++rows_;
  if (rows_ >= height_) slide();
}

// The sums are made anew from the rows kept, so that no rounding adds up over a tall picture.
void SquareMaximum::slide() {
  std::fill(column_sums_.begin(), column_sums_.end(), Cell{});
  for (const auto &row : last_)
    for (std::size_t i = 0; i < row.size(); ++i) {
      column_sums_[i].sum += row[i].sum;
      column_sums_[i].count += row[i].count;
    }
  const std::int64_t top = std::max<std::int64_t>(0, rows_ - height_);
  for (std::int64_t left = 0; left + width_ <= columns_; ++left) {
    Cell square;
    for (std::int64_t i = left; i < left + width_; ++i) {
      square.sum += column_sums_[static_cast<std::size_t>(i)].sum;
      square.count += column_sums_[static_cast<std::size_t>(i)].count;
    }
    if (square.count == 0) continue;
    const double mean = square.sum / square.count;
    if (!found_ || mean > found_->mean) found_ = Found{mean, {left, top, width_, rows_ - top}};
  }
}

std::optional<SquareMaximum::Found> SquareMaximum::take() {
  if (rows_ > 0 && rows_ < height_) slide();
  return found_;
}

} // namespace stoneproof
