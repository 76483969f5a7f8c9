// Parts of made pictures are found where they were cut, and nothing is found in another picture.
#include "engine/measure/crop_search.h"

#include "tests/engine/measure/made_scene.h"
#include "tests/support/catch.h"

#include <cmath>
#include <optional>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

CropSought crop_of(const Scene &scene, int width, int height, const GrayPart &part) {
  return CropSought(copy_fingerprint(seen(scene, width, height, part)));
}

/// What is found in one ground.
std::optional<FoundCrop> find_crop(const CropGround &ground, const CropSought &crop) {
  const auto all = find_crops({ground}, crop);
  const auto best = std::ranges::max_element(all, {}, &FoundCrop::likeness);
  return best == all.end() ? std::nullopt : std::optional(*best);
}

bool near(const GrayPart &one, const GrayPart &other, double margin) {
  return std::abs(one.left - other.left) < margin && std::abs(one.right - other.right) < margin &&
         std::abs(one.top - other.top) < margin && std::abs(one.bottom - other.bottom) < margin;
}

} // namespace

TEST_CASE("a crop of any share down to a quarter of the sides is found where it was cut") {
  const Scene one = scene(1, 150);
  const CropGround ground = crop_ground(seen(one, 450, 300));
  struct Cut {
    GrayPart part;
    int width, height;
  };
  for (const auto &[part, width, height] :
       {Cut{{0, 0, 1, 1}, 300, 200}, Cut{{0.1, 0.3, 0.6, 0.8}, 300, 200},
        Cut{{0.5, 0.05, 0.75, 0.8}, 225, 450}, Cut{{0.62, 0.5, 0.92, 0.8}, 270, 180}}) {
    CAPTURE(part.left, part.top, part.right, part.bottom);
    const auto found = find_crop(ground, crop_of(one, width, height, part));
    REQUIRE(found);
    CHECK(found->orientation == 1);
    CHECK(found->likeness > 0.97);
    CHECK(near(found->part, part, 0.01));
  }
}

TEST_CASE("a crop that was turned, toned or mirrored is found, and how it must be turned back") {
  const Scene one = scene(2, 150);
  const CropGround ground = crop_ground(seen(one, 450, 300));
  const GrayPart part{0.2, 0.3, 0.6, 0.9};
  const SmallPicture plain = seen(one, 360, 360, part);
  for (int orientation = 1; orientation <= 8; ++orientation) {
    CAPTURE(orientation);
    CopyFingerprint print = copy_fingerprint(plain);
    // `inverse` undoes `orientation`: quarter turns undo each other, all else itself.
    const int inverse = orientation == 6 ? 8 : orientation == 8 ? 6 : orientation;
    print.gray = print.gray.turned(inverse);
    for (std::uint8_t &pixel : print.gray.pixels) pixel = static_cast<std::uint8_t>(30 + pixel * 7 / 10);
    const auto found = find_crop(ground, CropSought(print));
    REQUIRE(found);
    CHECK(found->orientation == orientation);
    CHECK(near(found->part, part, 0.01));
  }
}

TEST_CASE("of many pictures the one that was cut from is found") {
  std::vector<CropGround> grounds;
  for (unsigned seed = 10; seed < 16; ++seed)
    grounds.push_back(crop_ground(seen(scene(seed, 150), 450, 300)));
  const auto all = find_crops(grounds, crop_of(scene(13, 150), 200, 150, {0.3, 0.1, 0.7, 0.55}));
  REQUIRE(all.size() == 1);
  CHECK(all[0].ground == 3);
  CHECK(all[0].sure());
}

TEST_CASE("nothing is found in another picture, in a plain one, or of a plain one") {
  const Scene one = scene(3, 150), other = scene(4, 150);
  const GrayPart part{0.2, 0.2, 0.6, 0.6};
  const CropSought sought = crop_of(one, 300, 200, part);
  CHECK_FALSE(find_crop(crop_ground(seen(other, 450, 300)), sought));
  const Scene plain = [](double, double) { return 200.0; };
  CHECK_FALSE(find_crop(crop_ground(seen(plain, 450, 300)), sought));
  CHECK_FALSE(find_crop(crop_ground(seen(one, 450, 300)), crop_of(plain, 300, 200, part)));
  CHECK_FALSE(find_crop(CropGround{}, sought));
}

TEST_CASE("pictures of a pixel or a line are searched without harm") {
  const Scene one = scene(5, 150);
  for (const auto &[width, height] : {std::pair{1, 1}, {1, 900}, {900, 1}, {3, 2}})
    CHECK_FALSE(
        find_crop(crop_ground(seen(one, width, height)), crop_of(one, 300, 200, {0.2, 0.2, 0.6, 0.6})));
}
