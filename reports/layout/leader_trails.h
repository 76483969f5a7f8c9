// Which gaps the leaders of a drawing take. Their trails may still lie on each other; see leader_lanes.h.
#pragma once

#include "reports/layout/leaders.h"

#include <optional>

namespace stoneproof::layout {

struct Trail {
  std::optional<Length>
      rise; ///< where it leaves the head or the foot of its place; none: it leaves at the right
  std::vector<Length> levels;   ///< heights, from left to right
  std::vector<Length> uprights; ///< from each level to the next
};

/// Where a leader comes out beside the drawing.
inline Length exit_of(const LeaderRoom &room) { return room.drawing.right() + leader_exit; }

/// A trail for each place, given as the box round it. Of any two that keep clear of other places, the earlier
/// one is never below the later one.
std::vector<Trail> find_trails(std::span<const Rect> places, std::span<const Length> wanted,
                               const LeaderRoom &room);

} // namespace stoneproof::layout
