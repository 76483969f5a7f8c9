// The ways of the hairlines that join places on a drawing to their numbers in the column beside it.
#pragma once

#include "reports/layout/outline.h"

#include <span>
#include <vector>

namespace stoneproof::layout {

/// From the rim of its place to the right: level and upright by turns, never leftwards. All on the sheet.
using Way = std::vector<Point>;

/// What a leader passes on the drawing.
struct LeaderRoom {
  Rect drawing;               ///< the bleed, as it is drawn
  std::vector<Rect> pictures; ///< crossed only where there is no other way
  std::vector<Rect> texts;    ///< gone round where the way round is short
};

/// How far to the right of the drawing the leaders come out.
inline constexpr Length leader_exit = Length::of_mm(2);
/// Leaders beside each other are at least so far apart wherever there is room for it.
inline constexpr Length leader_pitch = Length::of_mm(0.7);

/// One way for each place, up to `leader_exit` beside the drawing, where they come out in their order from
/// top to bottom. A place ends before the exit; `wanted` is the height at which its words would like to
/// stand. No way runs through the inside of its own place. Two cross only where places overlap or are not in
/// order from top to bottom. Time grows with places and pictures.
std::vector<Way> lead_out(std::span<const Outline> places, std::span<const Length> wanted,
                          const LeaderRoom &room);

/// Carries the ways on to `tags`, the left edge of the numbers, at these heights, which are in order from top
/// to bottom.
void lead_to_tags(std::span<Way> ways, std::span<const Length> heights, Length tags);

} // namespace stoneproof::layout
