// Convex clipping, one edge after the other. The only way in is clipped; tested in tests/reports/layout.
#include "reports/layout/clip.h"

namespace stoneproof::layout {

namespace {

Point between(const Point &a, const Point &b, double share) {
  return {a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share};
}

/// Keeps what lies where `inside(point)` is not negative; `inside` is linear.
template <class Inside>
std::vector<Point> cut(const std::vector<Point> &corners, Inside inside) {
  std::vector<Point> kept;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Point &a = corners[i], &b = corners[(i + 1) % corners.size()];
    const Length at_a = inside(a), at_b = inside(b);
    if (at_a >= Length{}) kept.push_back(a);
    if ((at_a > Length{} && at_b < Length{}) || (at_a < Length{} && at_b > Length{}))
      kept.push_back(between(a, b, at_a / (at_a - at_b)));
  }
  return kept;
}

} // namespace

std::vector<Point> clipped(std::vector<Point> corners, const Rect &rect) {
  corners = cut(corners, [&](const Point &p) { return p.x - rect.left(); });
  corners = cut(corners, [&](const Point &p) { return rect.right() - p.x; });
  corners = cut(corners, [&](const Point &p) { return p.y - rect.top(); });
  corners = cut(corners, [&](const Point &p) { return rect.bottom() - p.y; });
  if (corners.size() < 3) corners.clear();
  return corners;
}

} // namespace stoneproof::layout
