// Whether pixels were once those of a JPEG, which its quantization has left on a lattice: the frequencies of
// its blocks are whole multiples of the table's steps, on the one of 64 places of the block grid where it was
// saved. Method: sum of cos(2 pi c / step) over sampled blocks, searched over grid places and the tables of
// ITU-T T.81, Annex K, scaled by quality; compare Z. Fan, R. de Queiroz, IEEE Trans. Image Processing 12(2),
// 2003, and T. Bianchi, A. Piva, IEEE Trans. Information Forensics and Security 7(2), 2012. Other tables are
// near enough to one of these to be found, too; their steps are then taken mode by mode.
#pragma once

#include "engine/measure/jpeg_blocks.h"
#include "engine/picture/facts.h"

#include <optional>
#include <vector>

namespace stoneproof {

struct JpegTrace {
  EarlierQuality earlier;       ///< 25 to 97
  int shift_x = 0, shift_y = 0; ///< where that grid begins, in pixels of the picture, modulo eight
  double contrast = 0;          ///< how far the best place stands above the usual one, in standard deviations
};

struct LatticeOrder {
  /// Of a picture that is a JPEG: its own table. Coarser steps alone are looked for, qualities at least four
  /// below its own, and its own grid is left out.
  std::optional<QuantTable> present;
};

/// The strongest trace, whether or not it is strong enough; none: too little to look at (fewer than 50 blocks
/// with texture that is neither black nor white).
std::optional<JpegTrace> jpeg_trace(const std::vector<Tile> &tiles, const LatticeOrder &order = {});

} // namespace stoneproof
