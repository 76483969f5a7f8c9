// Reducing the whole picture while its rows come. The only ways in are those of small_picture.h; tested in
// tests/engine/measure/small_picture.test.cpp.
#include "engine/measure/small_picture.h"

#include <algorithm>
#include <cmath>

namespace stoneproof {

int SmallPictureMaker::copy_side(std::int64_t pixels, const RowLayout &layout, int side) {
  const double longer = static_cast<double>(std::max(layout.width, layout.height));
  const double scale = std::min(1.0, side / longer);
  return std::max(1, static_cast<int>(std::lround(static_cast<double>(pixels) * scale)));
}

SmallPictureMaker::SmallPictureMaker(const RowLayout &layout, int side)
    : layout_(layout), to_rgb_(layout), width_(copy_side(layout.width, layout, side)),
      height_(copy_side(layout.height, layout, side)),
      rows_(layout.height < 4 * height_ ? layout.height : 2 * height_),
      average_({0, static_cast<double>(layout.width)}, {0, static_cast<double>(rows_)}, width_, height_) {
  if (!to_rgb_.is_plain()) rgb_.resize(static_cast<std::size_t>(layout.width) * 3);
}

void SmallPictureMaker::add(std::int64_t y, const std::uint8_t *row) {
  if (done_ == rows_ || y != (2 * done_ + 1) * layout_.height / (2 * rows_)) return;
  ++done_;
  if (!rgb_.empty()) {
    to_rgb_.convert(row, 0, layout_.width, rgb_.data());
    row = rgb_.data();
  }
  average_.add(row);
}

SmallPicture SmallPictureMaker::take() { return {width_, height_, average_.take()}; }

} // namespace stoneproof
