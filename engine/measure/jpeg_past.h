// What a picture's pixels tell of its past as a JPEG.
#pragma once

#include "engine/measure/certainty.h"
#include "engine/measure/jpeg_before.h"
#include "engine/measure/jpeg_lattice.h"

namespace stoneproof {

enum class JpegPastKind {
  none,    ///< nothing was found
  aligned, ///< a JPEG that was saved as one before, with coarser steps on the same block grid
  moved,   ///< a JPEG that was saved as one before, with coarser steps, and then cropped or moved
  was_jpeg ///< its format is another, but its pixels were a JPEG's
};

struct JpegPast {
  Certainty certainty = Certainty::cannot_tell;
  JpegPastKind kind = JpegPastKind::none; ///< another where certainty is hint or firm
  EarlierQuality earlier;                 ///< there where kind is not none
  /// Where the blocks of that JPEG begin, in pixels of the picture as stored, modulo eight; not 0, 0: it was
  /// cropped or moved since.
  int shift_x = 0, shift_y = 0;
};

/// From the tiles of a part; `present`: the luma table of a picture that is a JPEG in YCbCr or in grey, none
/// for every other. A TIFF that holds JPEG data was a JPEG here. Cannot tell: too little texture, or all of
/// it black or white. Not found: an earlier quality less than five below the present one or above 97, and
/// what was enlarged, reduced, sharpened or given grain since.
JpegPast jpeg_past(const std::vector<Tile> &tiles, const std::optional<QuantTable> &present);

} // namespace stoneproof
