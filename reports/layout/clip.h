// Cutting a convex shape to a rectangle.
#pragma once

#include "engine/units/geometry.h"

#include <vector>

namespace stoneproof::layout {

/// The part of a convex shape inside `rect` (Sutherland and Hodgman 1974); empty when there is none.
std::vector<Point> clipped(std::vector<Point> corners, const Rect &rect);

} // namespace stoneproof::layout
