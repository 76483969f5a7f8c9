// Plane geometry of a PDF page: points, matrices and convex outlines, in points of user space with y upwards
// (ISO 32000-1, 8.3).
#pragma once

#include <cmath>
#include <optional>
#include <vector>

namespace stoneproof::finished {

struct Spot {
  double x = 0, y = 0;
};

/// Maps (x, y) to (ax + cy + e, bx + dy + f).
struct Matrix {
  double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;

  Spot apply(Spot at) const { return {a * at.x + c * at.y + e, b * at.x + d * at.y + f}; }
  double determinant() const { return a * d - b * c; }
  bool finite() const {
    return std::isfinite(a) && std::isfinite(b) && std::isfinite(c) && std::isfinite(d) && std::isfinite(e) &&
           std::isfinite(f);
  }
  /// How much longer a line becomes, on average over the directions.
  double scale() const { return std::sqrt(std::abs(determinant())); }
};

/// First `first`, then `then`: the product as ISO 32000-1, 8.3.4 writes it.
constexpr Matrix operator*(const Matrix &first, const Matrix &then) {
  return {first.a * then.a + first.b * then.c,          first.a * then.b + first.b * then.d,
          first.c * then.a + first.d * then.c,          first.c * then.b + first.d * then.d,
          first.e * then.a + first.f * then.c + then.e, first.e * then.b + first.f * then.d + then.f};
}

/// The map back; its determinant must not be zero.
constexpr Matrix inverse(const Matrix &map) {
  const double determinant = map.a * map.d - map.b * map.c;
  const double a = map.d / determinant, b = -map.b / determinant;
  const double c = -map.c / determinant, d = map.a / determinant;
  return {a, b, c, d, -(map.e * a + map.f * c), -(map.e * b + map.f * d)};
}

/// An upright rectangle; `left` is never beyond `right`, nor `bottom` beyond `top`.
struct Box {
  double left = 0, bottom = 0, right = 0, top = 0;

  double width() const { return right - left; }
  double height() const { return top - bottom; }
  friend bool operator==(const Box &, const Box &) = default;
};

/// The box with these two corners.
Box box_of(Spot one, Spot other);

/// A convex outline, its corners in order either way round; fewer than three corners: nothing.
using Outline = std::vector<Spot>;

/// The outline of a box after a map.
Outline outline_of(const Box &box, const Matrix &map);

/// What two convex outlines share.
Outline shared_part(const Outline &one, const Outline &other);

double area_of(const Outline &outline);

/// The upright box round some points; nothing round none.
std::optional<Box> box_round(const std::vector<Spot> &points);

} // namespace stoneproof::finished
