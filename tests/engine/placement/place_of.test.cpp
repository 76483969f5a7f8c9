// Parts of pictures on the page, against mapping their points one by one through frame, mirror and turn.
#include "engine/placement/placed.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

struct OnPage {
  double x, y; ///< mm
};

/// Where a point of the picture lies that comes to lie, before mirror and turn, in the rectangle `laid`.
OnPage mapped(double x, double y, PixelSize size, const Rect &laid, const Frame &frame) {
  double across = x / static_cast<double>(size.width), down = y / static_cast<double>(size.height);
  if (frame.mirror == Mirror::horizontal) across = 1 - across;
  if (frame.mirror == Mirror::vertical) down = 1 - down;
  const double left = laid.x.mm() + across * laid.width.mm(), top = laid.y.mm() + down * laid.height.mm();
  const double centre_x = frame.rect.x.mm() + frame.rect.width.mm() / 2,
               centre_y = frame.rect.y.mm() + frame.rect.height.mm() / 2;
  const double angle = frame.turn.degrees * std::numbers::pi / 180;
  return {centre_x + (left - centre_x) * std::cos(angle) - (top - centre_y) * std::sin(angle),
          centre_y + (left - centre_x) * std::sin(angle) + (top - centre_y) * std::cos(angle)};
}

} // namespace

TEST_CASE("the box round a part of an upright picture, by hand") {
  Frame frame;
  frame.rect = {20_mm, 30_mm, 60_mm, 40_mm};
  frame.picture = 0;
  const PixelSize size{600, 400};
  const PixelRect part{100, 50, 200, 100}; // 10 px are 1 mm
  const auto box = [&](Mirror mirror, double degrees) {
    frame.mirror = mirror;
    frame.turn = {degrees};
    return place_of(place_frame(frame, size), part, size);
  };
  CHECK(box(Mirror::none, 0) == Rect{30_mm, 35_mm, 20_mm, 10_mm});
  CHECK(box(Mirror::horizontal, 0) == Rect{50_mm, 35_mm, 20_mm, 10_mm});
  CHECK(box(Mirror::vertical, 0) == Rect{30_mm, 55_mm, 20_mm, 10_mm});
  CHECK(box(Mirror::none, 180) == Rect{50_mm, 55_mm, 20_mm, 10_mm});
  // Clockwise about (50, 50) mm: what lay 20 to the left and 15 above comes to lie 15 to the right, 20 above.
  CHECK(box(Mirror::none, 90) == Rect{55_mm, 30_mm, 10_mm, 20_mm});
}

TEST_CASE("the box round a part is the box round its four corners mapped one by one") {
  std::mt19937 random(2024);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  for (int i = 0; i < 2000; ++i) {
    const PixelSize size{static_cast<std::int64_t>(between(1, 9000)),
                         static_cast<std::int64_t>(between(1, 9000))};
    const auto width = static_cast<double>(size.width), height = static_cast<double>(size.height);
    Frame frame;
    frame.picture = 0;
    frame.rect = {Length::of_mm(between(-50, 300)), Length::of_mm(between(-50, 300)),
                  Length::of_mm(between(5, 300)), Length::of_mm(between(5, 300))};
    frame.turn = {i % 3 == 0 ? 90.0 * static_cast<double>(random() % 4) : between(-360, 360)};
    frame.mirror = std::array{Mirror::none, Mirror::horizontal, Mirror::vertical}[random() % 3];
    const Fit fits[] = {
        Fill{between(0, 1), between(0, 1)}, Inside{},
        CropShare{between(-0.2, 0.5), between(-0.2, 0.5), between(0.1, 0.6), between(0.1, 0.6)},
        PictureAt{{Length::of_mm(between(-50, 300)), Length::of_mm(between(-50, 300)),
                   Length::of_mm(between(5, 300)), Length::of_mm(between(5, 300))}}};
    frame.fit = fits[random() % 4];
    const PixelRect part{between(0, width), between(0, height), between(0, width), between(0, height)};

    const PlacedFrame placed = place_frame(frame, size);
    const Rect box = place_of(placed, part, size);
    double left = std::numeric_limits<double>::infinity(), top = left, right = -left, bottom = -left;
    for (const double x : {part.x, part.x + part.width})
      for (const double y : {part.y, part.y + part.height}) {
        const OnPage point = mapped(x, y, size, placed.laid->picture, frame);
        left = std::min(left, point.x), right = std::max(right, point.x);
        top = std::min(top, point.y), bottom = std::max(bottom, point.y);
      }
    CAPTURE(i, frame.turn.degrees);
    // Corners are rounded to ticks; a part may reach twice as far as they are apart.
    const double some_ticks = Length::of_ticks(8).mm();
    CHECK(box.left().mm() == Approx(left).margin(some_ticks));
    CHECK(box.top().mm() == Approx(top).margin(some_ticks));
    CHECK(box.right().mm() == Approx(right).margin(some_ticks));
    CHECK(box.bottom().mm() == Approx(bottom).margin(some_ticks));
  }
}

TEST_CASE("what a frame shows is placed where the frame shows it") {
  std::mt19937 random(7);
  for (int i = 0; i < 300; ++i) {
    const PixelSize size{static_cast<std::int64_t>(1 + random() % 5000),
                         static_cast<std::int64_t>(1 + random() % 5000)};
    Frame frame;
    frame.picture = 0;
    frame.rect = {20_mm, 30_mm, Length::of_mm(static_cast<double>(20 + random() % 100)), 70_mm};
    frame.turn = {90.0 * static_cast<double>(random() % 4)};
    frame.mirror = std::array{Mirror::none, Mirror::horizontal, Mirror::vertical}[random() % 3];
    frame.fit = CropShare{0.1, 0.2, 0.5, 0.7};
    const PlacedFrame placed = place_frame(frame, size);
    const Rect box = place_of(placed, placed.laid->shown, size);
    CAPTURE(i, frame.turn.degrees);
    CHECK(box.left().mm() == Approx(placed.picture_box->left().mm()).margin(1e-4));
    CHECK(box.top().mm() == Approx(placed.picture_box->top().mm()).margin(1e-4));
    CHECK(box.right().mm() == Approx(placed.picture_box->right().mm()).margin(1e-4));
    CHECK(box.bottom().mm() == Approx(placed.picture_box->bottom().mm()).margin(1e-4));
  }
}

TEST_CASE("parts of absurd frames give a place, never a trap") {
  for (const double far : {1e308, -1e308, std::numeric_limits<double>::infinity()}) {
    Frame frame;
    frame.picture = 0;
    frame.rect = {Length::of_mm(far), Length::of_mm(far), Length::of_mm(1e300), Length::of_mm(1e300)};
    frame.fit = CropShare{0.1, 0.1, 1e-9, 1e-9};
    const PixelSize size{40'000, 40'000};
    const Rect box = place_of(place_frame(frame, size), {0, 0, 40'000, 40'000}, size);
    CHECK(box.width >= Length());
    CHECK(box.height >= Length());
  }
}
