// The edges of a page as the rules see them.
#pragma once

#include "engine/rules/about.h"

namespace stoneproof {

/// What is printed of a frame: the frame itself, or the picture alone where it is set to lie inside its
/// frame, since paper stays white around it.
inline const Rect &printed_box(const Evidence &evidence, const PlacedFrame &placed) {
  const bool inside = std::holds_alternative<Inside>(evidence.frame_of(placed).fit);
  return inside && placed.picture_box ? *placed.picture_box : placed.box;
}

/// No part lies inside the trim: nothing of it is left after the cut.
inline bool off_page(const Rect &box, const PageSpace &space) { return !shared_part(box, space.trim); }

/// Some part lies beyond the trim. The inner edge of a single page does not count: past it lies the facing
/// page.
inline bool passes_trim(const Rect &box, const PageSpace &space) {
  const Reach reach = reach_past(box, space.trim);
  for (const PageSide side : page_sides)
    if (side != space.bound && reach.at(side) > layout_rounding) return true;
  return off_page(box, space);
}

/// Calls `check(page index, text index, text)` for every text block.
template <class Check>
void each_text(const Evidence &evidence, Check check) {
  for (std::size_t page = 0; page < evidence.book.pages.size(); ++page) {
    const auto &texts = evidence.book.pages[page].texts;
    for (std::size_t index = 0; index < texts.size(); ++index) check(page, index, texts[index]);
  }
}

} // namespace stoneproof
