// Dirt on a scanner's glass in words.
#include "reports/content/glass_words.h"

#include "reports/content/sentences.h"
#include "tests/support/catch.h"
#include "tests/support/small_book.h"

using namespace stoneproof;
using namespace stoneproof::content;
using namespace stoneproof::test;

TEST_CASE("a spot is named with its place, in millimetres where these are known") {
  const GlassSpot speck{GlassSpotKind::speck, 0.2, 0.4, 0.22, 0.41, -40, {0}, Certainty::firm};
  const Rect place{Length::of_mm(41), Length::of_mm(117), Length::of_mm(2), Length::of_mm(2)};
  CHECK(spot_phrase(speck, place) == "a speck 42 mm from the left and 118 mm from the top");
  CHECK(spot_phrase(speck, {}) ==
        "a speck 21 % of its width from the left and 40 % of its height from the top");
  GlassSpot line{GlassSpotKind::streak_down, 0.5, 0, 0.5, 1, -6, {0}, Certainty::firm};
  CHECK(spot_phrase(line, Rect{Length::of_mm(108), {}, {}, Length::of_mm(300)}) ==
        "a line down the whole scan, 108 mm from its left");
  line = {GlassSpotKind::streak_across, 0, 0.25, 1, 0.25, 6, {0}, Certainty::firm};
  CHECK(spot_phrase(line, {}) == "a line across the whole scan, 25 % of its height from its top");
}

TEST_CASE("dirty glass is told once with what is sure, and where it shows") {
  Book book = small_book();
  for (int i = 0; i < 8; ++i)
    book.pictures.push_back(photo("p" + std::to_string(i), "scan " + std::to_string(i) + ".tif"));
  Checked checked = test::checked(std::move(book));
  Glass glass{{0, 1, 2, 3, 4, 5, 6, 7}, Size{Length::of_mm(200), Length::of_mm(300)}, {}};
  glass.spots = {{GlassSpotKind::hair, 0.2, 0.4, 0.22, 0.41, -40, {0, 2}, Certainty::firm},
                 {GlassSpotKind::streak_down, 0.5, 0, 0.5, 1, -6, {3}, Certainty::hint}};
  checked.evidence.glasses = {glass};
  Finding finding;
  finding.rule = "dirty-glass";
  finding.glass = 0;
  CHECK(message(checked.evidence, finding) ==
        "The glass of the scanner was dirty: a hair 42 mm from the left and 122 mm "
        "from the top, in 2 of 8 scans (scan 0.tif and scan 2.tif).");
  checked.evidence.glasses[0].spots[0].carriers = {0, 1, 2, 3, 4, 5};
  CHECK(message(checked.evidence, finding)
            .ends_with("in 6 of 8 scans (scan 0.tif, scan 1.tif, scan 2.tif, scan 3.tif and 2 more)."));
}

TEST_CASE("a file tells of the dirt that it shares with others") {
  GlassSpot speck{GlassSpotKind::speck, 0.2, 0.4, 0.22, 0.41, -40, {0}, Certainty::firm};
  CHECK(dirt_fact({speck, {}, {"b.tif", "c.tif"}}) ==
        "a speck 21 % of its width from the left and 40 % of its height from the top, as in b.tif and c.tif");
  speck.certainty = Certainty::hint;

  CHECK(dirt_fact({speck, {}, {"b.tif"}}).starts_with("perhaps a speck"));
}
