// Outlines cut by outlines. The only ways in are the functions of plane.h; tested in
// tests/engine/import/plane.test.cpp.
#include "engine/import/plane.h"

#include <algorithm>
#include <utility>

namespace stoneproof::finished {

namespace {

double cross(Spot from, Spot to, Spot at) {
  return (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x);
}

double signed_area(const Outline &outline) {
  double twice = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Spot from = outline[i], to = outline[(i + 1) % outline.size()];
    twice += from.x * to.y - to.x * from.y;
  }
  return twice / 2;
}

bool all_left_of(const Outline &outline, Spot from, Spot to) {
  return std::all_of(outline.begin(), outline.end(), [&](Spot at) { return cross(from, to, at) >= 0; });
}

/// What of an outline lies to the left of the line from `from` to `to` (Sutherland and Hodgman, 1974).
Outline left_of(const Outline &outline, Spot from, Spot to) {
  Outline kept;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Spot here = outline[i], next = outline[(i + 1) % outline.size()];
    const double side = cross(from, to, here), next_side = cross(from, to, next);
    if (side >= 0) kept.push_back(here);
    if ((side >= 0) == (next_side >= 0)) continue;
    const double share = side / (side - next_side);
    kept.push_back({here.x + (next.x - here.x) * share, here.y + (next.y - here.y) * share});
  }
  return kept;
}

} // namespace

Box box_of(Spot one, Spot other) {
  return {std::min(one.x, other.x), std::min(one.y, other.y), std::max(one.x, other.x),
          std::max(one.y, other.y)};
}

Outline outline_of(const Box &box, const Matrix &map) {
  return {map.apply({box.left, box.bottom}), map.apply({box.right, box.bottom}),
          map.apply({box.right, box.top}), map.apply({box.left, box.top})};
}

Outline shared_part(const Outline &one, const Outline &other) {
  if (one.size() < 3 || other.size() < 3) return {};
  const bool leftwards = signed_area(other) >= 0;
  Outline shared = one;
  for (std::size_t i = 0; i < other.size() && !shared.empty(); ++i) {
    Spot from = other[i], to = other[(i + 1) % other.size()];
    if (!leftwards) std::swap(from, to);
    if (!all_left_of(shared, from, to)) shared = left_of(shared, from, to);
  }
  return shared.size() < 3 ? Outline{} : shared;
}

double area_of(const Outline &outline) { return std::abs(signed_area(outline)); }

std::optional<Box> box_round(const std::vector<Spot> &points) {
  if (points.empty()) return std::nullopt;
  Box box{points[0].x, points[0].y, points[0].x, points[0].y};
  for (const Spot &point : points) {
    box.left = std::min(box.left, point.x);
    box.right = std::max(box.right, point.x);
    box.bottom = std::min(box.bottom, point.y);
    box.top = std::max(box.top, point.y);
  }
  return box;
}

} // namespace stoneproof::finished
