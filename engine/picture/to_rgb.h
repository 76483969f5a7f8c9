// Turns rows of any layout into 8-bit RGB, good enough to recognise a picture by.
#pragma once

#include "engine/picture/rows.h"

#include <array>
#include <cstdint>

namespace stoneproof {

/// The conversions are plain: no profile is applied. Gray and RGB keep their values, cut to 8 bits. Ink is
/// taken from white: (255 - c)(255 - k) / 255. Lab is taken through D50 XYZ and the sRGB curve. Opacity shows
/// white behind.
class ToRgb {
public:
  /// The layout must outlive the converter.
  explicit ToRgb(const RowLayout &layout);
  /// Writes `count` pixels, from pixel `first` of `row` on, to `out` (3 bytes each).
  void convert(const std::uint8_t *row, std::int64_t first, std::int64_t count, std::uint8_t *out) const;
  /// Rows are 8-bit RGB already, 3 bytes a pixel.
  bool is_plain() const;

private:
  template <class Sample>
  void convert_all(const std::uint8_t *row, std::int64_t count, std::uint8_t *out) const;
  template <class Sample>
  void colour(const std::uint8_t *pixel, std::uint8_t *out) const;
  std::uint8_t level(std::uint8_t sample) const { return levels_[sample]; }
  std::uint8_t level(std::uint16_t sample) const;

  const RowLayout &layout_;
  std::array<std::uint8_t, 256> levels_{}; ///< samples of up to 8 bits as 0 to 255, put the right way round
};

} // namespace stoneproof
