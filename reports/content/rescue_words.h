// What can be done for a picture with too few pixels, in words.
#pragma once

#include "engine/placement/placed.h"
#include "engine/rules/finding.h"

#include <string>

namespace stoneproof::content {

/// The ways that could be computed, best first: a rescan, a smaller print, a looser crop. `placed` (may be
/// null) tells the printed size.
std::string rescue_words(const Rescue &rescue, const PlacedFrame *placed);

} // namespace stoneproof::content
