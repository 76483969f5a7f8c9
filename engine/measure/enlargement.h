// Whether a picture was enlarged in software, and for how much density its detail is enough.
#pragma once

#include "engine/measure/certainty.h"
#include "engine/measure/enlargement_trace.h"

#include <optional>

namespace stoneproof {

/// Detail ends, along an axis, where less than a tenth of what lies in the spectrum (weighted with frequency
/// squared) is left above: as a share of what one pixel could hold. 1: every pixel counts.
struct DetailLimit {
  double across = 1, down = 1; ///< 0 to 1; along the rows and the columns as stored
};

struct Enlargement {
  Certainty certainty = Certainty::cannot_tell;
  /// How many times larger it was made; there where certainty is hint or firm.
  std::optional<double> factor;
  bool factor_sure = false; ///< the trace and the end of detail agree; else the factor is at least about that
  bool nearest = false;     ///< pixels were repeated, not smoothed
  DetailLimit detail;
};

/// From the tiles of a part, most detail first; none: cannot tell. Holds for photographs and scans of them in
/// continuous tone, enlarged alike along both axes by 1.2 to 5 times without being turned. Not found: what
/// was turned by a few degrees, or given grain afterwards. README tells the measured rates
/// (tests/bench/detail).
Enlargement enlargement(const std::vector<Tile> &tiles);

} // namespace stoneproof
