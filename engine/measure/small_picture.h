// A small copy of the whole picture as it is stored, for what is told by the look of it: bed, tilt, near
// copies.
#pragma once

#include "engine/picture/area_average.h"
#include "engine/picture/rows.h"
#include "engine/picture/to_rgb.h"

#include <cstdint>
#include <vector>

namespace stoneproof {

/// 8-bit RGB as stored, before orientation.
struct SmallPicture {
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgb;
  const std::uint8_t *at(int x, int y) const {
    return rgb.data() +
           (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)) * 3;
  }
};

/// Takes the rows of a decoding pass. Memory: one row of sums and the copy. Of a picture reduced to a quarter
/// or less, two rows go into each of the copy's: those a quarter and three quarters down it.
class SmallPictureMaker {
public:
  /// The longer side of the copy is `side` pixels, or the picture's own where that is less. The layout must
  /// outlive this; it is of whole rows that are not reduced.
  explicit SmallPictureMaker(const RowLayout &layout, int side = 900);
  /// Row `y` of the picture as stored; all of them, in order.
  void add(std::int64_t y, const std::uint8_t *row);
  SmallPicture take();

private:
  static int copy_side(std::int64_t pixels, const RowLayout &layout, int side);
  const RowLayout &layout_;
  ToRgb to_rgb_;
  int width_, height_;
  std::int64_t rows_;     ///< so many count
  std::int64_t done_ = 0; ///< of them
  AreaAverage average_;
  std::vector<std::uint8_t> rgb_; ///< one row, where it must be converted
};

} // namespace stoneproof
