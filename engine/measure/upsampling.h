// Whether a picture was enlarged in software, and for how much density its detail is enough.
#pragma once

#include "engine/measure/certainty.h"
#include "engine/measure/upsampling_trace.h"

#include <optional>

namespace stoneproof {

/// How much of what its pixels could hold a picture holds, along an axis: 1 where every pixel counts, 1 / f
/// of a sharp picture that was enlarged f times, and of one that was blurred the frequency, over half a cycle
/// a pixel, at which its transfer function falls to 0.32. That is what enlarging leaves there: 0.64 of a
/// pixel's own aperture (sinc 0.5) times 0.5 of the usual kernels. Estimated from where the spectrum of the
/// tiles with most detail ends: above it lies a tenth of the whole, weighted with frequency squared. Focus,
/// motion and software look alike.
struct DetailLimit {
  bool known = false;          ///< false: a flat sky, fog, a blank page hold no detail that could tell
  double across = 1, down = 1; ///< 0 to 1; along the rows and the columns as stored
  /// The truth lies between these multiples of the estimate, nine times in ten (tests/bench/detail). Where
  /// an enlargement is firm, the estimate is 1 / factor, and as near to the truth as that.
  static constexpr double least = 0.68, most = 1.8;
};

struct Upsampling {
  Certainty certainty = Certainty::cannot_tell;
  /// How many times larger it was made; there where certainty is hint or firm.
  std::optional<double> factor;
  /// The trace and the end of detail agree, or pixels were repeated; else the factor is at least about that.
  bool factor_sure = false;
  bool nearest = false; ///< pixels were repeated, not smoothed
  double strength = 0;  ///< of the strongest trace; from 1 on it is a hint
  DetailLimit detail;
};

/// From the tiles of a part, most detail first; none: cannot tell. Holds for photographs and scans of them in
/// continuous tone, enlarged alike along both axes by 1.2 to 5 times without being turned; after a JPEG, too,
/// as far as its quality leaves the trace. Not found: what was turned by a few degrees, or given grain
/// afterwards. A trace is firm where it stands above all that natives reach, higher with few tiles, and the
/// higher the less the picture's sharpness agrees with the factor; and where it is not one of the lines that
/// a JPEG's blocks leave when it is reduced, nor one of many that a pattern leaves, nor that of a drawing
/// whose rows are all the same (upsampling_lines.h, upsampling_rows.h). A JPEG that was packed until its
/// blocks are all that is left of a soft picture, and then reduced to less than two thirds, cannot be told
/// from a small picture that was enlarged. README tells the measured rates (tests/bench/detail).
Upsampling upsampling(const std::vector<Tile> &tiles);

} // namespace stoneproof
