// The lines of marks on a drawing: outlines of their places, the sides at fault, and the leaders to their
// numbers.
#pragma once

#include "reports/content/proof_content.h"
#include "reports/layout/drawing.h"
#include "reports/layout/leaders.h"

#include <span>
#include <vector>

namespace stoneproof::layout {

/// Those of some marks that have a place, and the outlines of their places on the sheet.
struct Outlined {
  std::vector<std::size_t> marks; ///< indexes
  std::vector<Outline> outlines;
  Rect room; ///< in which they lie
};

Outlined outlined(std::span<const content::Mark *const> marks, const LeaderRoom &around, const Scale &scale);

/// Each in the line of its grade; `fold` is where a spread folds on the sheet.
void draw_outlines(Canvas &canvas, std::span<const content::Mark *const> marks, const Outlined &places,
                   Length fold);

void draw_leader(Canvas &canvas, const Way &way);

} // namespace stoneproof::layout
