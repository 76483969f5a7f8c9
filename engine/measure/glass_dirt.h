// Dirt on a scanner's glass: what stays in its place in scans of different subjects.
#pragma once

#include "engine/measure/certainty.h"
#include "engine/measure/glass_meter.h"
#include "engine/measure/part.h"

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
  bool column = true;  ///< it runs down the stored picture; else across it
  double at = 0;       ///< its middle, in pixels of the stored picture from the left, or from the top
  double strength = 0; ///< levels of 255, less than 0: darker than beside it; the carriers' median
  std::vector<std::size_t> carriers;
  Certainty certainty = Certainty::hint;
};

struct GlassDirt {
  /// Of specks: cannot tell: fewer than four different subjects, or so much stays the same that it must be
  /// something else than dirt (an album's page, a frame). Else no, or that of the surest speck.
  Certainty specks_certainty = Certainty::cannot_tell;
  std::vector<GlassSpeck> specks;   ///< the surest first
  std::vector<GlassStreak> streaks; ///< the strongest first; of single pictures too, as hints
  std::vector<std::size_t>
      repeats; ///< pictures left out: the same subject in the same place as an earlier one
};

/// The pictures of one batch (scan_batches). Specks must show in at least four pictures and a third of the
/// batch: firm from a batch of five different subjects on, a hint in one of four. Each may have moved by one
/// reduced pixel in any direction. Bounds are set on photographs (tests/bench/detail); holds for subjects
/// that differ in place or in kind. Pictures of another size than the first, and empty maps, are not looked
/// at.
GlassDirt glass_dirt(const std::vector<const GlassMap *> &batch);

} // namespace stoneproof
