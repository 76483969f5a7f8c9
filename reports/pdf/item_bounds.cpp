// Finds the bounds of items. The only way in is bounds_of(); tested in
// tests/reports/pdf/page_structure.test.cpp.
#include "reports/pdf/item_bounds.h"

#include <array>

namespace stoneproof::pdf {
namespace {

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
  Rect operator()(const layout::LineItem &item) const { return box_round(std::array{item.from, item.to}); }
  Rect operator()(const layout::ShapeItem &item) const { return box_round(item.corners); }
  Rect operator()(const layout::PictureItem &item) const { return box_round(item.clip); }
  Rect operator()(const layout::OwnPageItem &item) const { return item.clip; }
};

} // namespace

Rect bounds_of(const layout::Item &item, const Typesetter &typesetter) {
  return std::visit(Bounds{typesetter}, item);
}

} // namespace stoneproof::pdf
