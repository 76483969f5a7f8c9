// Histograms of a part of a picture, counted as its rows come.
#pragma once

#include "engine/measure/part.h"
#include "engine/picture/rows.h"
#include "engine/picture/to_rgb.h"

#include <cstdint>
#include <vector>

namespace stoneproof {

/// How often each value of a channel occurs, at the depth at which the file holds it. 0 is black (of ink:
/// none), whichever way round the file counts.
struct Histogram {
  std::vector<std::uint64_t> counts; ///< 2^bits of them
};

struct Histograms {
  int bits = 8;
  std::int64_t pixels = 0;         ///< counted
  std::vector<Histogram> channels; ///< one for gray, three for red, green, blue
  bool as_stored =
      true; ///< the file's own samples; else an 8-bit RGB conversion of ink, Lab, palette or opacity
};

/// Counts every row of a part of less than 16 megapixels; from n times 8 megapixels on every n-th row, n a
/// whole number: eight million pixels tell a share to much less than a tenth of a percent. Counts gray and
/// RGB as stored, up to 16 bits. CMYK, Lab, palettes and pictures with opacity are turned to 8-bit RGB first
/// (ToRgb).
class ToneMeter {
public:
  /// The layout must outlive this; it is of rows that are not reduced.
  ToneMeter(const PixelPart &part, const RowLayout &layout);
  /// Row `y` of the picture as stored; rows outside the part are not looked at.
  void add(std::int64_t y, const std::uint8_t *row);
  Histograms take();

private:
  void count_bytes(const std::uint8_t *samples, std::int64_t pixels);
  void count_wide(const std::uint8_t *samples, std::int64_t pixels);
  void empty_quick();

  PixelPart part_;
  const RowLayout &layout_;
  ToRgb to_rgb_;
  bool as_stored_;
  int channels_, bits_;
  std::int64_t row_step_, rows_ = 0, quick_pixels_ = 0;
  std::vector<std::uint32_t>
      quick_; ///< two sets of counts: pixels side by side are often equal, and would wait
  std::vector<Histogram> counts_;
  std::vector<std::uint8_t> rgb_;
};

} // namespace stoneproof
