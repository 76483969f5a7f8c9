// The eight orientations of Exif and TIFF tag 274 as geometry: a swap of the axes, then flips.
#pragma once

#include "engine/units/geometry.h"

#include <cstdint>

namespace stoneproof {

/// Maps the picture as it is seen to the picture as it is stored.
class Orientation {
public:
  /// `value` from 1 to 8.
  explicit constexpr Orientation(int value) : value_(value) {}

  constexpr bool swaps() const { return value_ >= 5; }
  constexpr PixelSize seen(PixelSize stored) const {
    return swaps() ? PixelSize{stored.height, stored.width} : stored;
  }
  constexpr PixelSize stored(PixelSize seen_size) const { return seen(seen_size); }

  /// Where the pixel that is seen at (x, y) is stored; `size` is the stored size.
  struct Place {
    std::int64_t x, y;
  };
  constexpr Place stored_place(std::int64_t x, std::int64_t y, PixelSize size) const {
    const Place turned = swaps() ? Place{y, x} : Place{x, y};
    return {flips_x() ? size.width - 1 - turned.x : turned.x,
            flips_y() ? size.height - 1 - turned.y : turned.y};
  }

  /// The stored rectangle that is seen as `part`; `size` is the stored size.
  constexpr PixelRect stored_part(const PixelRect &part, PixelSize size) const {
    PixelRect turned = swaps() ? PixelRect{part.y, part.x, part.height, part.width} : part;
    if (flips_x()) turned.x = static_cast<double>(size.width) - turned.x - turned.width;
    if (flips_y()) turned.y = static_cast<double>(size.height) - turned.y - turned.height;
    return turned;
  }
  /// How the stored rectangle is seen; `size` is the stored size.
  constexpr PixelRect seen_part(const PixelRect &part, PixelSize size) const {
    return Orientation(undone()).stored_part(part, seen(size));
  }
  /// The orientation that undoes this one: 6 and 8 undo each other, all else itself.
  constexpr int undone() const { return value_ == 6 ? 8 : value_ == 8 ? 6 : value_; }
  /// Whether what turns clockwise as stored turns the other way as it is seen.
  constexpr bool mirrors() const { return value_ == 2 || value_ == 4 || value_ == 5 || value_ == 7; }

private:
  constexpr bool flips_x() const { return value_ == 2 || value_ == 3 || value_ == 7 || value_ == 8; }
  constexpr bool flips_y() const { return value_ == 3 || value_ == 4 || value_ == 6 || value_ == 7; }
  int value_;
};

} // namespace stoneproof
