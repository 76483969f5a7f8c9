// How unlikely it is that a peak of one scan stands at a given place. Used by the measures of dirt only.
#pragma once

#include "engine/measure/glass_meter.h"

#include <cstdint>
#include <vector>

namespace stoneproof {

/// A peak's square of 3 x 3 reduced pixels, in which it may have moved, and the chance that a place lies in
/// the square of one that is as strong, as -ln.
struct GlassMark {
  std::uint16_t x = 0, y = 0; ///< of the peak
  std::uint8_t surprise = 0;  ///< -ln of the chance, in 1/surprise_unit; at most `most_surprise`
  std::int16_t contrast = 0;  ///< as the peak's
};

constexpr double surprise_unit = 30, most_surprise = 8;

/// The marks of one map, from top to bottom and from left to right. The chance is that of the whole picture,
/// or larger where peaks stand closer than in the whole.
std::vector<GlassMark> marks_of(const GlassMap &map);

} // namespace stoneproof
