// A picture that is laid out as two halves on facing single pages. Used by the rules halves-apart and
// picture-twice.
#pragma once

#include "engine/rules/evidence.h"

#include <vector>

namespace stoneproof {

/// Frames of the left and of the right page, by their places in Evidence::frames.
struct FacingHalves {
  std::size_t left = 0, right = 0;
};

/// How the two halves of a picture fail to continue. `away` and `lower` tell where the right half shows what
/// the left one shows at the fold, half way up what both share: how far to the right of the fold, and how far
/// below. Away by nothing where the halves lie as on one surface, by twice the gutter loss where the layout
/// leaves out what the binding swallows.
struct HalvesMeet {
  double scale = 0; ///< share by which the larger one is larger
  Length away, lower;
};

/// Frames that could be halves: of facing single pages, with the same picture, turned and mirrored alike,
/// both reaching the inner edge, and beside each other for some of their height. The frames of a page stand
/// together; each is looked up by its picture.
std::vector<FacingHalves> facing_halves(const Evidence &evidence);

HalvesMeet how_they_meet(const Evidence &evidence, const FacingHalves &halves);

} // namespace stoneproof
