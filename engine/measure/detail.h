// All that the tiles of a part of a picture tell of it.
#pragma once

#include "engine/measure/enlargement.h"

namespace stoneproof {

struct Detail {
  Enlargement enlargement; ///< its axes as the picture is seen
};

/// From the tiles of a part, most detail first; none: cannot tell. `turned`: the picture is seen with rows
/// and columns swapped.
Detail detail_of(const std::vector<Tile> &tiles, bool turned);

} // namespace stoneproof
