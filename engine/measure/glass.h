// Dirt on the glass of one scanner, told once for all its scans.
#pragma once

#include "engine/measure/certainty.h"
#include "engine/units/geometry.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace stoneproof {

enum class GlassSpotKind { speck, hair, streak_down, streak_across };
inline constexpr Word<GlassSpotKind> spot_words[] = {{GlassSpotKind::speck, "speck"},
                                                     {GlassSpotKind::hair, "hair"},
                                                     {GlassSpotKind::streak_down, "streak-down"},
                                                     {GlassSpotKind::streak_across, "streak-across"}};

/// Places are shares of the scan as stored, 0 to 1; a streak runs along all of it.
struct GlassSpot {
  GlassSpotKind kind = GlassSpotKind::speck;
  double left = 0, top = 0, right = 1, bottom = 1;
  double contrast = 0; ///< levels of 255 against what is round it; of streaks below 0: darker

  std::vector<std::size_t> carriers;     ///< the pictures that show it, by their places in the list
  Certainty certainty = Certainty::hint; ///< hint or firm
};

struct Glass {
  std::vector<std::size_t> scans; ///< the pictures that came from it, by their places in the list
  std::optional<Size> area;       ///< what a scan shows of the glass; none: the files store no density
  std::vector<GlassSpot> spots;   ///< the surest first

  /// From the left and the top of the scan as stored.
  std::optional<Rect> place_of(const GlassSpot &spot) const {
    if (!area) return std::nullopt;
    return Rect{area->width * spot.left, area->height * spot.top, area->width * (spot.right - spot.left),
                area->height * (spot.bottom - spot.top)};
  }
};

} // namespace stoneproof
