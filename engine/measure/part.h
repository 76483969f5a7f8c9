// A part of a picture in whole stored pixels, before orientation.
#pragma once

#include <cstdint>

namespace stoneproof {

struct PixelPart {
  std::int64_t x = 0, y = 0, width = 0, height = 0;

  bool has_row(std::int64_t row) const { return row >= y && row < y + height; }
  std::int64_t pixels() const { return width * height; }
  friend bool operator==(const PixelPart &, const PixelPart &) = default;
};

} // namespace stoneproof
