// Hand-worked cases of a picture laid into a frame. Tests engine/placement/fit.h.
#include "engine/placement/fit.h"
#include "tests/support/catch.h"

#include <string>

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

constexpr Rect in(double x, double y, double width, double height) {
  return {Length::of_in(x), Length::of_in(y), Length::of_in(width), Length::of_in(height)};
}

struct Case {
  std::string name;
  Rect frame;
  PixelSize size;
  Fit fit;
  Mirror mirror;
  Rect picture;
  std::optional<Rect> visible;
  PixelRect shown;
  double ppi_x, ppi_y;
};

constexpr PixelSize wide = {3000, 2000}, tall = {2000, 3000};
constexpr Mirror none = Mirror::none, horizontal = Mirror::horizontal, vertical = Mirror::vertical;

// A frame of 4 x 4 in at (1, 2). Filled by 3000 x 2000: 500 ppi, 6 x 4 in, 2 in hang over.
const Rect square = in(1, 2, 4, 4);
const Case cases[] = {
    {"fill, shapes agree",
     in(0, 0, 6, 4),
     wide,
     Fill{},
     none,
     in(0, 0, 6, 4),
     in(0, 0, 6, 4),
     {0, 0, 3000, 2000},
     500,
     500},
    {"fill, wide into square",
     square,
     wide,
     Fill{},
     none,
     in(0, 2, 6, 4),
     square,
     {500, 0, 2000, 2000},
     500,
     500},
    {"fill, tall into square",
     square,
     tall,
     Fill{},
     none,
     in(1, 1, 4, 6),
     square,
     {0, 500, 2000, 2000},
     500,
     500},
    {"fill, focus at 40 %",
     square,
     wide,
     Fill{0.4, 0.5},
     none,
     in(0.6, 2, 6, 4),
     square,
     {200, 0, 2000, 2000},
     500,
     500},
    {"fill, focus held at the left edge",
     square,
     wide,
     Fill{0, 0},
     none,
     in(1, 2, 6, 4),
     square,
     {0, 0, 2000, 2000},
     500,
     500},
    {"fill, focus held at the right edge",
     square,
     wide,
     Fill{1, 1},
     none,
     in(-1, 2, 6, 4),
     square,
     {1000, 0, 2000, 2000},
     500,
     500},
    {"fill, focus held at the bottom edge",
     square,
     tall,
     Fill{0.5, 0.9},
     none,
     in(1, 0, 4, 6),
     square,
     {0, 1000, 2000, 2000},
     500,
     500},
    {"fill, mirrored left to right",
     square,
     wide,
     Fill{0, 0},
     horizontal,
     in(-1, 2, 6, 4),
     square,
     {0, 0, 2000, 2000},
     500,
     500},
    {"fill, mirrored top to bottom",
     square,
     tall,
     Fill{0.5, 0.4},
     vertical,
     in(1, 0.4, 4, 6),
     square,
     {0, 200, 2000, 2000},
     500,
     500},
    {"inside, wide into square",
     square,
     wide,
     Inside{},
     none,
     Rect{1_in, 4_in - 4_in / 3, 4_in, 4_in * 2 / 3},
     Rect{1_in, 4_in - 4_in / 3, 4_in, 4_in * 2 / 3},
     {0, 0, 3000, 2000},
     750,
     750},
    {"inside, tall into square",
     in(0, 0, 6, 6),
     tall,
     Inside{},
     none,
     in(1, 0, 4, 6),
     in(1, 0, 4, 6),
     {0, 0, 2000, 3000},
     500,
     500},
    {"inside, mirrored",
     in(0, 0, 6, 6),
     tall,
     Inside{},
     horizontal,
     in(1, 0, 4, 6),
     in(1, 0, 4, 6),
     {0, 0, 2000, 3000},
     500,
     500},
    {"half of each axis",
     in(0, 0, 6, 4),
     wide,
     CropShare{0.25, 0.25, 0.5, 0.5},
     none,
     in(-3, -2, 12, 8),
     in(0, 0, 6, 4),
     {750, 500, 1500, 1000},
     250,
     250},
    {"a corner, mirrored",
     in(0, 0, 6, 4),
     wide,
     CropShare{0, 0, 0.5, 0.5},
     horizontal,
     in(-6, 0, 12, 8),
     in(0, 0, 6, 4),
     {0, 0, 1500, 1000},
     250,
     250},
    {"a corner, upside down",
     in(0, 0, 6, 4),
     wide,
     CropShare{0, 0, 0.5, 0.5},
     vertical,
     in(0, -4, 12, 8),
     in(0, 0, 6, 4),
     {0, 0, 1500, 1000},
     250,
     250},
    {"a crop of another shape stretches",
     in(0, 0, 4, 4),
     wide,
     CropShare{0, 0, 1, 1},
     none,
     in(0, 0, 4, 4),
     in(0, 0, 4, 4),
     {0, 0, 3000, 2000},
     750,
     500},
    {"a crop in pixels",
     in(0, 0, 6, 4),
     wide,
     CropPixels{{750, 500, 1500, 1000}},
     none,
     in(-3, -2, 12, 8),
     in(0, 0, 6, 4),
     {750, 500, 1500, 1000},
     250,
     250},
    {"a crop past the picture's edge",
     in(0, 0, 6, 4),
     wide,
     CropPixels{{1500, 0, 3000, 2000}},
     none,
     in(-3, 0, 6, 4),
     in(0, 0, 3, 4),
     {1500, 0, 1500, 2000},
     500,
     500},
    {"put on the page, clipped",
     square,
     wide,
     PictureAt{in(0, 1, 6, 4)},
     none,
     in(0, 1, 6, 4),
     in(1, 2, 4, 3),
     {500, 500, 2000, 1500},
     500,
     500},
    {"put on the page, mirrored in place",
     in(0, 0, 4, 4),
     wide,
     PictureAt{in(0, 0, 6, 4)},
     horizontal,
     in(0, 0, 6, 4),
     in(0, 0, 4, 4),
     {1000, 0, 2000, 2000},
     500,
     500},
    {"put on the page, upside down in place",
     in(0, 0, 6, 3),
     wide,
     PictureAt{in(0, 0, 6, 4)},
     vertical,
     in(0, 0, 6, 4),
     in(0, 0, 6, 3),
     {0, 500, 3000, 1500},
     500,
     500},
    {"put beside the frame",
     square,
     wide,
     PictureAt{in(5, 2, 6, 4)},
     none,
     in(5, 2, 6, 4),
     std::nullopt,
     {0, 0, 0, 0},
     500,
     500},
};

constexpr Laid half = lay_picture(in(0, 0, 6, 4), wide, CropShare{0.25, 0.25, 0.5, 0.5});
static_assert(half.effective() == Density::of_ppi(250));
static_assert(half.shown == PixelRect{750, 500, 1500, 1000});
static_assert(lay_picture(in(0, 0, 4, 4), wide, CropShare{}).effective() == Density::of_ppi(500));

} // namespace

TEST_CASE("pictures laid into frames") {
  for (const Case &each : cases) {
    CAPTURE(each.name);
    const Laid laid = lay_picture(each.frame, each.size, each.fit, each.mirror);
    CHECK(laid.picture == each.picture);
    CHECK(laid.visible == each.visible);
    CHECK(laid.shown.x == Approx(each.shown.x).margin(1e-6));
    CHECK(laid.shown.y == Approx(each.shown.y).margin(1e-6));
    CHECK(laid.shown.width == Approx(each.shown.width).margin(1e-6));
    CHECK(laid.shown.height == Approx(each.shown.height).margin(1e-6));
    CHECK(laid.density_x.ppi() == Approx(each.ppi_x).epsilon(1e-12));
    CHECK(laid.density_y.ppi() == Approx(each.ppi_y).epsilon(1e-12));
    CHECK(laid.effective().ppi() == Approx(std::min(each.ppi_x, each.ppi_y)).epsilon(1e-12));
  }
}

TEST_CASE("rounding the picture's rectangle to ticks does not move the density") {
  // 2970 px on 10 in are 297 ppi on both axes; 1999 px at that density end between two ticks.
  for (int height = 1900; height < 1999; ++height) {
    CAPTURE(height);
    const Laid laid = lay_picture(in(0, 0, 10, 5), {2970, height}, Fill{});
    REQUIRE(laid.density_x == Density::of_ppi(297));
    REQUIRE(laid.density_y == Density::of_ppi(297));
  }
}

TEST_CASE("a sliver thinner than a tick still has a size") {
  const Laid laid = lay_picture(Rect{0_mm, 0_mm, 0.001_mm, 0.001_mm}, {1'000'000'000, 1}, Inside{});
  CHECK(laid.picture.height == Length::of_ticks(1));
}
