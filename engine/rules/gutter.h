// The strip of a page or spread that the binding swallows. Used by the rules about the binding only.
#pragma once

#include "engine/rules/edges.h"

namespace stoneproof {

/// How near a box comes to the binding: to the fold of a spread, nothing or less where it lies over it; to
/// the inner trim edge of a single page, less than nothing past it. None on a cover.
inline std::optional<Length> distance_to_binding(const Rect &box, const PageSpace &space) {
  if (space.fold) return std::max(box.left() - *space.fold, *space.fold - box.right());
  if (space.bound) return -reach_past(box, space.trim).at(*space.bound);
  return std::nullopt;
}

/// A text that the binding swallows wholly or partly; the rule lost-in-gutter holds it, and others leave it
/// alone. Text that leaves the page at a cut edge is off the page first of all.
inline bool swallowed(const Rect &text, const PageSpace &space) {
  if (space.gutter_loss <= layout_rounding || passes_trim(text, space)) return false;
  const auto distance = distance_to_binding(text, space);
  return distance && *distance < space.gutter_loss - layout_rounding;
}

} // namespace stoneproof
