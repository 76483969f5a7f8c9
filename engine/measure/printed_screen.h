// Whether a picture is a scan of something printed in a screen of dots, which a press's own screen, or a
// change of size, turns into moire.
//
// A screen is a square lattice: its spectrum has two lines of one frequency at right angles to each other,
// the same wherever one looks (the spectrum of a halftone: R. Bracewell, Two-Dimensional Imaging, 1995;
// rulings and angles in use: ISO 12647-2). Cloth, fences and walls are woven or built along the camera's
// axes, or bend and recede, so that their lines do not stay in place from tile to tile.
#pragma once

#include "engine/measure/certainty.h"
#include "engine/measure/tile.h"

#include <vector>

namespace stoneproof {

struct PrintedScreen {
  Certainty certainty = Certainty::cannot_tell;
  /// Rows of dots to a pixel: times the scan's pixels an inch, the lines an inch. 0: none found.
  double ruling = 0;
  /// Degrees by which the lattice is turned against the rows as stored, 0 to 90, from right to down. Of a
  /// print in several inks, that of the strongest.
  double angle = 0;
  /// A ruling above 0.45 may be that of a finer screen, folded back by the scan: nobody should name it.
  bool ruling_sure = false;
  double strength = 0; ///< of the weaker line, ln of power over what stands round it
  /// How far the lines stray from tile to tile, in cycles a tile's side; what is printed stays in place.
  double unsteadiness = 0;
};

/// From tiles of any part, of one side; fewer than three large ones are quartered, as one alone does not tell
/// whether lines stay in place. Fewer than three after that: a hint at most. Not found: lines and grains
/// without a lattice, screens along the rows, what was blurred until the dots are gone. Holds for rulings of
/// 0.03 to 0.65.
PrintedScreen printed_screen(const std::vector<Tile> &tiles);

} // namespace stoneproof
