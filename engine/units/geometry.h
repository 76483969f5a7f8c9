// Points, sizes and rectangles on paper and in a picture. x runs to the right, y runs down.
#pragma once

#include "engine/units/length.h"

#include <algorithm>
#include <array>
#include <optional>
#include <span>

namespace stoneproof {

struct Point {
  Length x, y;
  friend constexpr bool operator==(const Point &, const Point &) = default;
};

struct Size {
  Length width, height;
  friend constexpr bool operator==(const Size &, const Size &) = default;
};

struct Rect {
  Length x, y, width, height;
  constexpr Length left() const { return x; }
  constexpr Length top() const { return y; }
  constexpr Length right() const { return x + width; }
  constexpr Length bottom() const { return y + height; }
  constexpr Point centre() const { return {x + width / 2, y + height / 2}; }
  constexpr Size size() const { return {width, height}; }
  constexpr Rect grown(Length by) const { return {x - by, y - by, width + by * 2, height + by * 2}; }
  friend constexpr bool operator==(const Rect &, const Rect &) = default;
};

/// The part that two rectangles share, or nothing when they share no area.
constexpr std::optional<Rect> shared_part(const Rect &a, const Rect &b) {
  const Length left = std::max(a.left(), b.left()), top = std::max(a.top(), b.top());
  const Length right = std::min(a.right(), b.right()), bottom = std::min(a.bottom(), b.bottom());
  if (left >= right || top >= bottom) return std::nullopt;
  return Rect{left, top, right - left, bottom - top};
}

/// The four corners of a rectangle after a turn, in the order top left, top right, bottom right, bottom left
/// as they were before it.
using Corners = std::array<Point, 4>;

/// The upright box round some points; nothing round none.
constexpr Rect box_round(std::span<const Point> points) {
  if (points.empty()) return {};
  Point low = points[0], high = points[0];
  for (const Point &point : points) {
    low = {std::min(low.x, point.x), std::min(low.y, point.y)};
    high = {std::max(high.x, point.x), std::max(high.y, point.y)};
  }
  return {low.x, low.y, high.x - low.x, high.y - low.y};
}

/// A clockwise turn in degrees, any angle.
struct Turn {
  double degrees = 0;
  friend constexpr bool operator==(const Turn &, const Turn &) = default;
};

/// A rectangle of picture pixels, in the picture as it is seen (its stored orientation applied). Edges may
/// lie inside a pixel.
struct PixelRect {
  double x = 0, y = 0, width = 0, height = 0;
  friend constexpr bool operator==(const PixelRect &, const PixelRect &) = default;
};

struct PixelSize {
  std::int64_t width = 0, height = 0;
  friend constexpr bool operator==(const PixelSize &, const PixelSize &) = default;
};

} // namespace stoneproof
