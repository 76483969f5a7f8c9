// Streaks of single scans and of batches. Used by glass_dirt only.
#pragma once

#include "engine/measure/glass_dirt.h"

namespace stoneproof {

/// Of the pictures named, all of one size. In two and more: firm, where at least half carry it within one
/// reduced pixel, all darker or all lighter; in one: a hint, if it runs along the whole picture and is the
/// picture's only line of that direction.
std::vector<GlassStreak> common_streaks(const std::vector<const GlassMap *> &batch,
                                        const std::vector<std::size_t> &pictures);

} // namespace stoneproof
