// Rescan settings, largest prints and looser crops, worked by hand. Tests engine/placement/rescue.h.
#include "engine/placement/rescue.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

constexpr Density wanted = Density::of_ppi(300), flatbed = Density::of_ppi(1200);

constexpr Rect in(double width, double height) {
  return {{}, {}, Length::of_in(width), Length::of_in(height)};
}

/// A 6 x 4 in frame showing the middle half of each axis of 3000 x 2000 px: 250 ppi, the whole 12 x 8 in.
constexpr PixelSize size = {3000, 2000};
constexpr Laid half = lay_picture(in(6, 4), size, CropShare{0.25, 0.25, 0.5, 0.5});

constexpr Original print(Length width, Length height) {
  return {OriginalKind::print, Size{width, height}, false};
}

} // namespace

static_assert(scanner_step(1) == 150);
static_assert(scanner_step(150) == 150 && scanner_step(150.0001) == 200);
static_assert(scanner_step(300) == 300 && scanner_step(301) == 400);
static_assert(scanner_step(599.9) == 600 && scanner_step(600.1) == 800);
static_assert(scanner_step(4800) == 4800);
static_assert(!scanner_step(4801));

// 12 in of a 6 in wide print: twice its size, 300 x 2.
static_assert(rescan(half, print(6_in, 4_in), size, wanted, flatbed)->needed_ppi == 600);
static_assert(rescan(half, print(6_in, 4_in), size, wanted, flatbed)->setting == 600);
static_assert(!rescan(half, print(6_in, 4_in), size, wanted, flatbed)->beyond_flatbed);
static_assert(!rescan(half, print(6_in, 4_in), size, wanted, flatbed)->film);
static_assert(!rescan(half, Original{}, size, wanted, flatbed), "no size, no setting");
static_assert(rescan(half, print(5.99_in, 4_in), size, wanted, flatbed)->setting == 800,
              "601 ppi is above 600");
static_assert(rescan(half, print(5.99_in, 4_in), size, wanted, flatbed, 0.01)->setting == 600,
              "within a tolerance");
// The larger axis: 12 in of 5 in asks for 720, 8 in of 4 in for 600.
static_assert(rescan(half, print(5_in, 4_in), size, wanted, flatbed)->setting == 800);
// A size given lying on its side is set upright.
static_assert(rescan(half, print(4_in, 6_in), size, wanted, flatbed)->needed_ppi == 600);
static_assert(upright({4_in, 6_in}, {3000, 2000}) == Size{6_in, 4_in});
static_assert(upright({4_in, 6_in}, {2000, 3000}) == Size{4_in, 6_in});
static_assert(upright({4_in, 6_in}, {2000, 2000}) == Size{4_in, 6_in});
// At the flatbed's limit: 12 in of 3 in is 1200 exactly; a little smaller is beyond it.
static_assert(!rescan(half, print(3_in, 2_in), size, wanted, flatbed)->beyond_flatbed);
static_assert(rescan(half, print(2.9_in, 2_in), size, wanted, flatbed)->beyond_flatbed);

// 250 of 300 ppi: five sixths of the size in print.
static_assert(largest_print(half, wanted) == Size{5_in, 4_in * 5 / 6});
static_assert(largest_print(Laid{}, wanted) == Size{});

// 6 x 4 in at 300 take 1800 x 1200 px: 60 % of each axis.
static_assert(looser_crop(in(6, 4), size, wanted)->width_share == 0.6);
static_assert(looser_crop(in(6, 4), size, wanted)->height_share == 0.6);
static_assert(looser_crop(in(10, 6), size, wanted)->width_share == 1);
static_assert(!looser_crop(in(10.01, 6), size, wanted));
static_assert(!looser_crop(in(6, 6.7), size, wanted));

TEST_CASE("a slide beyond a flatbed") {
  // 36 x 24 mm filling 9 x 6 in: 6.35 times, 1905 ppi.
  const Original slide = {OriginalKind::slide, Size{36_mm, 24_mm}, false};
  const Laid laid = lay_picture(in(9, 6), {1500, 1000}, Fill{});
  const auto answer = rescan(laid, slide, {1500, 1000}, wanted, flatbed);
  REQUIRE(answer);
  CHECK(answer->needed_ppi == Approx(1905).epsilon(1e-12));
  CHECK(answer->setting == 2400);
  CHECK(answer->beyond_flatbed);
  CHECK(answer->film);
}

TEST_CASE("beyond every usual scanner there is no setting") {
  const Laid laid = lay_picture(in(36, 24), {1500, 1000}, Fill{});
  const auto answer =
      rescan(laid, {OriginalKind::negative, Size{36_mm, 24_mm}, false}, {1500, 1000}, wanted, flatbed);
  REQUIRE(answer);
  CHECK(answer->needed_ppi == Approx(7620).epsilon(1e-12));
  CHECK_FALSE(answer->setting);
  CHECK(answer->beyond_flatbed);
  CHECK(answer->film);
}

TEST_CASE("each way out reaches the wanted density when it is taken") {
  for (const double share : {0.1, 0.25, 0.5, 0.6}) {
    CAPTURE(share);
    const Laid laid = lay_picture(in(6, 4), size, CropShare{0, 0, share, share});
    const Size print_size = largest_print(laid, wanted);
    const Rect smaller = {{}, {}, print_size.width, print_size.height};
    CHECK(lay_picture(smaller, size, CropShare{0, 0, share, share}).effective().ppi() ==
          Approx(300).epsilon(1e-6));

    const auto crop = looser_crop(in(6, 4), size, wanted);
    REQUIRE(crop);
    const Fit looser = CropShare{0, 0, crop->width_share, crop->height_share};
    CHECK(lay_picture(in(6, 4), size, looser).effective().ppi() == Approx(300).epsilon(1e-12));

    // A scan of the same original at the setting holds so many more pixels in each axis.
    const auto again = rescan(laid, print(6_in, 4_in), size, wanted, flatbed);
    REQUIRE(again);
    if (!again->setting) continue;
    const PixelSize scanned = {*again->setting * 6, *again->setting * 4};
    CHECK(lay_picture(in(6, 4), scanned, CropShare{0, 0, share, share}).effective().ppi() >=
          300 * (1 - 1e-9));
  }
}
