// The outlines of marks on a drawing.
#pragma once

#include "engine/rules/finding.h"

#include <utility>
#include <vector>

namespace stoneproof::layout {

/// A convex shape, its corners clockwise as seen on the sheet.
using Outline = std::vector<Point>;

/// What shows of a place within `room`; of one that lies outside, the nearest spot of the room's edge,
/// without size.
Outline outline_within(const Outline &place, const Rect &room);

/// Moves every side outwards, or inwards if `by` is negative; a shape too small to be moved inwards stays.
Outline offset(const Outline &shape, Length by);

/// Outlines in different lines that would lie on each other are set side by side: each a step further out, or
/// further in where there is no room outside within `room`. Those in the same line are one. `lines` tells the
/// line of each shape.
std::vector<Outline> side_by_side(std::vector<Outline> shapes, const std::vector<Grade> &lines,
                                  const Rect &room);

} // namespace stoneproof::layout
