// Whether a JPEG was saved as a JPEG before, on the same block grid and with coarser steps. Its decoded
// pixels give back the whole numbers k that its table's steps q were multiplied by; of values that were
// multiples of an earlier step s, some k are too many and some are missing.
//
// For each low frequency and each s > q: the likelihood of how often each k occurs if the values lay at
// multiples of s (with a spread of 0.45 for what pixels were rounded to), against what it would be if they
// lay spread round those multiples as the picture's own values do half a block further, where no grid bends
// them. Compare J. Lukas, J. Fridrich, Digital Forensic Research Workshop 2003, and T. Bianchi, A. Piva, IEEE
// Trans. Information Forensics and Security 7(2), 2012.
#pragma once

#include "engine/measure/jpeg_blocks.h"
#include "engine/picture/facts.h"

#include <optional>
#include <vector>

namespace stoneproof {

struct JpegBefore {
  double likelihood = 0;  ///< logarithm of the ratio; of the earlier table that fits best
  EarlierQuality earlier; ///< 20 to 99
};

/// None: too little to look at (fewer than 50 blocks that are neither black nor white anywhere, or hardly a
/// frequency in them that is not nought). Holds for a table of T.81 of any shape, before and now, and for
/// earlier steps up to 120.
std::optional<JpegBefore> jpeg_before(const std::vector<Tile> &tiles, const QuantTable &present);

} // namespace stoneproof
