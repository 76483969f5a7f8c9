// Dirt at known places in scans of different subjects, and glasses that are clean.
#include "engine/measure/glass_dirt.h"

#include "engine/measure/glass_places.h"
#include "tests/engine/measure/made_scans.h"
#include "tests/support/catch.h"

#include <functional>
#include <numeric>

using namespace stoneproof;

namespace {

using Scans = std::vector<made::Raster>;
using Soil = std::function<void(made::Raster &scan, int number)>;

/// Scans of so many subjects, every second one textured.
Scans scans_of(
    int count, const Soil &soil = [](made::Raster &, int) {}, unsigned first = 10) {
  Scans scans;
  for (int i = 0; i < count; ++i) {
    scans.push_back(made::subject(first + static_cast<unsigned>(i), i % 2 == 1));
    soil(scans.back(), i);
  }
  return scans;
}

GlassDirt dirt_of(const Scans &scans) {
  std::vector<GlassMap> maps;
  for (const made::Raster &scan : scans) maps.push_back(made::glass_map(scan));
  std::vector<const GlassMap *> batch;
  for (const GlassMap &map : maps) batch.push_back(&map);
  return glass_dirt(batch);
}

void speck(made::Raster &scan, int) { made::add_speck(scan, 90, 200, 2, 40); }

bool holds(const GlassSpeck &found, int x, int y) {
  const PixelPart &w = found.where;
  return x >= w.x && x < w.x + w.width && y >= w.y && y < w.y + w.height;
}

std::vector<std::size_t> all_of(std::size_t count) {
  std::vector<std::size_t> all(count);
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

} // namespace

TEST_CASE("a speck in scans of different subjects is found once, with its place, contrast and carriers") {
  const GlassDirt dirt = dirt_of(scans_of(6, speck));
  CHECK(dirt.specks_certainty == Certainty::firm);
  REQUIRE(dirt.specks.size() == 1);
  const GlassSpeck &found = dirt.specks[0];
  CHECK(holds(found, 90, 200));
  CHECK(found.where.width <= 15);
  CHECK(found.where.height <= 15);
  CHECK(found.contrast == Approx(40).margin(12));
  CHECK(found.carriers == all_of(6));
  CHECK(!found.hair);
  CHECK(dirt.streaks.empty());
  CHECK(dirt.repeats.empty());
}

TEST_CASE("the picture that does not show the speck is not named") {
  const GlassDirt dirt = dirt_of(scans_of(7, [](made::Raster &scan, int number) {
    if (number != 2) speck(scan, number);
  }));
  REQUIRE(dirt.specks.size() == 1);
  CHECK(dirt.specks[0].carriers == std::vector<std::size_t>{0, 1, 3, 4, 5, 6});
}

TEST_CASE("dust may be darker in one scan and lighter in another") {
  const GlassDirt dirt = dirt_of(
      scans_of(6, [](made::Raster &scan, int i) { made::add_speck(scan, 90, 200, 2, i % 2 ? 40 : -40); }));
  REQUIRE(dirt.specks.size() == 1);
  CHECK(holds(dirt.specks[0], 90, 200));
}

TEST_CASE("one pixel of jitter between the scans is survived") {
  const GlassDirt dirt = dirt_of(scans_of(6, [](made::Raster &scan, int i) {
    const int dx = i % 3 - 1, dy = i / 2 - 1;
    made::add_speck(scan, 90 + dx, 200 + dy, 2, 40);
    made::add_speck(scan, 40 + dx, 60 + dy, 2, -40);
  }));
  REQUIRE(dirt.specks.size() == 2);
  for (const auto &[x, y] : {std::pair{90, 200}, std::pair{40, 60}})
    CHECK((holds(dirt.specks[0], x, y) || holds(dirt.specks[1], x, y)));
}

TEST_CASE("a mirror of the stored order gives the mirrored place") {
  Scans scans = scans_of(6, speck);
  for (made::Raster &scan : scans) scan = made::mirrored(scan);
  const GlassDirt dirt = dirt_of(scans);
  REQUIRE(dirt.specks.size() == 1);
  CHECK(holds(dirt.specks[0], 239 - 90, 200));
}

TEST_CASE("a hair is one finding") {
  const GlassDirt dirt = dirt_of(scans_of(6, [](made::Raster &scan, int) {
    for (int i = 0; i < 40; ++i)
      for (int k = 0; k < 2; ++k) made::add_levels(scan, 100 + i + k, 100 + i / 2, -45);
  }));
  REQUIRE(dirt.specks.size() == 1);
  CHECK(dirt.specks[0].hair);
  CHECK(holds(dirt.specks[0], 120, 110));
  CHECK(dirt.specks[0].where.width >= 30);
}

TEST_CASE("clean glasses are silent") {
  for (const unsigned first : {100u, 200u, 300u}) {
    const GlassDirt dirt = dirt_of(scans_of(
        6, [](made::Raster &, int) {}, first));
    CHECK(dirt.specks_certainty == Certainty::no);
    CHECK(dirt.specks.empty());
    CHECK(dirt.streaks.empty());
  }
}

TEST_CASE("specks at other places in each scan are not dirt on the glass") {
  const GlassDirt dirt = dirt_of(scans_of(
      6, [](made::Raster &scan, int i) { made::add_speck(scan, 40 + 25 * i, 200 - 20 * i, 2, 60); }));
  CHECK(dirt.specks.empty());
}

TEST_CASE("two and three pictures cannot tell, four hint, five are firm") {
  for (const int count : {0, 1, 2, 3})
    CHECK(dirt_of(scans_of(count, speck)).specks_certainty == Certainty::cannot_tell);
  const GlassDirt four = dirt_of(scans_of(4, speck));
  CHECK(four.specks_certainty == Certainty::hint);
  REQUIRE(four.specks.size() == 1);
  CHECK(four.specks[0].certainty == Certainty::hint);
  CHECK(dirt_of(scans_of(5, speck)).specks_certainty == Certainty::firm);
}

TEST_CASE("the same subject in the same place counts once") {
  Scans scans = scans_of(3, speck);
  for (int i = 0; i < 3; ++i) { // scanned again: other noise on the same textured subject
    scans.push_back(scans[1]);
    made::Raster &again = scans.back();
    for (std::size_t k = 0; k < again.samples.size(); k += 3)
      again.samples[k] = static_cast<std::uint16_t>(again.samples[k] + 1);
  }
  const GlassDirt dirt = dirt_of(scans);
  CHECK(dirt.repeats == std::vector<std::size_t>{3, 4, 5});
  CHECK(dirt.specks_certainty == Certainty::cannot_tell);
}

TEST_CASE("pictures of another size are not looked at") {
  Scans scans = scans_of(5, speck);
  scans.insert(scans.begin() + 2, made::subject(77, false, 250, 300));
  const GlassDirt dirt = dirt_of(scans);
  REQUIRE(dirt.specks.size() == 1);
  CHECK(dirt.specks[0].carriers == std::vector<std::size_t>{0, 1, 3, 4, 5});
}

TEST_CASE("a streak in two pictures is firm, in one a hint; a step of tone is none") {
  const auto streak = [](made::Raster &scan, int levels) {
    for (int y = 0; y < scan.height; ++y) made::add_levels(scan, 120, y, levels);
  };
  const GlassDirt two = dirt_of(scans_of(2, [&](made::Raster &scan, int) { streak(scan, 6); }));
  REQUIRE(two.streaks.size() == 1);
  CHECK(two.streaks[0].certainty == Certainty::firm);
  CHECK(two.streaks[0].column);
  CHECK(two.streaks[0].at == Approx(120.5).margin(1));
  CHECK(two.streaks[0].strength == Approx(6).margin(2));
  CHECK(two.streaks[0].carriers == all_of(2));

  const GlassDirt one = dirt_of(scans_of(1, [&](made::Raster &scan, int) { streak(scan, -8); }));
  REQUIRE(one.streaks.size() == 1);
  CHECK(one.streaks[0].certainty == Certainty::hint);
  CHECK(one.streaks[0].strength < 0);

  const GlassDirt step = dirt_of(scans_of(2, [](made::Raster &scan, int) {
    for (int y = 0; y < scan.height; ++y)
      for (int x = 120; x < scan.width; ++x) made::add_levels(scan, x, y, 30);
  }));
  CHECK(step.streaks.empty());
}

TEST_CASE("one picture of several lines is one of lines itself, and gives no hint") {
  const GlassDirt dirt = dirt_of(scans_of(1, [](made::Raster &scan, int) {
    for (const int x : {60, 120, 180})
      for (int y = 0; y < scan.height; ++y) made::add_levels(scan, x, y, 8);
  }));
  CHECK(dirt.streaks.empty());
}

TEST_CASE("a streak across is found, and no specks along it") {
  const GlassDirt dirt = dirt_of(scans_of(6, [](made::Raster &scan, int) {
    for (int x = 0; x < scan.width; ++x) made::add_levels(scan, x, 140, -25);
  }));
  REQUIRE(dirt.streaks.size() == 1);
  CHECK(!dirt.streaks[0].column);
  CHECK(dirt.streaks[0].at == Approx(140.5).margin(1));
  CHECK(dirt.specks.empty());
}

TEST_CASE("places are told in lengths on the glass, each axis at its own density") {
  GlassSpeck speck;
  speck.where = {300, 600, 30, 60};
  const Density across = Density::of_ppi(300), down = Density::of_ppi(600);
  CHECK(on_glass(speck, across, down) ==
        Rect{Length::of_in(1), Length::of_in(1), Length::of_in(0.1), Length::of_in(0.1)});
  GlassStreak streak;
  streak.at = 150;
  CHECK(on_glass(streak, across, down) == Length::of_in(0.5));
  streak.column = false;
  CHECK(on_glass(streak, across, down) == Length::of_in(0.25));
}

TEST_CASE("agreement by chance is as rare as it says") {
  // Of six scans with surprises drawn as chance draws them, at most one in ten may agree beyond ln 10, and so
  // on.
  std::mt19937 random(1);
  const Agreement agreement(6);
  constexpr int trials = 20000;
  int beyond[4] = {};
  for (int i = 0; i < trials; ++i) {
    std::vector<double> surprises;
    for (int k = 0; k < 6; ++k)
      surprises.push_back(-std::log((static_cast<double>(random()) + 1) / 4294967296.0));
    std::sort(surprises.rbegin(), surprises.rend());
    const double surprise = agreement(surprises).surprise;
    for (int power = 1; power < 4; ++power) beyond[power] += surprise > power * std::log(10.0);
  }
  CHECK(beyond[1] > 0);
  CHECK(beyond[1] <= trials / 10);
  CHECK(beyond[2] <= trials / 100);
  CHECK(beyond[3] <= trials / 1000);
}

TEST_CASE("two pictures alone make no agreement, however much they stand out") {
  CHECK(Agreement(6)({8, 8, 0.1, 0.1}).surprise < 2);
  CHECK(Agreement(6)({8, 8, 8}).carriers == 0);
  CHECK(Agreement(6)({8, 8, 8, 8}).carriers == 4);
  CHECK(Agreement(6)({8, 8, 6, 6, 6, 6}).surprise > Agreement(6)({8, 8, 6, 6}).surprise);
}
