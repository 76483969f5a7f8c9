// What shows of the bed of the scanner round a picture. Used by the rules only.
#pragma once

#include "engine/rules/about.h"

#include <algorithm>

namespace stoneproof {

/// Strips of bed on the page, at the sides of the picture as it is seen.
struct BedStrips {
  Length left, right, top, bottom;
  Length widest() const { return std::max({left, right, top, bottom}); }
};

/// What of them the frame shows; nothing where that is not certain.
inline std::optional<BedStrips> bed_strips(const Evidence &evidence, const PlacedFrame &placed) {
  const auto &bed = evidence.pictures[*placed.picture].bed;
  if (!placed.laid->visible || !bed || bed->certainty != Certainty::firm) return std::nullopt;
  const PixelRect &shown = placed.laid->shown, &own = bed->original;
  const auto strip = [](double pixels, Density density) { return Pixels{std::max(0.0, pixels)} / density; };
  const Density x = placed.laid->density_x, y = placed.laid->density_y;
  return BedStrips{strip(own.x - shown.x, x), strip(shown.x + shown.width - own.x - own.width, x),
                   strip(own.y - shown.y, y), strip(shown.y + shown.height - own.y - own.height, y)};
}

} // namespace stoneproof
