// Which boxes of a page lie over each other, and by how much.
#pragma once

#include "engine/units/geometry.h"

#include <cstddef>
#include <functional>
#include <span>

namespace stoneproof {

/// A box that lies over more than this many others is told of no more of them: a page with such heaps is no
/// layout, and the time must not grow with the square of the heap. Our own choice.
inline constexpr std::size_t most_overlaps = 256;

using Overlapping = std::function<void(std::size_t, std::size_t)>;

/// Calls back once for each two boxes that share area, by their places. A sweep from left to right: n log n
/// and the number of calls.
void each_overlap(std::span<const Rect> boxes, const Overlapping &);

/// The same for each box of the one list with each of the other; the place in `ones` comes first.
void each_overlap(std::span<const Rect> ones, std::span<const Rect> others, const Overlapping &);

/// The part that a turned box and an upright one share: the box round it, and its area as a share of `rect`.
struct SharedPart {
  Rect box;
  double share = 0; ///< 0 to 1
};
SharedPart shared_part(const Corners &shape, const Rect &rect);

/// How far apart two boxes are, corner to corner or side to side; zero where they touch or overlap.
Length distance_between(const Rect &a, const Rect &b);

} // namespace stoneproof
