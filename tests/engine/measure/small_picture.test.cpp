// A small copy keeps the picture's shape and the means of its areas.
#include "engine/measure/small_picture.h"

#include "tests/engine/measure/made_rows.h"
#include "tests/support/catch.h"

#include <cstdlib>

using namespace stoneproof;

namespace {

SmallPicture small(const made::Raster &r, ColourModel colour, int side) {
  const RowLayout layout = made::layout_of(r, colour);
  SmallPictureMaker maker(layout, side);
  made::feed(maker, r);
  return maker.take();
}

} // namespace

TEST_CASE("the longer side is what was asked for, and never more than the picture's own") {
  const made::Raster r = made::busy(600, 400, 3);
  const SmallPicture copy = small(r, ColourModel::rgb, 90);
  CHECK(copy.width == 90);
  CHECK(copy.height == 60);
  const SmallPicture whole = small(r, ColourModel::rgb, 900);
  CHECK(whole.width == 600);
  CHECK(whole.rgb == std::vector<std::uint8_t>(r.samples.begin(), r.samples.end()));
}

TEST_CASE("a strongly reduced copy holds the tones of the right places, rows left out or not") {
  made::Raster r{400, 1200, 1, 8, {}};
  for (int y = 0; y < 1200; ++y)
    for (int x = 0; x < 400; ++x)
      r.samples.push_back(static_cast<std::uint16_t>(y / 300 * 60 + x / 200 * 20));
  const SmallPicture copy = small(r, ColourModel::gray, 60);
  REQUIRE(copy.width == 20);
  REQUIRE(copy.height == 60);
  for (const int y : {2, 20, 35, 57})
    for (const int x : {3, 16}) CHECK(std::abs(int{copy.at(x, y)[1]} - (y / 15 * 60 + x / 10 * 20)) <= 1);
}

TEST_CASE("a picture that is one pixel high has a copy, too") {
  const SmallPicture copy = small(made::busy(2000, 1, 3), ColourModel::rgb, 100);
  CHECK(copy.width == 100);
  CHECK(copy.height == 1);
}
