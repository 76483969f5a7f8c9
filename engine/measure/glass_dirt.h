// Dirt on a scanner's glass: what stays in its place in scans of different subjects.
#pragma once

#include "engine/measure/certainty.h"
#include "engine/measure/glass_meter.h"
#include "engine/measure/part.h"
#include "engine/units/density.h"
#include "engine/units/geometry.h"

#include <cstddef>
#include <vector>

namespace stoneproof {

/// A speck or a hair. Places are in pixels of the stored pictures, which all have the same size.
struct GlassSpeck {
  PixelPart where;     ///< the rectangle that it fills, to whole reduced pixels
  double contrast = 0; ///< levels of 255 against its surroundings at the reduced size; the carriers' median
  bool hair = false;   ///< longer than three times its width
  double beyond_chance = 0; ///< of its best pixel, ln: so much less likely than once in the whole glass
  std::vector<std::size_t> carriers;     ///< the pictures that show it; indices into the batch
  Certainty certainty = Certainty::hint; ///< hint or firm
};

/// A thin line along the whole of the scan.
struct GlassStreak {
  bool column = true; ///< it runs down the stored picture; else across it
  double at = 0;      ///< its middle, in pixels of the stored picture from the left, or from the top
  /// Levels of 255, less than 0: darker than beside it; the carriers' median. One of 8 stands for 8 and more.
  double strength = 0;
  std::vector<std::size_t> carriers;
  Certainty certainty = Certainty::hint;
};

struct GlassDirt {
  /// Of specks. Cannot tell: fewer than four different subjects, or so much stays the same that it must be
  /// something else than dirt (an album's page, a frame). Else no, or that of the surest speck.
  Certainty specks_certainty = Certainty::cannot_tell;
  std::vector<GlassSpeck> specks;   ///< the surest first
  std::vector<GlassStreak> streaks; ///< the strongest first; of single pictures too, as hints
  std::vector<std::size_t>
      repeats; ///< pictures left out: the same subject in the same place as an earlier one
};

/// The pictures of one batch (scan_batches), or one alone: then only hints of streaks can come of it. Specks
/// must be marked by at least four pictures and a third of the batch. Firm: five different subjects and more,
/// and so many pictures that surely carry it. Each scan may have moved by one reduced pixel in any direction.
/// What lies on a streak is told as the streak. Pictures of another size than the first, and empty maps, are
/// not looked at. Bounds are set on photographs (tests/bench/detail); holds for subjects that differ in place
/// or in kind, not for what a scan does not keep: scans cropped one by one share no places.
GlassDirt glass_dirt(const std::vector<const GlassMap *> &batch);

/// From the left and the top of the glass, as the scan is stored, at the stored densities along its axes.
Rect on_glass(const GlassSpeck &speck, Density across, Density down);
/// Of a streak's middle: from the left for a column, else from the top.
Length on_glass(const GlassStreak &streak, Density across, Density down);

} // namespace stoneproof
