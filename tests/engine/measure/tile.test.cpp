// Which tiles are kept, where they lie, and that rows of other kinds give the same lightness.
#include "tests/engine/measure/made_tiles.h"
#include "tests/support/catch.h"

using namespace stoneproof;

namespace {

/// Fine checks inside one square, flat elsewhere.
made::Gray busy_in(int left, int top, int side, int width = 1000, int height = 900) {
  return made::drawn(width, height, [=](int x, int y) {
    const bool inside = x >= left && y >= top && x < left + side && y < top + side;
    return inside ? ((x / 2 + y / 2) % 2 ? 200.0 : 60.0) : 128.0;
  });
}

} // namespace

TEST_CASE("the tiles with most detail are kept, most first, at places of whole JPEG blocks") {
  const auto tiles = made::tiles_of(busy_in(500, 300, 256));
  REQUIRE(tiles.size() == 8);
  for (std::size_t i = 0; i < tiles.size(); ++i) {
    CHECK(tiles[i].x % 8 == 0);
    CHECK(tiles[i].y % 8 == 0);
    CHECK(tiles[i].side == 256);
    if (i > 0) CHECK(tiles[i].detail <= tiles[i - 1].detail);
  }
  const Tile &best = tiles.front();
  CHECK(best.x < 756);
  CHECK(best.x + 256 > 500);
  CHECK(best.y < 556);
  CHECK(best.y + 256 > 300);
}

TEST_CASE("tiles hold the picture's own pixels") {
  const made::Gray gray = made::discs(700, 600);
  const auto bytes = made::bytes_of(gray);
  for (const Tile &tile : made::tiles_of(gray, PixelPart{33, 21, 600, 570})) {
    CHECK(tile.x >= 33);
    CHECK(tile.y >= 21);
    CHECK(tile.x + tile.side <= 633);
    CHECK(tile.y + tile.side <= 591);
    bool same = true;
    for (int y = 0; y < tile.side; ++y)
      for (int x = 0; x < tile.side; ++x)
        same = same && tile.at(x, y) == bytes[static_cast<std::size_t>((tile.y + y) * 700 + tile.x + x)];
    CHECK(same);
    const Tile turned = transposed(tile);
    CHECK(turned.at(3, 9) == tile.at(9, 3));
    CHECK(turned.x == tile.y);
  }
}

TEST_CASE("a small part has small tiles, a tiny one none") {
  const made::Gray gray = made::discs(400, 400);
  const auto small = made::tiles_of(gray, PixelPart{8, 8, 200, 300});
  REQUIRE_FALSE(small.empty());
  CHECK(small.front().side == 128);
  CHECK(made::tiles_of(gray, PixelPart{0, 0, 127, 400}).empty());
}

TEST_CASE("lightness of colours is that of JPEG, and deep, inverted and transparent rows are converted") {
  RowLayout layout;
  layout.width = 128, layout.height = 128;
  layout.stored = {128, 128};
  layout.channels = 3;
  std::vector<std::uint8_t> row(128 * 3);
  for (std::size_t x = 0; x < 128; ++x)
    row[3 * x] = 255, row[3 * x + 1] = static_cast<std::uint8_t>(x), row[3 * x + 2] = 0;
  TileSampler sampler({0, 0, 128, 128}, layout);
  for (int y = 0; y < 128; ++y) sampler.add(y, row.data());
  const auto tiles = sampler.take();
  REQUIRE(tiles.size() == 1);
  CHECK(tiles[0].at(0, 0) == 76);     // 0.299 x 255
  CHECK(tiles[0].at(100, 50) == 135); // + 0.587 x 100

  RowLayout deep = layout;
  deep.channels = 1, deep.bits = 16, deep.colour = ColourModel::gray, deep.inverted = true;
  std::vector<std::uint8_t> wide(128 * 2, 0xFF);
  TileSampler second({0, 0, 128, 128}, deep);
  for (int y = 0; y < 128; ++y) second.add(y, wide.data());
  CHECK(second.take()[0].at(5, 5) == 0);
}
