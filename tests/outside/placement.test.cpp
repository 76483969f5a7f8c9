// Placement against a slow independent reference: points of the page are mapped one by one to picture pixels
// through matrices written here from the words of the description, in doubles and millimetres, and every
// measure is taken by counting points or by differences between neighbours. Nothing of engine/placement is
// used to reckon.
#include "engine/placement/placed.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <string>

using namespace stoneproof;

namespace {

struct Spot {
  double x, y;
};

/// x' = a x + c y + e, y' = b x + d y + f.
struct Matrix {
  double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;
  Spot at(Spot p) const { return {a * p.x + c * p.y + e, b * p.x + d * p.y + f}; }
};

/// First `first`, then `then`.
Matrix after(const Matrix &then, const Matrix &first) {
  return {then.a * first.a + then.c * first.b,          then.b * first.a + then.d * first.b,
          then.a * first.c + then.c * first.d,          then.b * first.c + then.d * first.d,
          then.a * first.e + then.c * first.f + then.e, then.b * first.e + then.d * first.f + then.f};
}
Matrix moved(double x, double y) { return {1, 0, 0, 1, x, y}; }
Matrix scaled(double x, double y) { return {x, 0, 0, y, 0, 0}; }
Matrix turned_by(double degrees) {
  const double t = degrees * std::numbers::pi / 180;
  return {std::cos(t), std::sin(t), -std::sin(t), std::cos(t), 0, 0};
}
Matrix inverse(const Matrix &m) {
  const double det = m.a * m.d - m.b * m.c;
  return {m.d / det,
          -m.b / det,
          -m.c / det,
          m.a / det,
          (m.c * m.f - m.d * m.e) / det,
          (m.b * m.e - m.a * m.f) / det};
}

/// One random placement, in the words of the description and in millimetres.
struct Words {
  double x, y, width, height, turn;
  Mirror mirror;
  std::int64_t px, py;
  Fit fit;
};

/// Millimetres of the upright frame's own plane for each pixel, before turn and mirror; picture pixel (0, 0)
/// at (e, f).
struct FlatFor {
  const Words &words;
  double px = static_cast<double>(words.px), py = static_cast<double>(words.py);

  /// Moves the picture so that no side of the frame is bare, if it can be.
  static double held(double at, double length, double from, double to) {
    if (at > from) at = from;
    if (at + length < to) at = to - length;
    return at;
  }
  Matrix operator()(const Fill &fill) const {
    const double s = words.width / px > words.height / py ? words.width / px : words.height / py;
    const double x = words.x + words.width / 2 - fill.focus_x * px * s;
    const double y = words.y + words.height / 2 - fill.focus_y * py * s;
    return {s,
            0,
            0,
            s,
            held(x, px * s, words.x, words.x + words.width),
            held(y, py * s, words.y, words.y + words.height)};
  }
  Matrix operator()(const Inside &) const {
    const double s = words.width / px < words.height / py ? words.width / px : words.height / py;
    return {s, 0, 0, s, words.x + (words.width - px * s) / 2, words.y + (words.height - py * s) / 2};
  }
  Matrix operator()(const CropShare &crop) const {
    return (*this)(CropPixels{{crop.x * px, crop.y * py, crop.width * px, crop.height * py}});
  }
  Matrix operator()(const CropPixels &crop) const {
    const Matrix to_corner = moved(-crop.part.x, -crop.part.y);
    const Matrix stretch = scaled(words.width / crop.part.width, words.height / crop.part.height);
    return after(moved(words.x, words.y), after(stretch, to_corner));
  }
  Matrix operator()(const PictureAt &at) const {
    return after(moved(at.rect.x.mm(), at.rect.y.mm()),
                 scaled(at.rect.width.mm() / px, at.rect.height.mm() / py));
  }
};

/// A mirror flips the frame's content about the frame's middle; a picture put on a rectangle flips within it.
Matrix flip_of(const Words &words) {
  double left = words.x, top = words.y, width = words.width, height = words.height;
  if (const auto *at = std::get_if<PictureAt>(&words.fit)) {
    left = at->rect.x.mm(), top = at->rect.y.mm(), width = at->rect.width.mm(), height = at->rect.height.mm();
  }
  if (words.mirror == Mirror::horizontal) return {-1, 0, 0, 1, 2 * left + width, 0};
  if (words.mirror == Mirror::vertical) return {1, 0, 0, -1, 0, 2 * top + height};
  return {};
}

/// Turns about the middle of the frame.
Matrix turn_of(const Words &words) {
  const double x = words.x + words.width / 2, y = words.y + words.height / 2;
  return after(moved(x, y), after(turned_by(words.turn), moved(-x, -y)));
}

Matrix page_of_pixel(const Words &words) {
  return after(turn_of(words), after(flip_of(words), std::visit(FlatFor{words}, words.fit)));
}

class Maker {
public:
  Words next() {
    Words words{};
    words.x = between(-50, 150), words.y = between(-50, 150);
    words.width = between(10, 200), words.height = between(10, 200);
    constexpr double usual[] = {0, 90, 180, 270, -90};
    words.turn = whole(0, 2) == 0 ? usual[whole(0, 4)] : between(-400, 400);
    words.mirror = std::array{Mirror::none, Mirror::horizontal, Mirror::vertical}[whole(0, 2)];
    words.px = static_cast<std::int64_t>(whole(50, 9000)),
    words.py = static_cast<std::int64_t>(whole(50, 9000));
    words.fit = fit(words);
    return words;
  }

private:
  double between(double low, double high) { return std::uniform_real_distribution(low, high)(engine_); }
  std::size_t whole(std::size_t low, std::size_t high) {
    return std::uniform_int_distribution<std::size_t>(low, high)(engine_);
  }
  Fit fit(const Words &words) {
    const double x = between(0, 0.8), y = between(0, 0.8);
    const double px = static_cast<double>(words.px), py = static_cast<double>(words.py);
    switch (whole(0, 4)) {
    case 0: return Fill{between(0, 1), between(0, 1)};
    case 1: return Inside{};
    case 2: return CropShare{x, y, between(0.05, 1 - x), between(0.05, 1 - y)};
    case 3: return CropPixels{{x * px, y * py, between(0.05, 1.2) * px, between(0.05, 1.2) * py}};
    default:
      return PictureAt{{Length::of_mm(words.x + between(-60, 60)), Length::of_mm(words.y + between(-60, 60)),
                        Length::of_mm(between(10, 250)), Length::of_mm(between(10, 250))}};
    }
  }
  std::mt19937_64 engine_{20260};
};

PlacedFrame placed_by_engine(const Words &words) {
  Frame frame;
  frame.rect = {Length::of_mm(words.x), Length::of_mm(words.y), Length::of_mm(words.width),
                Length::of_mm(words.height)};
  frame.turn = {words.turn};
  frame.mirror = words.mirror;
  frame.fit = words.fit;
  frame.picture = 0;
  return place_frame(frame, PixelSize{words.px, words.py});
}

std::string told(const Words &words) {
  return "frame " + std::to_string(words.x) + ' ' + std::to_string(words.y) + ' ' +
         std::to_string(words.width) + ' ' + std::to_string(words.height) + " mm, turn " +
         std::to_string(words.turn) + ", mirror " + std::string(word_of(mirror_words, words.mirror)) +
         ", picture " + std::to_string(words.px) + " x " + std::to_string(words.py) + ", fit " +
         std::to_string(words.fit.index());
}

double distance(Spot a, Spot b) { return std::hypot(a.x - b.x, a.y - b.y); }

constexpr double tick_mm = 1.0 / 360'000;
/// Lengths in the engine are whole ticks: a point may be a few of them off, more where a small crop enlarges
/// them.
constexpr double few_ticks = 60 * tick_mm;

/// What sampling a frame finds: points in an even grid over it, each mapped back to the picture.
struct Sampled {
  double bare = 0;                                                   ///< share of the points without picture
  double left = 1e300, top = 1e300, right = -1e300, bottom = -1e300; ///< pixels seen, over covered points
  double page_left = 1e300, page_top = 1e300, page_right = -1e300, page_bottom = -1e300; ///< covered points
};

Sampled sample(const Words &words, int steps) {
  const Matrix back = inverse(page_of_pixel(words)), turn = turn_of(words);
  Sampled seen;
  int bare = 0;
  for (int row = 0; row < steps; ++row)
    for (int column = 0; column < steps; ++column) {
      const Spot page = turn.at(
          {words.x + words.width * (column + 0.5) / steps, words.y + words.height * (row + 0.5) / steps});
      const Spot pixel = back.at(page);
      const bool covered = pixel.x >= 0 && pixel.y >= 0 && pixel.x <= static_cast<double>(words.px) &&
                           pixel.y <= static_cast<double>(words.py);
      if (!covered) {
        ++bare;
        continue;
      }
      seen.left = std::min(seen.left, pixel.x), seen.right = std::max(seen.right, pixel.x);
      seen.top = std::min(seen.top, pixel.y), seen.bottom = std::max(seen.bottom, pixel.y);
      seen.page_left = std::min(seen.page_left, page.x), seen.page_right = std::max(seen.page_right, page.x);
      seen.page_top = std::min(seen.page_top, page.y), seen.page_bottom = std::max(seen.page_bottom, page.y);
    }
  seen.bare = static_cast<double>(bare) / (steps * steps);
  return seen;
}

void check_density(const Words &words, const PlacedFrame &placed) {
  const Matrix page = page_of_pixel(words);
  const Spot origin = page.at({0, 0});
  const double per_x = 25.4 / distance(page.at({1, 0}), origin),
               per_y = 25.4 / distance(page.at({0, 1}), origin);
  // A tick on the shortest length made here, 10 mm, is 3e-7 of it.
  CHECK(placed.laid->density_x.ppi() == Approx(per_x).epsilon(1e-6));
  CHECK(placed.laid->density_y.ppi() == Approx(per_y).epsilon(1e-6));
  CHECK(placed.laid->effective().ppi() == Approx(std::min(per_x, per_y)).epsilon(1e-6));
}

void check_corners(const Words &words, const PlacedFrame &placed) {
  const Matrix page = page_of_pixel(words);
  const double px = static_cast<double>(words.px), py = static_cast<double>(words.py);
  const Spot pixels[] = {{0, 0}, {px, 0}, {px, py}, {0, py}};
  const double x2 = words.x + words.width, y2 = words.y + words.height;
  const Spot frame[] = {{words.x, words.y}, {x2, words.y}, {x2, y2}, {words.x, y2}};
  for (std::size_t i = 0; i < 4; ++i) {
    const Spot corner = turn_of(words).at(frame[i]), picture = page.at(pixels[i]);
    CHECK(distance({placed.corners[i].x.mm(), placed.corners[i].y.mm()}, corner) < few_ticks);
    CHECK(distance({placed.picture_corners[i].x.mm(), placed.picture_corners[i].y.mm()}, picture) <
          few_ticks);
    CHECK(corner.x > placed.box.left().mm() - few_ticks);
    CHECK(corner.x < placed.box.right().mm() + few_ticks);
    CHECK(corner.y > placed.box.top().mm() - few_ticks);
    CHECK(corner.y < placed.box.bottom().mm() + few_ticks);
  }
}

/// How far some corners pass a trim, against the engine's word for its box.
void check_reach(const Words &words, const PlacedFrame &placed) {
  const double trim_width = 148, trim_height = 210; // A5, ISO 216
  Spot low{1e300, 1e300}, high{-1e300, -1e300};
  for (const double x : {words.x, words.x + words.width})
    for (const double y : {words.y, words.y + words.height}) {
      const Spot corner = turn_of(words).at({x, y});
      low = {std::min(low.x, corner.x), std::min(low.y, corner.y)};
      high = {std::max(high.x, corner.x), std::max(high.y, corner.y)};
    }
  const Reach reach = reach_past(placed.box, {{}, {}, Length::of_mm(trim_width), Length::of_mm(trim_height)});
  CHECK(reach.left.mm() == Approx(-low.x).margin(few_ticks));
  CHECK(reach.top.mm() == Approx(-low.y).margin(few_ticks));
  CHECK(reach.right.mm() == Approx(high.x - trim_width).margin(few_ticks));
  CHECK(reach.bottom.mm() == Approx(high.y - trim_height).margin(few_ticks));
}

/// Counting points knows a straight edge to one row of them, so two rows or columns are the most it can be
/// out.
void check_sampled(const Words &words, const PlacedFrame &placed) {
  constexpr int steps = 40;
  const Sampled seen = sample(words, steps);
  constexpr double grid = 2.0 / steps;
  CHECK(placed.uncovered_share == Approx(seen.bare).margin(2 * grid));
  const Laid &laid = *placed.laid;
  if (seen.bare == 1) return; // a sliver between two points, or nothing at all
  REQUIRE(laid.visible);
  // Each pixel step between two points, along the axes of the page before the turn, is the frame's share of a
  // step.
  const double step_x = words.width / 25.4 * laid.density_x.ppi() / steps,
               step_y = words.height / 25.4 * laid.density_y.ppi() / steps;
  CHECK(std::abs(laid.shown.x - seen.left) <= step_x * 1.01);
  CHECK(std::abs(laid.shown.x + laid.shown.width - seen.right) <= step_x * 1.01);
  CHECK(std::abs(laid.shown.y - seen.top) <= step_y * 1.01);
  CHECK(std::abs(laid.shown.y + laid.shown.height - seen.bottom) <= step_y * 1.01);
  // No covered point lies outside the box of the part that shows, and the box ends within a step of such a
  // point.
  const double step = std::hypot(words.width, words.height) / steps + few_ticks;
  const Rect &box = *placed.picture_box;
  CHECK((seen.page_left > box.left().mm() - few_ticks && seen.page_left < box.left().mm() + step));
  CHECK((seen.page_right < box.right().mm() + few_ticks && seen.page_right > box.right().mm() - step));
  CHECK((seen.page_top > box.top().mm() - few_ticks && seen.page_top < box.top().mm() + step));
  CHECK((seen.page_bottom < box.bottom().mm() + few_ticks && seen.page_bottom > box.bottom().mm() - step));
}

/// The share of the picture cut away: points in an even grid over the picture, each mapped forwards to the
/// frame.
void check_cut(const Words &words, const PlacedFrame &placed) {
  constexpr int steps = 40;
  const Matrix flat = after(flip_of(words), std::visit(FlatFor{words}, words.fit));
  int cut = 0;
  for (int row = 0; row < steps; ++row)
    for (int column = 0; column < steps; ++column) {
      const Spot spot = flat.at({static_cast<double>(words.px) * (column + 0.5) / steps,
                                 static_cast<double>(words.py) * (row + 0.5) / steps});
      const bool shows = spot.x >= words.x && spot.x <= words.x + words.width && spot.y >= words.y &&
                         spot.y <= words.y + words.height;
      cut += shows ? 0 : 1;
    }
  CHECK(placed.cut_share == Approx(static_cast<double>(cut) / (steps * steps)).margin(4.0 / steps));
}

} // namespace

TEST_CASE("placements agree with mapping points one by one") {
  Maker maker;
  int bare = 0, turned_askew = 0;
  for (int n = 0; n < 5000; ++n) {
    const Words words = maker.next();
    CAPTURE(n, told(words));
    const PlacedFrame placed = placed_by_engine(words);
    REQUIRE(placed.laid);
    check_density(words, placed);
    check_corners(words, placed);
    check_reach(words, placed);
    check_sampled(words, placed);
    check_cut(words, placed);
    bare += placed.uncovered_share > 0 ? 1 : 0;
    turned_askew += std::fmod(words.turn, 90) != 0 ? 1 : 0;
  }
  CHECK(bare > 500); // the placements were of every kind
  CHECK(turned_askew > 1000);
}
