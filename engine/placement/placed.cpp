// Frames on their pages: turning, boxes, and the shares that are cut away or left uncovered. The only ways in
// are place_frame, place_of and place_frames; tested in tests/engine/placement and, against mapping single
// points one by one, in tests/outside.
#include "engine/placement/placed.h"

#include <cmath>
#include <numbers>

namespace stoneproof {

namespace {

/// Sine and cosine, exact at quarter turns so that an upright page stays upright to the tick.
std::pair<double, double> sine_cosine(Turn turn) {
  const double degrees = std::remainder(turn.degrees, 360.0);
  if (degrees == 0) return {0, 1};
  if (degrees == 90) return {1, 0};
  if (degrees == -90) return {-1, 0};
  if (std::abs(degrees) == 180) return {0, -1};
  const double radians = degrees * std::numbers::pi / 180;
  return {std::sin(radians), std::cos(radians)};
}

Corners mirrored(Corners corners, Mirror mirror) {
  if (mirror == Mirror::horizontal) return {corners[1], corners[0], corners[3], corners[2]};
  if (mirror == Mirror::vertical) return {corners[3], corners[2], corners[1], corners[0]};
  return corners;
}

double area(const Rect &rect) { return rect.width.mm() * rect.height.mm(); }

/// Whether a part fills the frame but for the rounding of layouts.
bool covers(const Rect &part, const Rect &frame) {
  const Reach gap = reach_past(frame, part);
  return std::max({gap.top, gap.bottom, gap.left, gap.right}) <= layout_rounding;
}

} // namespace

Corners turned(const Rect &rect, Turn turn, Point centre) {
  const auto [sine, cosine] = sine_cosine(turn);
  const auto spun = [&](Length x, Length y) {
    const double dx = static_cast<double>((x - centre.x).ticks()),
                 dy = static_cast<double>((y - centre.y).ticks());
    return Point{centre.x + Length::nearest(dx * cosine - dy * sine),
                 centre.y + Length::nearest(dx * sine + dy * cosine)};
  };
  return {spun(rect.left(), rect.top()), spun(rect.right(), rect.top()), spun(rect.right(), rect.bottom()),
          spun(rect.left(), rect.bottom())};
}

PlacedFrame place_frame(const Frame &frame, std::optional<PixelSize> size) {
  PlacedFrame placed;
  placed.picture = frame.picture;
  placed.corners = turned(frame.rect, frame.turn, frame.rect.centre());
  placed.box = box_round(placed.corners);
  if (!frame.picture || !size) return placed;

  placed.laid = lay_picture(frame.rect, *size, frame.fit, frame.mirror);
  const Laid &laid = *placed.laid;
  placed.picture_corners = mirrored(turned(laid.picture, frame.turn, frame.rect.centre()), frame.mirror);
  const double shown = laid.visible ? area(*laid.visible) : 0;
  placed.cut_share = 1 - shown / area(laid.picture);
  const bool covered = laid.visible && covers(*laid.visible, frame.rect);
  placed.uncovered_share = covered ? 0 : 1 - shown / area(frame.rect);
  if (laid.visible) placed.picture_box = box_round(turned(*laid.visible, frame.turn, frame.rect.centre()));
  return placed;
}

Rect place_of(const PlacedFrame &placed, const PixelRect &part, PixelSize size) {
  const Point origin = placed.picture_corners[0];
  const auto along = [&](Point to, double share) {
    return std::pair(static_cast<double>((to.x - origin.x).ticks()) * share,
                     static_cast<double>((to.y - origin.y).ticks()) * share);
  };
  const auto on_page = [&](double x, double y) {
    const auto right = along(placed.picture_corners[1], x / static_cast<double>(size.width));
    const auto down = along(placed.picture_corners[3], y / static_cast<double>(size.height));
    return Point{origin.x + Length::nearest(right.first + down.first),
                 origin.y + Length::nearest(right.second + down.second)};
  };
  const double right = part.x + part.width, bottom = part.y + part.height;
  return box_round(Corners{on_page(part.x, part.y), on_page(right, part.y), on_page(right, bottom),
                           on_page(part.x, bottom)});
}

std::vector<PlacedFrame> place_frames(const Book &book, std::span<const std::optional<PixelSize>> sizes) {
  std::vector<PlacedFrame> all;
  for (std::size_t page = 0; page < book.pages.size(); ++page) {
    const auto &frames = book.pages[page].frames;
    for (std::size_t index = 0; index < frames.size(); ++index) {
      const auto &picture = frames[index].picture;
      PlacedFrame placed = place_frame(frames[index], picture ? sizes[*picture] : std::nullopt);
      placed.page = page;
      placed.frame = index;
      all.push_back(std::move(placed));
    }
  }
  return all;
}

} // namespace stoneproof
