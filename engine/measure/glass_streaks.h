// Streaks of single scans and of batches. Used by glass_dirt only.
#pragma once

#include "engine/measure/glass_dirt.h"

namespace stoneproof {

/// Of the pictures named, all of one size. In two and more: firm, where at least half carry it within one
/// reduced pixel, darker or lighter alike; in one: a hint, held to higher bounds.
std::vector<GlassStreak> common_streaks(const std::vector<const GlassMap *> &batch,
                                        const std::vector<std::size_t> &pictures);

} // namespace stoneproof
