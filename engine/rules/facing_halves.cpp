// Halves of a picture on facing pages. The only ways in are the functions of facing_halves.h; tested by
// tests/rules/halves-apart and tests/rules/mirror.test.cpp.
#include "engine/rules/facing_halves.h"

#include "engine/rules/edges.h"

#include <cmath>
#include <unordered_map>

namespace stoneproof {

namespace {

bool reaches_binding(const Evidence &evidence, const PlacedFrame &placed) {
  const PageSpace &space = evidence.space_of(placed);
  return space.bound && reach_past(placed.box, space.trim).at(*space.bound) >= -layout_rounding &&
         !off_page(placed.box, space);
}

struct Ticks {
  double x = 0, y = 0;
  friend Ticks operator-(Ticks a, Ticks b) { return {a.x - b.x, a.y - b.y}; }
  friend Ticks operator+(Ticks a, Ticks b) { return {a.x + b.x, a.y + b.y}; }
  friend Ticks operator*(Ticks a, double by) { return {a.x * by, a.y * by}; }
};

/// A picture on its page: its top left pixel, and its edges from there.
struct Axes {
  Ticks origin, along, down;
};

Axes axes_of(const PlacedFrame &placed) {
  const auto corner = [&](std::size_t i) {
    const Point &point = placed.picture_corners[i];
    return Ticks{static_cast<double>(point.x.ticks()), static_cast<double>(point.y.ticks())};
  };
  return {corner(0), corner(1) - corner(0), corner(3) - corner(0)};
}

/// Where the point that lies at `at` of one picture lies of the other.
Ticks same_point(const Axes &from, const Axes &to, Ticks at) {
  const Ticks inside = at - from.origin;
  const double area = from.along.x * from.down.y - from.along.y * from.down.x;
  const double along = (inside.x * from.down.y - inside.y * from.down.x) / area;
  const double down = (from.along.x * inside.y - from.along.y * inside.x) / area;
  return to.origin + to.along * along + to.down * down;
}

double larger_by(Ticks a, Ticks b) {
  const double first = std::hypot(a.x, a.y), second = std::hypot(b.x, b.y);
  return std::max(first, second) / std::min(first, second) - 1;
}

} // namespace

std::vector<FacingHalves> facing_halves(const Evidence &evidence) {
  std::vector<FacingHalves> halves;
  std::unordered_map<std::size_t, std::size_t> on_left; // the first frame of each picture
  std::optional<std::size_t> left_page;
  for (std::size_t i = 0; i < evidence.frames.size(); ++i) {
    const PlacedFrame &placed = evidence.frames[i];
    const Page &page = evidence.page_of(placed);
    const Frame &frame = evidence.frame_of(placed);
    if (page.kind != PageKind::page || !placed.laid || !reaches_binding(evidence, placed)) continue;
    if (evidence.space_of(placed).bound == PageSide::right) { // a left page
      if (left_page != placed.page) on_left.clear();
      left_page = placed.page;
      on_left.try_emplace(*placed.picture, i);
      continue;
    }
    if (!left_page || placed.page != *left_page + 1 ||
        page.number != evidence.book.pages[*left_page].number + 1)
      continue;
    const auto found = on_left.find(*placed.picture);
    if (found == on_left.end()) continue;
    const PlacedFrame &left = evidence.frames[found->second];
    const Frame &before = evidence.frame_of(left);
    if (before.mirror != frame.mirror ||
        std::remainder(before.turn.degrees - frame.turn.degrees, 360.0) != 0 ||
        left.box.top() >= placed.box.bottom() || placed.box.top() >= left.box.bottom())
      continue;
    halves.push_back({found->second, i});
  }
  return halves;
}

HalvesMeet how_they_meet(const Evidence &evidence, const FacingHalves &halves) {
  const PlacedFrame &left = evidence.frames[halves.left], &right = evidence.frames[halves.right];
  const Axes from = axes_of(left), to = axes_of(right);
  const Length top = std::max(left.box.top(), right.box.top());
  const Length bottom = std::min(left.box.bottom(), right.box.bottom());
  const Ticks fold{static_cast<double>(evidence.space_of(left).trim.right().ticks()),
                   static_cast<double>(((top + bottom) / 2).ticks())};
  const Ticks shown = same_point(from, to, fold);
  HalvesMeet meet;
  meet.scale = std::max(larger_by(from.along, to.along), larger_by(from.down, to.down));
  meet.away = Length::nearest(shown.x);
  meet.lower = Length::nearest(shown.y - fold.y);
  return meet;
}

} // namespace stoneproof
