// Specks and hairs that a batch of scans has in common. Used by glass_dirt only.
#pragma once

#include "engine/measure/glass_dirt.h"

#include <optional>

namespace stoneproof {

/// Pictures of the batch that show the same subject in the same place as an earlier one, of those in
/// `pictures`.
std::vector<std::size_t> repeats_in(const std::vector<const GlassMap *> &batch,
                                    const std::vector<std::size_t> &pictures);

/// Of the pictures named (all of one size, four or more); what lies on a streak is left out. None: too much
/// is the same.
std::optional<std::vector<GlassSpeck>> common_specks(const std::vector<const GlassMap *> &batch,
                                                     const std::vector<std::size_t> &pictures,
                                                     const std::vector<GlassStreak> &streaks);

} // namespace stoneproof
