// Where the traces of both axes stand out.
#pragma once

#include "engine/measure/upsampling_trace.h"

#include <vector>

namespace stoneproof {

struct TracePeak {
  double strength = 0; ///< from 1 on it counts
  double alpha = 0;    ///< 1 / factor
};

/// Of both axes together, by alpha. Between the eighths peaks of the coherence; at 2/8 to 5/8, where the
/// blocks of a JPEG leave lines of growing height, what stands above the lines on either side.
std::vector<TracePeak> trace_peaks(const UpsamplingTrace &across, const UpsamplingTrace &down);

/// The strength of one axis near alpha.
double trace_near(const UpsamplingTrace &trace, double alpha);

} // namespace stoneproof
