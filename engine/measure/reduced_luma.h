// A picture's lightness, reduced by a whole factor, as its rows come.
#pragma once

#include "engine/picture/rows.h"
#include "engine/picture/to_rgb.h"

#include <cstdint>
#include <vector>

namespace stoneproof {

/// Means of factor x factor pixels. Lightness is that of ITU-T T.871 (JPEG's Y), 0 to 255. What is left over
/// at the right and at the bottom, less than one factor, is not looked at. Memory: one row of sums.
class ReducedLuma {
public:
  /// The layout must outlive this; it is of rows that are not reduced, of the whole picture. 1 <= factor <=
  /// 256.
  ReducedLuma(const RowLayout &layout, int factor);
  std::int64_t width() const { return width_; }
  std::int64_t height() const { return height_; }
  /// Takes the next row as stored; true: a reduced row is ready.
  bool add(const std::uint8_t *row);
  /// The reduced row, `width()` bytes; valid until the next call of `add`.
  const std::uint8_t *row() const { return out_.data(); }

private:
  void reduce();

  const RowLayout &layout_;
  ToRgb to_rgb_;
  bool gray_, plain_rgb_;
  int factor_, rows_ = 0;
  std::int64_t width_, height_;
  std::vector<std::uint8_t> rgb_;   ///< one row, where it must be converted
  std::vector<std::uint16_t> sums_; ///< of `factor` rows, for each sample of lightness or of R, G, B
  std::vector<std::uint8_t> out_;
};

} // namespace stoneproof
