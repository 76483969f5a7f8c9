// How much of a picture's density its detail is worth. Used by the rules only.
#pragma once

#include "engine/rules/about.h"
#include "engine/rules/shortfall.h"

namespace stoneproof {

/// The density that the detail of the part shown supports: per axis, the smaller one counts; never more than
/// the effective density.
inline Density true_density(const PlacedFrame &placed, const Shown &shown) {
  const DetailLimit &limit = shown.detail.upsampling.detail;
  return std::min(placed.laid->density_x * limit.across, placed.laid->density_y * limit.down);
}

/// Photographs and scans of continuous tone; the edges of line art are another matter.
inline bool has_continuous_tone(const Evidence &evidence, const PlacedFrame &placed) {
  return evidence.use_of(*placed.picture) != Use::line_art;
}

/// What to scan again at; nothing where the original's size is not told.
inline std::optional<Rescan> rescan_of(const Evidence &evidence, const PlacedFrame &placed) {
  const auto &original = evidence.book.pictures[*placed.picture].original;
  if (!original || original->lost) return std::nullopt;
  return rescan(*placed.laid, *original, evidence.pictures[*placed.picture].facts->size,
                bar_of(evidence, placed).wanted, evidence.press.flatbed_limit,
                evidence.press.density_tolerance);
}

} // namespace stoneproof
