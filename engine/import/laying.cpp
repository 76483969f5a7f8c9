// A matrix and a clip -> a frame with its turn, mirror and crop. The only way in is laying_of; tested in
// tests/engine/import/layout_of.test.cpp.
#include "engine/import/layout_of.h"
#include "engine/picture/orientation.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stoneproof::finished {

namespace {

/// A picture's top left corner, and its sides to the right and down, as it is seen.
struct Sides {
  Spot corner, right, down;
};

Spot operator-(Spot a, Spot b) { return {a.x - b.x, a.y - b.y}; }
Spot operator+(Spot a, Spot b) { return {a.x + b.x, a.y + b.y}; }
Spot operator-(Spot a) { return {-a.x, -a.y}; }

Sides sides_of(const Matrix &place, int orientation) {
  // Where a corner of the picture as it is seen lies in the picture as it is stored, a unit square.
  const Orientation turned(orientation);
  const auto at = [&](double x, double y) {
    const PixelRect stored = turned.stored_part({x, y, 0, 0}, {1, 1});
    return place.apply({stored.x, 1 - stored.y});
  };
  const Spot corner = at(0, 0);
  return {corner, at(1, 0) - corner, at(0, 1) - corner};
}

double degrees_of(Spot side) { return std::atan2(side.y, side.x) * 180 / std::numbers::pi; }

/// What rounding in the file leaves of a right angle.
double tidied(double degrees) {
  const double whole = std::round(degrees / 90) * 90;
  const double tidy = std::abs(degrees - whole) < 0.005 ? whole : degrees;
  return tidy == -180 ? 180 : tidy == 0 ? 0 : tidy;
}

/// Undoes a mirror the way that leaves less of a turn.
Mirror unmirrored(Sides &sides) {
  if (sides.right.x * sides.down.y - sides.right.y * sides.down.x > 0) return Mirror::none;
  if (std::abs(degrees_of(-sides.right)) <= std::abs(degrees_of(sides.right))) {
    sides.corner = sides.corner + sides.right;
    sides.right = -sides.right;
    return Mirror::horizontal;
  }
  sides.corner = sides.corner + sides.down;
  sides.down = -sides.down;
  return Mirror::vertical;
}

} // namespace

std::optional<Laying> laying_of(const Matrix &place, const Outline &visible, int orientation) {
  Sides sides = sides_of(place, orientation);
  Laying laying;
  laying.mirror = unmirrored(sides);
  const double width = std::hypot(sides.right.x, sides.right.y);
  // Of a slanted picture the height that keeps its area: a Book knows no slant.
  const double height = std::abs(place.determinant()) / width;
  if (!place.finite() || !(width > 1e-6) || !(height > 1e-6) || !(width < 1e6) || !(height < 1e6))
    return std::nullopt;
  laying.turn = {tidied(degrees_of(sides.right))};
  const double angle = laying.turn.degrees * std::numbers::pi / 180;
  const double cosine = std::cos(angle), sine = std::sin(angle);

  std::vector<Spot> shown; // from the picture's corner, turned back
  for (const Spot &spot : visible) {
    const Spot from = spot - sides.corner;
    shown.push_back({std::clamp(from.x * cosine + from.y * sine, 0.0, width),
                     std::clamp(from.y * cosine - from.x * sine, 0.0, height)});
  }
  const auto box = box_round(shown);
  if (!box || box->width() <= 0 || box->height() <= 0) return std::nullopt;
  laying.crop = {box->left / width, box->bottom / height, box->width() / width, box->height() / height};
  const double x = (box->left + box->right) / 2, y = (box->bottom + box->top) / 2;
  const Spot centre = sides.corner + Spot{x * cosine - y * sine, x * sine + y * cosine};
  laying.rect = {micrometres_of(centre.x - box->width() / 2), micrometres_of(centre.y - box->height() / 2),
                 micrometres_of(box->width()), micrometres_of(box->height())};
  // A share that rounding alone keeps from the edge is at the edge.
  const auto settle = [](double &from, double &size) {
    constexpr double rounding = 1e-6;
    if (from < rounding) size += from, from = 0;
    if (from + size > 1 - rounding) size = 1 - from;
  };
  settle(laying.crop.x, laying.crop.width);
  settle(laying.crop.y, laying.crop.height);
  // A crop is of the picture as it is, not as the mirror shows it.
  if (laying.mirror == Mirror::horizontal) laying.crop.x = 1 - laying.crop.x - laying.crop.width;
  if (laying.mirror == Mirror::vertical) laying.crop.y = 1 - laying.crop.y - laying.crop.height;
  const Length far = Length::of_pt(largest_page);
  const Rect &rect = laying.rect;
  const bool near = rect.left() > -far && rect.top() > -far && rect.right() < far && rect.bottom() < far;
  if (!near || rect.width <= Length() || rect.height <= Length()) return std::nullopt;
  return laying;
}

} // namespace stoneproof::finished
