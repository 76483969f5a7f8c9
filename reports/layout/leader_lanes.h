// Lines that want the same line, moved apart into lanes.
#pragma once

#include "engine/units/length.h"

#include <cstddef>
#include <vector>

namespace stoneproof::layout {

/// A line that may stand anywhere from `low` to `high`.
struct Lane {
  Length wanted, low, high;
};

/// The lane `before` stands at a smaller coordinate than the lane `after`; before < after as indexes.
struct LaneOrder {
  std::size_t before, after;
};

/// Where each lane stands: as wide apart as there is room for, up to an easy distance, each about where it
/// wants to be. Lanes that have too little room for `least` between them leave their room rather than lie on
/// each other.
std::vector<Length> spread_lanes(const std::vector<Lane> &lanes, const std::vector<LaneOrder> &orders,
                                 Length least);

} // namespace stoneproof::layout
