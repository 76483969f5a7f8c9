// The cover as it was laid out, beside what it should be. Used by the rules about the cover only.
#pragma once

#include "engine/rules/edges.h"

namespace stoneproof {

inline Length apart(Length a, Length b) { return a < b ? b - a : a - b; }

/// The cover's place among the pages. There must be a cover.
inline Finding about_cover(Grade grade, const Evidence &evidence) {
  Finding finding;
  finding.grade = grade;
  finding.page = 0;
  finding.area = evidence.spaces[0].trim;
  return finding;
}

/// The spine on the flat cover.
inline Rect laid_spine(const Cover &cover) {
  return {cover.flap + cover.panel(), {}, cover.spine, cover.size.height};
}

/// Laid out wider or narrower than reckoned by more than the reckoning's tolerance. There must be a cover,
/// and a reckoned one. A spiral has none.
inline bool spine_differs(const Evidence &evidence) {
  if (evidence.book.binding.kind == BindingKind::spiral) return false;
  const Banded &spine = evidence.bound.cover->spine;
  return apart(evidence.book.cover->spine, spine.length) > std::max(spine.tolerance, layout_rounding);
}

/// The width that the spine comes out at: as reckoned, or as it was laid out where nothing tells better.
inline Length real_spine(const Evidence &evidence) {
  return evidence.bound.cover ? evidence.bound.cover->spine.length : evidence.book.cover->spine;
}

/// Whether a text belongs to the spine: by its kind, or because it lies between the folds.
inline bool is_on_spine(const Cover &cover, const TextBlock &text) {
  const Rect spine = laid_spine(cover);
  const bool between = text.rect.left() >= spine.left() - layout_rounding &&
                       text.rect.right() <= spine.right() + layout_rounding;
  return text.kind == TextKind::spine || between;
}

} // namespace stoneproof
