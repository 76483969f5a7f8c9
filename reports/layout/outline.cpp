// Cutting and moving of convex outlines. The only ways in are the functions of outline.h; tested in
// tests/reports/layout.
#include "reports/layout/outline.h"

#include "reports/layout/clip.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Length step = 0.9_mm;      ///< a line of the heaviest grade, and white beside it
constexpr Length same_edge = 0.6_mm; ///< two outlines that run so close look like one

bool coincide(const Rect &a, const Rect &b) {
  const auto close = [](Length p, Length q) { return std::max(p - q, q - p) <= same_edge; };
  return close(a.left(), b.left()) && close(a.right(), b.right()) && close(a.top(), b.top()) &&
         close(a.bottom(), b.bottom());
}

bool within(const Rect &inner, const Rect &outer) {
  return inner.left() >= outer.left() && inner.right() <= outer.right() && inner.top() >= outer.top() &&
         inner.bottom() <= outer.bottom();
}

/// A side, moved along its outer normal: a point on it and its direction, in millimetres.
struct Side {
  double x, y, dx, dy;
};

std::vector<Side> moved_sides(const Outline &shape, double by) {
  std::vector<Side> sides;
  for (std::size_t i = 0; i < shape.size(); ++i) {
    const Point &a = shape[i], &b = shape[(i + 1) % shape.size()];
    const double dx = (b.x - a.x).mm(), dy = (b.y - a.y).mm(), length = std::hypot(dx, dy);
    if (length < 0.01) continue;
    sides.push_back({a.x.mm() + dy / length * by, a.y.mm() - dx / length * by, dx / length, dy / length});
  }
  return sides;
}

} // namespace

Outline outline_within(const Outline &place, const Rect &room) {
  Outline shown = clipped(place, room);
  if (!shown.empty()) return shown;
  const Point middle = box_round(place).centre();
  return {{std::clamp(middle.x, room.left(), room.right()), std::clamp(middle.y, room.top(), room.bottom())}};
}

Outline offset(const Outline &shape, Length by) {
  const Rect box = box_round(shape);
  if (std::min(box.width, box.height) <= std::max(-by * 3, Length{})) return shape;
  const std::vector<Side> sides = moved_sides(shape, by.mm());
  Outline moved;
  for (std::size_t i = 0; i < sides.size(); ++i) {
    const Side &before = sides[(i + sides.size() - 1) % sides.size()], &side = sides[i];
    const double turn = before.dx * side.dy - before.dy * side.dx;
    double along = 0; // two sides in one line meet where the second begins
    if (std::abs(turn) > 1e-6)
      along = (before.dx * (before.y - side.y) - before.dy * (before.x - side.x)) / turn;
    moved.push_back({Length::of_mm(side.x + side.dx * along), Length::of_mm(side.y + side.dy * along)});
  }
  return moved;
}

std::vector<Outline> side_by_side(std::vector<Outline> shapes, const std::vector<Grade> &lines,
                                  const Rect &room) {
  const std::vector<Outline> places = shapes;
  for (std::size_t i = 0; i < shapes.size(); ++i) {
    const Rect box = box_round(places[i]);
    std::set<Grade> others; // in whose lines the same place is outlined already
    for (std::size_t before = 0; before < i && !others.count(lines[i]); ++before)
      if (coincide(box, box_round(places[before]))) {
        others.insert(lines[before]);
        if (lines[before] == lines[i]) shapes[i] = shapes[before];
      }
    if (others.empty() || others.count(lines[i])) continue;
    const Length out = step * static_cast<std::int64_t>(others.size());
    shapes[i] = offset(places[i], within(box.grown(out), room) ? out : -out);
  }
  return shapes;
}

} // namespace stoneproof::layout
