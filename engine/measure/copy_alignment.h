// Laying one small gray picture over another, turned, stretched and moved a little until they agree best.
#pragma once

#include "engine/measure/copy_fingerprint.h"

#include <optional>

namespace stoneproof {

struct CopyAlignment {
  GrayPart part; ///< of the larger, that the smaller shows
  /// Correlation over the middle three quarters of the smaller, -1 to 1: what lies outside may be a frame,
  /// and frames are alike.
  double likeness = 0;
  double detail = 0; ///< the same of what is left when the mean of 9 x 9 pixels round each is taken away
};

/// Less than either is no copy, wherever the two are laid. Set on the half of the photographs that scores
/// nothing (tests/bench/detail).
inline constexpr double found_likeness = 0.85, found_detail = 0.76;

/// Less is not surely a copy: it may be another shot of the same scene. Our own choice; copies by software
/// alone come out above 0.99.
inline constexpr double sure_likeness = 0.97;

/// Least squares of gray values over an affine map, a gain and an offset, by Gauss and Newton (as B. Lucas,
/// T. Kanade, IJCAI 1981), from `part` of the larger on. None: it ran away, or less than two thirds of the
/// smaller lies in the larger.
std::optional<CopyAlignment> align_copies(const SmallGray &larger, const SmallGray &smaller,
                                          const GrayPart &part);

} // namespace stoneproof
