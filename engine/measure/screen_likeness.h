// Whether a picture looks like one of a screen: windows, text and flat colours that a program drew.
//
// Where such a picture has most detail, many pixels still equal their neighbours exactly, few levels of
// lightness hold most of it, and what is not equal differs much at once. A photograph has one of these at
// most: fog is equal but steps little, grain steps but is not equal. Common practice; bounds set on half of
// the pictures of tests/bench/detail/history.sh.
#pragma once

#include "engine/measure/certainty.h"
#include "engine/measure/tile.h"

#include <vector>

namespace stoneproof {

struct ScreenLikeness {
  /// Firm: all three are far beyond what photographs reach. Hint: so far as screens saved as JPEGs go.
  Certainty certainty = Certainty::cannot_tell;
  double equal = 0;      ///< share of the pixels that equal both the right and the lower neighbour
  double few_levels = 0; ///< share of the pixels that the eight most frequent levels hold
  int step = 0;          ///< nine in ten unequal neighbours differ by no more than so many levels
};

/// From the tiles of a part; none: cannot tell. Line art and drawings in flat colours are like screens, too.
ScreenLikeness screen_likeness(const std::vector<Tile> &tiles);

} // namespace stoneproof
