// Which of the pictures show the same, and which of two copies is the better one.
#pragma once

#include "engine/measure/pixel_pass.h"
#include "engine/rules/evidence.h"

#include <vector>

namespace stoneproof {

/// What is kept of each picture until all are read.
struct CopyTraits {
  CopyFingerprint print; ///< blank: the picture could not be read, or nobody looked
  CopyWorth worth;
};

/// Of the part that was looked at first counts whether software enlarged it, and how far its detail reaches.
CopyTraits copy_traits(const PassResult &result, const Facts &facts);

/// Each pair once, by place in the list.
std::vector<CopyPair> copies_among(const std::vector<CopyTraits> &traits);

} // namespace stoneproof
