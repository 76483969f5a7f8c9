// Everything that looks at tiles. The only way in is detail_of; tested through
// tests/engine/measure/pixel_pass.test.cpp.
#include "engine/measure/detail.h"

#include <utility>

namespace stoneproof {

Detail detail_of(const std::vector<Tile> &tiles, bool turned) {
  Detail detail{upsampling(tiles)};
  if (turned) std::swap(detail.upsampling.detail.across, detail.upsampling.detail.down);
  return detail;
}

} // namespace stoneproof
