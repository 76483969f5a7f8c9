// Everything that looks at tiles. The only way in is detail_of; tested through
// tests/engine/measure/pixel_pass.test.cpp.
#include "engine/measure/detail.h"

#include <utility>

namespace stoneproof {

Detail detail_of(const std::vector<Tile> &tiles, bool turned) {
  Detail detail{enlargement(tiles)};
  if (turned) std::swap(detail.enlargement.detail.across, detail.enlargement.detail.down);
  return detail;
}

} // namespace stoneproof
