// What is said of dirt on a scanner's glass. Used in this folder only.
#pragma once

#include "engine/rules/rule.h"
#include "engine/run/measure_files.h"

#include <string>

namespace stoneproof::content {

std::string dirty_glass_words(const Evidence &evidence, const Finding &finding);

/// "a speck 42 mm from the left and 118 mm from the top", as the scan is stored.
std::string spot_phrase(const GlassSpot &spot, const std::optional<Rect> &place);

/// For the table of a picture's facts, of dirt that other files show too.
std::string dirt_fact(const DirtOn &dirt);

} // namespace stoneproof::content
