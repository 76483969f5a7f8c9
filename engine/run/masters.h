// Which files on disk the pictures of a finished PDF were made from. Used in this folder only.
#pragma once

#include "engine/run/copies.h"
#include "engine/run/parallel.h"
#include "engine/run/press_tables.h"
#include "engine/run/run.h"

#include <optional>
#include <vector>

namespace stoneproof {

struct FoundMasters {
  std::vector<std::optional<Master>> masters; ///< one for each picture
  std::size_t unread = 0;                     ///< files that are no pictures, or broken
};

/// `traits` are those of the book's pictures, whose facts are in `pictures`. Reads every file of the options
/// once. Tells `progress` of each file, then of each picture. A file is found where it shows the same, at
/// whatever size, quality and tones, turned or mirrored (engine/measure/near_copy.h), and cut to a quarter of
/// its sides (engine/measure/crop_search.h); of several a sure one counts before others, then the likeliest,
/// and of those that are as likely the largest.
FoundMasters find_masters(const std::vector<CopyTraits> &traits, const std::vector<PictureState> &pictures,
                          const RunOptions &options, PressTables &tables, Progress &progress);

} // namespace stoneproof
