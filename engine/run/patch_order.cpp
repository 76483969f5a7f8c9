// The places of the true-size patches. The only ways in are the functions of patch_order.h; tested in
// tests/engine/run.
#include "engine/run/patch_order.h"

#include <algorithm>
#include <cmath>

namespace stoneproof {

namespace {

struct Interval {
  double begin, length;
};

/// As much of `length` round `centre` as lies inside `room`, moved where it would pass an end.
Interval inside(Interval room, double centre, double length) {
  const double least = std::min(length, room.length);
  return {std::clamp(centre - least / 2, room.begin, room.begin + room.length - least), least};
}

/// The point of the picture that is looked at first, in its pixels.
struct Middle {
  double x, y;
};
Middle middle_of(const Frame &frame, const PixelRect &shown, PixelSize size) {
  if (const auto *fill = std::get_if<Fill>(&frame.fit); fill && fill->focus_said)
    return {fill->focus_x * static_cast<double>(size.width),
            fill->focus_y * static_cast<double>(size.height)};
  return {shown.x + shown.width / 2, shown.y + shown.height / 2};
}

PatchOrder order_of(const Evidence &evidence, std::size_t index, const PatchWish &wish) {
  const PlacedFrame &placed = evidence.frames[index];
  const Laid &laid = *placed.laid;
  const Middle middle =
      middle_of(evidence.frame_of(placed), laid.shown, evidence.pictures[*placed.picture].facts->size);
  const Interval x = inside({laid.shown.x, laid.shown.width}, middle.x, (laid.density_x * wish.side).count);
  const Interval y = inside({laid.shown.y, laid.shown.height}, middle.y, (laid.density_y * wish.side).count);
  const auto pixels = [&](double count, Density density) {
    return std::max(1, static_cast<int>(std::ceil(count * std::min(1.0, wish.most / density))));
  };
  return {{{x.begin, y.begin, x.length, y.length},
           pixels(x.length, laid.density_x),
           pixels(y.length, laid.density_y)},
          index};
}

} // namespace

std::vector<std::optional<std::size_t>> coarsest_frames(const Evidence &evidence) {
  std::vector<std::optional<std::size_t>> coarsest(evidence.book.pictures.size());
  for (std::size_t i = 0; i < evidence.frames.size(); ++i) {
    const PlacedFrame &placed = evidence.frames[i];
    if (!placed.laid || !placed.laid->visible) continue;
    auto &known = coarsest[*placed.picture];
    if (!known || placed.laid->effective() < evidence.frames[*known].laid->effective()) known = i;
  }
  return coarsest;
}

std::vector<std::optional<PatchOrder>> patch_orders(const Evidence &evidence,
                                                    const std::optional<PatchWish> &wish) {
  std::vector<std::optional<PatchOrder>> orders;
  for (const auto &frame : coarsest_frames(evidence))
    orders.push_back(frame && wish ? std::optional(order_of(evidence, *frame, *wish)) : std::nullopt);
  return orders;
}

Size printed_size(const Patch &patch, const Evidence &evidence) {
  const Laid &laid = *evidence.frames[patch.frame].laid;
  return {Pixels{patch.copy.part.width} / laid.density_x, Pixels{patch.copy.part.height} / laid.density_y};
}

} // namespace stoneproof
