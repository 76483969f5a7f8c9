// How unlikely it is that a pixel of one scan stands out as much as it does. Used by the measures of dirt
// only.
#pragma once

#include "engine/measure/glass_meter.h"

#include <cstdint>
#include <vector>

namespace stoneproof {

/// A mark with its place on the reduced picture.
struct PlacedMark {
  std::int16_t x = 0, y = 0;
  std::uint8_t surprise = 0; ///< -ln of the chance, in 1/surprise_unit; at most `most_surprise`
  std::int8_t contrast = 0;  ///< levels
};

constexpr double surprise_unit = 30, most_surprise = 8;

/// The marks of one map, from top to bottom and from left to right, each standing also for the pixels up to
/// `reach` around it (0 or 1). The chance is that a pixel lies within reach of a mark that is as strong: its
/// share of the whole picture, or a larger one where marks stand closer than in the whole.
std::vector<PlacedMark> placed_marks(const GlassMap &map, int reach);

} // namespace stoneproof
