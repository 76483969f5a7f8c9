// Frames turned and placed, worked by hand. Tests engine/placement/placed.cpp.
#include "engine/placement/placed.h"
#include "tests/support/catch.h"

#include <array>
#include <cmath>
#include <limits>

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

constexpr Rect mm(int x, int y, int width, int height) {
  return {1_mm * x, 1_mm * y, 1_mm * width, 1_mm * height};
}
constexpr Point at(int x, int y) { return {1_mm * x, 1_mm * y}; }

/// A frame of 60 x 40 mm whose centre lies at (50, 40).
Frame a_frame() {
  Frame frame;
  frame.rect = mm(20, 20, 60, 40);
  frame.picture = 0;
  return frame;
}
constexpr PixelSize wide = {600, 400};

} // namespace

TEST_CASE("quarter turns are exact") {
  const Rect rect = mm(20, 20, 60, 40);
  const Corners upright = {at(20, 20), at(80, 20), at(80, 60), at(20, 60)};
  const Corners quarter = {at(70, 10), at(70, 70), at(30, 70), at(30, 10)};
  const Corners half = {at(80, 60), at(20, 60), at(20, 20), at(80, 20)};
  const Corners back = {at(30, 70), at(30, 10), at(70, 10), at(70, 70)};
  for (const double whole : {-720.0, -360.0, 0.0, 360.0, 3600.0}) {
    CAPTURE(whole);
    CHECK(turned(rect, {whole}, rect.centre()) == upright);
    CHECK(turned(rect, {whole + 90}, rect.centre()) == quarter);
    CHECK(turned(rect, {whole + 180}, rect.centre()) == half);
    CHECK(turned(rect, {whole - 90}, rect.centre()) == back);
  }
}

TEST_CASE("a turn of 30 degrees goes clockwise") {
  // The half diagonals (-30, -20) and (30, -20) mm, turned: x' = x cos - y sin, y' = x sin + y cos.
  const Corners corners = turned(mm(20, 20, 60, 40), {30}, at(50, 40));
  const double cosine = std::sqrt(3) / 2;
  CHECK(corners[0].x.mm() == Approx(50 - 30 * cosine + 10));
  CHECK(corners[0].y.mm() == Approx(40 - 15 - 20 * cosine));
  CHECK(corners[1].x.mm() == Approx(50 + 30 * cosine + 10));
  CHECK(corners[1].y.mm() == Approx(40 + 15 - 20 * cosine));
}

TEST_CASE("the box round turned corners") {
  CHECK(box_round(turned(mm(20, 20, 60, 40), {90}, at(50, 40))) == mm(30, 10, 40, 60));
  // At 45 degrees a square's box is wider by the root of two, each corner rounded to a tick.
  const Rect box = box_round(turned(mm(0, 0, 10, 10), {45}, at(5, 5)));
  CHECK(box.width.mm() == Approx(10 * std::sqrt(2)).margin(2 * Length::of_ticks(1).mm()));
  CHECK(box.height.mm() == Approx(10 * std::sqrt(2)).margin(2 * Length::of_ticks(1).mm()));
  CHECK(box.centre().x.mm() == Approx(5).margin(1e-5));
}

TEST_CASE("where the picture's corners go under turn and mirror") {
  struct Case {
    const char *name;
    double turn;
    Mirror mirror;
    Corners corners;
  };
  const Case cases[] = {
      {"upright", 0, Mirror::none, {at(20, 20), at(80, 20), at(80, 60), at(20, 60)}},
      {"left to right", 0, Mirror::horizontal, {at(80, 20), at(20, 20), at(20, 60), at(80, 60)}},
      {"top to bottom", 0, Mirror::vertical, {at(20, 60), at(80, 60), at(80, 20), at(20, 20)}},
      {"a quarter", 90, Mirror::none, {at(70, 10), at(70, 70), at(30, 70), at(30, 10)}},
      {"mirrored first, then a quarter",
       90,
       Mirror::horizontal,
       {at(70, 70), at(70, 10), at(30, 10), at(30, 70)}},
  };
  for (const Case &each : cases) {
    CAPTURE(each.name);
    Frame frame = a_frame();
    frame.turn = {each.turn};
    frame.mirror = each.mirror;
    CHECK(place_frame(frame, wide).picture_corners == each.corners);
  }
}

TEST_CASE("what is cut away and what stays uncovered") {
  struct Case {
    const char *name;
    Fit fit;
    PixelSize size;
    double cut, uncovered;
  };
  const Case cases[] = {
      {"fill, shapes agree", Fill{}, wide, 0, 0},
      {"fill, square into 3:2", Fill{}, {400, 400}, 1.0 / 3, 0},
      {"fill, of a shape that ends between ticks", Fill{}, {1237, 401}, 1 - 1.5 * 401 / 1237, 0},
      {"inside, square into 3:2", Inside{}, {400, 400}, 0, 1.0 / 3},
      {"a quarter of the area", CropShare{0.25, 0.25, 0.5, 0.5}, wide, 0.75, 0},
      {"half off the picture", CropPixels{{300, 0, 600, 400}}, wide, 0.5, 0.5},
      {"put over the left half", PictureAt{mm(-10, 20, 60, 40)}, wide, 0.5, 0.5},
      {"put inside", PictureAt{mm(30, 30, 30, 20)}, wide, 0, 0.75},
      {"put elsewhere", PictureAt{mm(100, 20, 60, 40)}, wide, 1, 1},
  };
  for (const Case &each : cases) {
    CAPTURE(each.name);
    Frame frame = a_frame();
    frame.fit = each.fit;
    for (const double turn : {0.0, 17.0, 90.0}) {
      frame.turn = {turn};
      const PlacedFrame placed = place_frame(frame, each.size);
      CHECK(placed.cut_share == Approx(each.cut).margin(1e-6));
      CHECK(placed.uncovered_share == Approx(each.uncovered).margin(1e-6));
    }
  }
}

TEST_CASE("a gap as small as layouts round is no gap") {
  Frame frame = a_frame();
  frame.fit = PictureAt{{20_mm, 20_mm, 60_mm - 0.05_mm, 40_mm}};
  CHECK(place_frame(frame, wide).uncovered_share == 0);
  frame.fit = PictureAt{{20_mm, 20_mm, 60_mm - 0.0501_mm, 40_mm}};
  CHECK(place_frame(frame, wide).uncovered_share > 0);
}

TEST_CASE("the box is round the part that shows, not round the whole picture") {
  Frame frame = a_frame();
  frame.fit = CropShare{0.25, 0.25, 0.5, 0.5};
  CHECK(place_frame(frame, wide).picture_box == frame.rect);
  frame.fit = PictureAt{mm(50, 20, 60, 40)};
  CHECK(place_frame(frame, wide).picture_box == mm(50, 20, 30, 40));
  frame.turn = {90}; // the right half of the frame comes to lie at the bottom
  CHECK(place_frame(frame, wide).picture_box == mm(30, 40, 40, 30));
  frame.fit = PictureAt{mm(100, 20, 60, 40)};
  CHECK_FALSE(place_frame(frame, wide).picture_box);
}

TEST_CASE("a frame without a picture of known size still has its place") {
  Frame frame = a_frame();
  CHECK_FALSE(place_frame(frame, std::nullopt).laid);
  CHECK(place_frame(frame, std::nullopt).box == frame.rect);
  frame.picture.reset();
  CHECK_FALSE(place_frame(frame, wide).laid);
}

TEST_CASE("absurd frames give figures, never traps") {
  for (const double far : {1e308, -1e308, std::numeric_limits<double>::infinity()}) {
    Frame frame = a_frame();
    frame.rect = {Length::of_mm(far), Length::of_mm(far), Length::of_mm(1e300), Length::of_mm(1e300)};
    for (const Fit &fit :
         {Fit(Fill{}), Fit(Inside{}), Fit(CropShare{0.1, 0.1, 1e-9, 1e-9}), Fit(PictureAt{mm(0, 0, 1, 1)})}) {
      frame.fit = fit;
      const PlacedFrame placed = place_frame(frame, PixelSize{40'000, 40'000});
      CHECK((placed.cut_share >= 0 && placed.cut_share <= 1));
      CHECK((placed.uncovered_share >= 0 && placed.uncovered_share <= 1));
    }
  }
}

TEST_CASE("every frame of a book is placed, in book order") {
  Book book;
  book.pages.resize(2);
  book.pages[0].frames = {a_frame(), a_frame()};
  book.pages[1].frames = {a_frame()};
  book.pages[1].frames[0].picture = 1;
  const std::array<std::optional<PixelSize>, 2> sizes = {wide, std::nullopt};
  const auto placed = place_frames(book, sizes);
  REQUIRE(placed.size() == 3);
  CHECK((placed[1].page == 0 && placed[1].frame == 1 && placed[1].laid));
  CHECK((placed[2].page == 1 && placed[2].frame == 0 && placed[2].picture == std::size_t{1} &&
         !placed[2].laid));
}
