// Areas of a small picture, as masks of pixels.
#pragma once

#include <cstdint>
#include <vector>

namespace stoneproof {

struct PictureMask {
  int width = 0, height = 0;
  std::vector<std::uint8_t> set; ///< 0 or 1

  PictureMask(int w, int h)
      : width(w), height(h), set(static_cast<std::size_t>(w) * static_cast<std::size_t>(h)) {}
  std::uint8_t &at(int x, int y) {
    return set[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)];
  }
  std::uint8_t at(int x, int y) const {
    return set[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)];
  }
};

/// What of the mask hangs together, by edges of pixels, with what of it lies within `strip` of the picture's
/// edge.
PictureMask joined_to_edge(const PictureMask &mask, int strip);
/// Without what is narrower than five pixels.
PictureMask opened(const PictureMask &mask);
/// The largest piece that hangs together by edges of pixels; empty where there is none.
PictureMask largest_piece(const PictureMask &mask);

} // namespace stoneproof
