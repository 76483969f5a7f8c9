// Telling screens from photographs, on made pictures of both kinds.
#include "engine/measure/screen_likeness.h"

#include "tests/engine/measure/made_texture.h"
#include "tests/support/catch.h"

using namespace stoneproof;

namespace {

/// Flat panes with hard strokes, as text on a screen.
made::Raster screen() {
  made::Raster r{512, 512, 1, 8, {}};
  for (int y = 0; y < r.height; ++y)
    for (int x = 0; x < r.width; ++x) {
      const bool stroke =
          y % 24 < 12 && x % 16 < 9 && (x / 16 + y / 24) % 3 != 0 && (x % 8 < 2 || y % 24 == 5);
      r.samples.push_back(stroke ? 40 : x < 128 ? 200 : 240);
    }
  return r;
}

} // namespace

TEST_CASE("a screen is told from a texture by all three of its signs") {
  const ScreenLikeness drawn = screen_likeness(made::tiles_of(screen()));
  CHECK(drawn.certainty == Certainty::firm);
  CHECK(drawn.few_levels == Approx(1));
  CHECK(drawn.step == 200);

  const ScreenLikeness grown = screen_likeness(made::tiles_of(made::texture(512, 512)));
  CHECK(grown.certainty == Certainty::no);
  CHECK(grown.equal < 0.1);
}

TEST_CASE("a screen that was saved as a JPEG is still like one") {
  const ScreenLikeness saved = screen_likeness(made::tiles_of(made::saved(screen(), 92).pixels));
  CHECK(saved.certainty >= Certainty::hint);
}

TEST_CASE("flat and smooth pictures are no screens") {
  made::Raster flat{300, 300, 1, 8, std::vector<std::uint16_t>(90000, 120)}, ramp = flat;
  for (int y = 0; y < 300; ++y)
    for (int x = 0; x < 300; ++x) ramp.at(x, y, 0) = static_cast<std::uint16_t>(x / 4 + 60);
  CHECK(screen_likeness(made::tiles_of(flat)).certainty == Certainty::no);
  CHECK(screen_likeness(made::tiles_of(ramp)).certainty == Certainty::no);
  CHECK(screen_likeness({}).certainty == Certainty::cannot_tell);
}
