// The sizes of the small copies. The only way in is copy_orders; tested in tests/engine/run.
#include "engine/run/copy_order.h"

#include <algorithm>
#include <cmath>

namespace stoneproof {

namespace {

/// What one frame asks of its picture: a part, and small pixels per picture pixel on each axis.
struct Wish {
  PixelRect part;
  double scale_x, scale_y;
};

PixelRect joined(const PixelRect &a, const PixelRect &b) {
  const double x = std::min(a.x, b.x), y = std::min(a.y, b.y);
  return {x, y, std::max(a.x + a.width, b.x + b.width) - x, std::max(a.y + a.height, b.y + b.height) - y};
}

Wish joined(const Wish &a, const Wish &b) {
  return {joined(a.part, b.part), std::max(a.scale_x, b.scale_x), std::max(a.scale_y, b.scale_y)};
}

/// Frames that share a picture share its copy; where one shows all and another a tight crop, the copy for
/// both would grow without end. Beyond this it gets coarser: 4 megapixels fill the whole drawing of a page
/// twice over.
constexpr double most_pixels = 4e6;

PreviewOrder order_of(Wish wish) {
  const double pixels = wish.part.width * wish.scale_x * wish.part.height * wish.scale_y;
  const double coarser = pixels > most_pixels ? std::sqrt(most_pixels / pixels) : 1;
  const auto small = [&](double count, double scale) {
    return static_cast<int>(std::clamp(std::ceil(count * scale * coarser), 1.0, most_pixels));
  };
  return {wish.part, small(wish.part.width, wish.scale_x), small(wish.part.height, wish.scale_y)};
}

} // namespace

std::vector<std::optional<PreviewOrder>> copy_orders(const Evidence &evidence,
                                                     std::optional<Density> density) {
  std::vector<std::optional<Wish>> wishes(evidence.book.pictures.size());
  for (const PlacedFrame &placed : evidence.frames) {
    if (!density || !placed.laid || !placed.laid->visible) continue;
    const Wish wish{placed.laid->shown, std::min(1.0, *density / placed.laid->density_x),
                    std::min(1.0, *density / placed.laid->density_y)};
    auto &known = wishes[*placed.picture];
    known = known ? joined(*known, wish) : wish;
  }
  std::vector<std::optional<PreviewOrder>> orders;
  for (const auto &wish : wishes) orders.push_back(wish ? std::optional(order_of(*wish)) : std::nullopt);
  return orders;
}

} // namespace stoneproof
