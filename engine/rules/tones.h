// What the rules of tones have in common.
#pragma once

#include "engine/measure/tone.h"

namespace stoneproof {

/// Tones that span less than this share of the range are hardly a picture: paper, or an empty scanner glass
/// (our own choice).
inline constexpr double blank_range = 0.08;

/// No other fault of its tones is told of a picture that is nearly blank.
inline bool is_nearly_blank(const Tone &tone) { return tone.range < blank_range; }

} // namespace stoneproof
