// Where a picture stored in colour begins to hold any.
#include "engine/measure/neutral_meter.h"

#include "tests/engine/measure/made_rows.h"
#include "tests/support/catch.h"

using namespace stoneproof;

namespace {

/// A gray ramp in so many channels.
made::Raster grays(int width, int height, int channels, int bits = 8) {
  made::Raster r{width, height, channels, bits, {}};
  const int most = (1 << bits) - 1;
  for (int i = 0; i < width * height; ++i)
    r.samples.insert(r.samples.end(), static_cast<std::size_t>(channels),
                     static_cast<std::uint16_t>(i * 31 % (most / 2)));
  return r;
}

bool is_neutral(const made::Raster &r, ColourModel colour = ColourModel::rgb) {
  const RowLayout layout = made::layout_of(r, colour);
  NeutralMeter meter(layout);
  for (int y = 0; y < r.height; ++y) meter.add(made::row_of(r, y).data());
  return meter.is_neutral();
}

} // namespace

TEST_CASE("one pixel in a thousand may be coloured, one more may not") {
  // 53 x 57 = 3,021 pixels: three.
  made::Raster r = grays(53, 57, 3);
  CHECK(is_neutral(r));
  const int places[][2] = {{0, 0}, {52, 20}, {7, 56}, {52, 56}};
  for (int i = 0; i < 4; ++i) {
    r.at(places[i][0], places[i][1], i % 3) = 255;
    CHECK(is_neutral(r) == (i < 3));
  }
}

TEST_CASE("channels that differ by 8 of 255 are still gray, whichever two they are") {
  struct Case {
    int bits, gray, step; ///< `step`: the largest difference that is none
  };
  for (const Case &c : {Case{8, 100, 8}, Case{16, 20'000, 2056}})
    for (int channel = 0; channel < 3; ++channel)
      for (const int sign : {-1, 1}) {
        CAPTURE(c.bits, channel, sign);
        made::Raster r{20, 10, 3, c.bits,
                       std::vector<std::uint16_t>(600, static_cast<std::uint16_t>(c.gray))};
        const auto tint = [&](int by) {
          for (int y = 0; y < 10; ++y)
            for (int x = 0; x < 20; ++x) r.at(x, y, channel) = static_cast<std::uint16_t>(c.gray + sign * by);
        };
        tint(c.step);
        CHECK(is_neutral(r));
        tint(c.step + 1);
        CHECK_FALSE(is_neutral(r));
      }
}

TEST_CASE("opacity is no colour") {
  made::Raster r = grays(20, 20, 4);
  for (int y = 0; y < 20; ++y)
    for (int x = 0; x < 20; ++x) r.at(x, y, 3) = 255;
  CHECK(is_neutral(r));
  r.at(19, 19, 2) = 255;
  CHECK_FALSE(is_neutral(r)); // 400 pixels allow none
}

TEST_CASE("only RGB can be gray that is stored in colour") {
  CHECK_FALSE(is_neutral(grays(20, 20, 1), ColourModel::gray));
  CHECK_FALSE(is_neutral(grays(20, 20, 4), ColourModel::cmyk));
  CHECK_FALSE(is_neutral(grays(20, 20, 3), ColourModel::lab));
}
