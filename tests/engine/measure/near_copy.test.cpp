// Copies of one picture are paired whatever was done to them; different pictures are not.
#include "engine/measure/near_copy.h"

#include "tests/engine/measure/made_scene.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

CopyFingerprint print_of(const Scene &scene, int width, int height, const GrayPart &part = {}) {
  return copy_fingerprint(seen(scene, width, height, part));
}

} // namespace

TEST_CASE("other sizes and tones are paired") {
  const Scene one = scene(1);
  const auto pairs =
      near_copies({print_of(one, 300, 200), print_of(one, 151, 100),
                   print_of([&](double x, double y) { return 40 + 0.6 * one(x, y); }, 240, 160)});
  REQUIRE(pairs.size() == 3);
  for (const NearCopy &pair : pairs) {
    CHECK(pair.likeness > 0.98);
    CHECK(pair.orientation == 1);
  }
}

TEST_CASE("a crop is laid where it came from") {
  for (const GrayPart &part :
       {GrayPart{0.1, 0.1, 0.9, 0.9}, GrayPart{0.03, 0.08, 1, 0.94}, GrayPart{0, 0, 0.9, 1}}) {
    const int width = static_cast<int>(300 * (part.right - part.left)),
              height = static_cast<int>(200 * (part.bottom - part.top));
    const auto pairs = near_copies({print_of(scene(2), width, height, part), print_of(scene(2), 300, 200)});
    REQUIRE(pairs.size() == 1);
    CHECK(pairs[0].whole == 1);
    CHECK(pairs[0].other == 0);
    CHECK(std::abs(pairs[0].part.left - part.left) < 0.015);
    CHECK(std::abs(pairs[0].part.bottom - part.bottom) < 0.015);
  }
}

TEST_CASE("turned and mirrored copies are paired, and the orientation said") {
  const Scene one = scene(3);
  const auto pairs = near_copies(
      {print_of(one, 300, 200), print_of([&](double x, double y) { return one(y, 1 - x); }, 200, 300)});
  REQUIRE(pairs.size() == 1);
  const CopyFingerprint other = print_of([&](double x, double y) { return one(y, 1 - x); }, 200, 300);
  CHECK(other.gray.turned(pairs[0].orientation).pixels == print_of(one, 300, 200).gray.pixels);
  const auto mirrored = near_copies(
      {print_of(one, 300, 200), print_of([&](double x, double y) { return one(1 - x, y); }, 300, 200)});
  REQUIRE(mirrored.size() == 1);
  CHECK(mirrored[0].orientation == 2);
}

TEST_CASE("different pictures are not paired, in the same frame neither", "[figures]") {
  std::vector<CopyFingerprint> prints;
  for (unsigned seed = 10; seed < 40; ++seed) prints.push_back(print_of(scene(seed), 300, 200));
  for (unsigned seed = 40; seed < 60; ++seed) {
    const Scene inside = scene(seed);
    prints.push_back(print_of(
        [=](double x, double y) {
          return std::min({x, y, 1 - x, 1 - y}) < 0.06 ? 245 : inside(x, y);
        },
        300, 200));
  }
  CHECK(near_copies(prints).empty());
}

TEST_CASE("blank pictures are left out") {
  const auto fog = [](double x, double y) { return 180 + 8 * x + 5 * y; };
  CHECK(print_of(fog, 300, 200).blank);
  CHECK(near_copies({print_of(fog, 300, 200), print_of(fog, 150, 100)}).empty());
  CHECK(copy_fingerprint({}).blank);
}

TEST_CASE("a picture of few pixels has a fingerprint") { CHECK_FALSE(print_of(scene(5), 30, 20).blank); }

TEST_CASE("the better copy") {
  NearCopy pair;
  pair.part = {0.1, 0.1, 0.9, 0.9};
  const auto worth = [](double width, double height, double factor = 1, double detail = 1) {
    CopyWorth w{width, height, {}};
    w.upsampling.certainty = factor > 1 ? Certainty::firm : Certainty::no;
    if (factor > 1) w.upsampling.factor = factor;
    w.upsampling.detail = {true, detail, detail};
    return w;
  };
  CHECK(better_copy(pair, worth(3000, 2000), worth(1500, 1000)) == BetterCopy::whole);
  CHECK(better_copy(pair, worth(1500, 1000), worth(3000, 2000)) == BetterCopy::other);
  CHECK(better_copy(pair, worth(1500, 1000), worth(3000, 2000, 3)) == BetterCopy::whole);
  CHECK(better_copy(pair, worth(3000, 2000, 1, 0.5), worth(2400, 1600)) == BetterCopy::other);
  CHECK(better_copy(pair, worth(3000, 2000), worth(2400, 1600)) == BetterCopy::whole);
  pair.part = {};
  CHECK(better_copy(pair, worth(3000, 2000), worth(3000, 2000)) == BetterCopy::alike);
}
