// Finds the bounds of items. The only way in is bounds_of(); tested in
// tests/reports/pdf/page_structure.test.cpp.
#include "reports/pdf/item_bounds.h"

#include <algorithm>
#include <array>

namespace stoneproof::pdf {
namespace {

template <class Points>
Rect round(const Points &points) {
  if (points.empty()) return {};
  const auto across = [](Point a, Point b) { return a.x < b.x; };
  const auto down = [](Point a, Point b) { return a.y < b.y; };
  const auto [left, right] = std::minmax_element(points.begin(), points.end(), across);
  const auto [top, bottom] = std::minmax_element(points.begin(), points.end(), down);
  return {left->x, top->y, right->x - left->x, bottom->y - top->y};
}

struct Bounds {
  const Typesetter &typesetter;

  Rect operator()(const layout::TextItem &item) const {
    const Length above = typesetter.ascent(item.face, item.size);
    const Length high = above + typesetter.descent(item.face, item.size);
    const Length wide = typesetter.width(item.face, item.size, item.text);
    // A line that runs down has its ascenders on the right.
    if (item.down) return {item.at.x - (high - above), item.at.y, high, wide};
    return {item.at.x, item.at.y - above, wide, high};
  }
  Rect operator()(const layout::LineItem &item) const { return round(std::array{item.from, item.to}); }
  Rect operator()(const layout::ShapeItem &item) const { return round(item.corners); }
  Rect operator()(const layout::PictureItem &item) const { return round(item.clip); }
};

} // namespace

Rect bounds_of(const layout::Item &item, const Typesetter &typesetter) {
  return std::visit(Bounds{typesetter}, item);
}

} // namespace stoneproof::pdf
