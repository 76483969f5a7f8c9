// Scans of one scanner are compared, in whatever order they come, and no others.
#include "engine/run/glass_search.h"

#include "tests/engine/measure/made_scans.h"
#include "tests/support/catch.h"

#include <algorithm>

using namespace stoneproof;

namespace {

Facts scan_facts(std::string device = "", std::int64_t width = 240) {
  Facts facts;
  facts.size = {width, 300};
  facts.colour = ColourModel::gray;
  facts.device = std::move(device);
  facts.stored_x = facts.stored_y = Density::of_ppi(100);
  return facts;
}

/// A scan with a speck at 60, 200 of the stored 240 x 300 pixels.
GlassMap soiled(unsigned number) {
  made::Raster scan = made::subject(number, number % 2 == 0);
  made::add_speck(scan, 60, 200, 2, -70);
  return made::glass_map(scan);
}

std::vector<GlassOrigin> origins_of(const std::vector<Facts> &facts) {
  std::vector<GlassOrigin> origins;
  for (const Facts &one : facts) origins.push_back({&one, 3});
  return origins;
}

} // namespace

TEST_CASE("a speck is told once with its place on the glass and all pictures that show it") {
  std::vector<Facts> facts(9, scan_facts());
  facts[4] = scan_facts("", 200); // another size: cropped
  GlassSearch search(origins_of(facts), GlassScope::compared);
  CHECK_FALSE(search.wants(4));
  for (const std::size_t picture : {8u, 1u, 0u, 3u, 2u, 7u, 6u, 5u}) {
    REQUIRE(search.wants(picture));
    search.add(picture, picture == 6 ? made::glass_map(made::subject(6, true))
                                     : soiled(static_cast<unsigned>(picture)));
  }
  const std::vector<Glass> glasses = search.take();
  REQUIRE(glasses.size() == 1);
  CHECK(glasses[0].scans == std::vector<std::size_t>{0, 1, 2, 3, 5, 6, 7, 8});
  REQUIRE_FALSE(glasses[0].spots.empty());
  const GlassSpot &spot = glasses[0].spots[0];
  CHECK(spot.certainty == Certainty::firm);
  CHECK(spot.carriers == std::vector<std::size_t>{0, 1, 2, 3, 5, 7, 8});
  const auto place = glasses[0].place_of(spot);
  REQUIRE(place);
  CHECK(place->centre().x.mm() == Approx(60 * 0.254).margin(0.5));
  CHECK(place->centre().y.mm() == Approx(200 * 0.254).margin(0.5));
}

TEST_CASE("three scans are too few, and cameras, line art and other scanners do not count") {
  std::vector<Facts> facts(7, scan_facts());
  facts[3] = scan_facts("Lumen Flat 40");
  facts[4].camera = true;
  facts[5].colour = ColourModel::bilevel;
  facts[6].stored_x = Density::of_ppi(200);
  const GlassSearch search(origins_of(facts), GlassScope::compared);
  for (std::size_t i = 0; i < facts.size(); ++i) CHECK_FALSE(search.wants(i));
}

TEST_CASE("a turned scan is compared as it was stored") {
  std::vector<Facts> facts(5, scan_facts());
  facts[2].orientation = 6;
  facts[2].size = {300, 240};
  facts[2].stored_x = Density::of_ppi(100);
  const GlassSearch search(origins_of(facts), GlassScope::compared);
  for (std::size_t i = 0; i < facts.size(); ++i) CHECK(search.wants(i));
}

TEST_CASE("files that cannot be read leave the others to be compared") {
  const std::vector<Facts> facts(7, scan_facts());
  GlassSearch search(origins_of(facts), GlassScope::compared);
  for (unsigned picture = 0; picture < 7; ++picture)
    search.add(picture, picture == 2 ? std::nullopt : std::optional(soiled(picture)));
  const std::vector<Glass> glasses = search.take();
  REQUIRE(glasses.size() == 1);
  CHECK(glasses[0].spots[0].carriers == std::vector<std::size_t>{0, 1, 3, 4, 5, 6});
}

TEST_CASE("a large batch is compared in parts, and the same dirt is told once") {
  const std::vector<Facts> facts(70, scan_facts());
  GlassSearch search(origins_of(facts), GlassScope::compared);
  for (unsigned picture = 0; picture < 70; ++picture) search.add(picture, soiled(picture));
  const std::vector<Glass> glasses = search.take();
  REQUIRE(glasses.size() == 1);
  const auto sure = std::count_if(glasses[0].spots.begin(), glasses[0].spots.end(),
                                  [](const GlassSpot &spot) { return spot.certainty == Certainty::firm; });
  CHECK(sure == 1);
  CHECK(glasses[0].spots[0].carriers.size() >= 65);
  CHECK(std::ranges::is_sorted(glasses[0].spots[0].carriers));
  CHECK(std::ranges::adjacent_find(glasses[0].spots[0].carriers) == glasses[0].spots[0].carriers.end());
  // Whichever part is whole first, the same is told.
  GlassSearch backwards(origins_of(facts), GlassScope::compared);
  for (unsigned picture = 70; picture-- > 0;) backwards.add(picture, soiled(picture));
  const std::vector<Glass> same = backwards.take();
  REQUIRE(same.size() == 1);
  REQUIRE(same[0].spots.size() == glasses[0].spots.size());
  for (std::size_t i = 0; i < same[0].spots.size(); ++i) {
    CHECK(same[0].spots[i].left == glasses[0].spots[i].left);
    CHECK(same[0].spots[i].top == glasses[0].spots[i].top);
    CHECK(same[0].spots[i].contrast == glasses[0].spots[i].contrast);
    CHECK(same[0].spots[i].carriers == glasses[0].spots[i].carriers);
  }
}

TEST_CASE("a scan by itself gives a hint of a streak where every scan is looked at") {
  std::vector<Facts> facts(2, scan_facts());
  facts[1].camera = true;
  GlassSearch search(origins_of(facts), GlassScope::all_scans);
  CHECK_FALSE(search.wants(1));
  REQUIRE(search.wants(0));
  made::Raster scan = made::subject(1, false);
  for (int y = 0; y < scan.height; ++y) made::add_levels(scan, 90, y, -8);
  search.add(0, made::glass_map(scan));
  const std::vector<Glass> glasses = search.take();
  REQUIRE(glasses.size() == 1);
  REQUIRE(glasses[0].spots.size() == 1);
  CHECK(glasses[0].spots[0].kind == GlassSpotKind::streak_down);
  CHECK(glasses[0].spots[0].certainty == Certainty::hint);
  CHECK(glasses[0].spots[0].left == Approx(90.5 / 240).margin(1.5 / 240));
}
