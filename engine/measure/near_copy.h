// Pictures that show the same: copies of other size, quality, crop or tones, turned or mirrored.
#pragma once

#include "engine/measure/copy_alignment.h"
#include "engine/measure/upsampling.h"

#include <cstddef>
#include <vector>

namespace stoneproof {

struct NearCopy {
  std::size_t whole = 0, other = 0; ///< places in the list; `whole` shows the more, or as much
  GrayPart part;                    ///< of the whole as stored, that the other shows
  /// Exif's number for how the other must be turned to stand as the whole does, both as stored.
  int orientation = 1;
  double likeness = 0, detail = 0; ///< as in CopyAlignment
};

/// All pairs, by place. Found: crops of up to 10 % at each edge of the one against the other, frames and
/// small turns; not what was cut otherwise from a third picture. Blank pictures are left out. Time: hashes of
/// 81 parts of each picture (1,296 where it is full of small shapes that are alike) meet the turned hashes of
/// every other, as far as the shapes fit, at a few instructions each; only hashes that are alike lead to the
/// slow comparison. So it grows with the square of the number: four seconds of a processor for a thousand
/// pictures. Memory: 20 to 80 KiB a picture while it runs.
std::vector<NearCopy> near_copies(const std::vector<CopyFingerprint> &prints);

/// What is known of one of two copies.
struct CopyWorth {
  double width = 0, height = 0; ///< pixels as stored
  Upsampling upsampling;
};

enum class BetterCopy { whole, other, alike };

/// The one that has more pixels for what both show, less what enlarging in software added where that is firm;
/// where these are within a twentieth, the one whose detail reaches further by a tenth; else the whole where
/// it shows more.
BetterCopy better_copy(const NearCopy &pair, const CopyWorth &whole, const CopyWorth &other);

} // namespace stoneproof
