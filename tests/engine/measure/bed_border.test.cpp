// The bed round a scanned original, and the tilt of it; pictures without one stay silent.
#include "engine/measure/bed_border.h"

#include "engine/measure/picture_mask.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

using namespace stoneproof;

namespace {

/// An original of middle tones, 400 x 300, turned clockwise on a bed of 600 x 500.
SmallPicture scan(double degrees, std::uint8_t bed, double right = 0) {
  std::mt19937 random(2);
  const double c = std::cos(degrees * std::numbers::pi / 180), s = std::sin(degrees * std::numbers::pi / 180);
  SmallPicture picture{600, 500, {}};
  for (int y = 0; y < 500; ++y)
    for (int x = 0; x < 600; ++x) {
      const double u = (x - 300 - right) * c + (y - 250) * s, v = (y - 250) * c - (x - 300 - right) * s;
      const bool inside = std::abs(u) < 200 && std::abs(v) < 150;
      const int value = inside ? static_cast<int>(110 + 60 * std::sin(u / 17) * std::cos(v / 11)) : bed;
      picture.rgb.insert(picture.rgb.end(), 3,
                         static_cast<std::uint8_t>(value + static_cast<int>(random() % 5) - 2));
    }
  return picture;
}

} // namespace

TEST_CASE("share, rectangle and tilt of an original on white and on black") {
  for (const std::uint8_t bed : {std::uint8_t{245}, std::uint8_t{10}})
    for (const double tilt : {0.0, 0.7, -1.5, 4.0}) {
      INFO(int{bed} << " " << tilt);
      const BedBorder found = bed_border(scan(tilt, bed));
      REQUIRE(found.certainty == Certainty::firm);
      CHECK(found.white == (bed > 100));
      CHECK(std::abs(found.share - 0.6) < 0.02);
      REQUIRE(found.tilt);
      CHECK(std::abs(*found.tilt - tilt) < 0.15);
      if (tilt != 0) continue;
      CHECK(std::abs(found.left - 1 / 6.0) < 0.01);
      CHECK(std::abs(found.bottom - 0.8) < 0.01);
    }
}

TEST_CASE("an original that lies against the corner still has two edges clear") {
  const BedBorder found = bed_border(scan(0, 245, 120));
  CHECK(found.certainty == Certainty::firm);
  CHECK(found.right == 1);
}

TEST_CASE("a bright thing before white paper is no original") {
  SmallPicture picture{400, 400, std::vector<std::uint8_t>(400 * 400 * 3, 245)};
  for (int y = 0; y < 400; ++y)
    for (int x = 0; x < 400; ++x)
      if (std::hypot(x - 200, y - 200) < 130)
        std::fill_n(picture.rgb.begin() + (y * 400 + x) * 3, 3, std::uint8_t{90});
  CHECK(bed_border(picture).certainty == Certainty::no);
}

TEST_CASE("white on one side only, gray all round, nothing at all: no bed") {
  SmallPicture sky{300, 300, {}};
  for (int y = 0; y < 300; ++y)
    for (int x = 0; x < 300; ++x)
      sky.rgb.insert(sky.rgb.end(), 3, static_cast<std::uint8_t>(y < 100 ? 245 : 60 + x % 50));
  CHECK(bed_border(sky).certainty == Certainty::no);
  CHECK(bed_border(scan(1, 150)).certainty == Certainty::no);
  CHECK(bed_border({300, 300, std::vector<std::uint8_t>(300 * 300 * 3, 250)}).certainty == Certainty::no);
  CHECK(bed_border({100, 300, std::vector<std::uint8_t>(100 * 300 * 3, 250)}).certainty ==
        Certainty::cannot_tell);
}

TEST_CASE("areas of a mask") {
  PictureMask mask(40, 30);
  for (int y = 0; y < 30; ++y) mask.at(3, y) = 1; // a line that touches the edge
  for (int y = 10; y < 20; ++y)
    for (int x = 10; x < 22; ++x) mask.at(x, y) = 1; // a block that does not
  const auto count = [](const PictureMask &m) { return std::count(m.set.begin(), m.set.end(), 1); };
  CHECK(count(joined_to_edge(mask, 1)) == 30);
  CHECK(count(largest_piece(mask)) == 120);
  CHECK(count(opened(mask)) == 120);
}
