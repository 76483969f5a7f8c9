// A lattice of dots is found with its ruling and angle; what is no lattice, or strays, is not.
#include "engine/measure/printed_screen.h"

#include "engine/measure/plane_spectrum.h"
#include "tests/support/catch.h"

#include <cmath>
#include <functional>
#include <numbers>
#include <random>

using namespace stoneproof;

namespace {

std::vector<Tile> tiles_of(int count, const std::function<double(double, double)> &light, int side = 256) {
  std::mt19937 random(5);
  std::vector<Tile> tiles;
  for (int i = 0; i < count; ++i) {
    Tile tile{i % 3 * 264, i / 3 * 312, side, {}, 0};
    for (int y = 0; y < side; ++y)
      for (int x = 0; x < side; ++x) {
        const double noise = static_cast<double>(random() % 9) - 4;
        tile.luma.push_back(static_cast<std::uint8_t>(std::clamp(
            light(static_cast<double>(tile.x + x), static_cast<double>(tile.y + y)) + noise, 0.0, 255.0)));
      }
    tiles.push_back(std::move(tile));
  }
  return tiles;
}

/// Round soft dots, `ruling` a pixel, turned by `degrees`; every row of dots moved by `stray` x a slow wave.
std::function<double(double, double)> dots(double ruling, double degrees, double stray = 0) {
  const double turn = degrees * std::numbers::pi / 180;
  return [=](double x, double y) {
    const double u = (x * std::cos(turn) + y * std::sin(turn)) * ruling + stray * std::sin(x * x / 30000),
                 v = (y * std::cos(turn) - x * std::sin(turn)) * ruling + stray * std::sin(y * y / 30000);
    const double spot = std::cos(2 * std::numbers::pi * u) + std::cos(2 * std::numbers::pi * v);
    return 130 + 70 * std::tanh(2 * spot);
  };
}

double off(double a, double b) { return std::abs(a - b - 90 * std::round((a - b) / 90)); }

} // namespace

TEST_CASE("ruling and angle of a screen are found") {
  for (const double ruling : {0.045, 0.07, 0.11, 0.2217, 0.333, 0.44})
    for (const double angle : {15.0, 45.0, 75.0, 3.8 + 30}) {
      INFO(ruling << " at " << angle);
      const PrintedScreen found = printed_screen(tiles_of(6, dots(ruling, angle)));
      CHECK(found.certainty == Certainty::firm);
      CHECK(std::abs(found.ruling / ruling - 1) < 0.01);
      CHECK(off(found.angle, angle) < 0.5);
      CHECK(found.ruling_sure);
    }
}

TEST_CASE("a screen at the limit of the scan is found, but its ruling is not sure") {
  const PrintedScreen found = printed_screen(tiles_of(6, dots(0.5, 40)));
  CHECK(found.certainty == Certainty::firm);
  CHECK_FALSE(found.ruling_sure);
}

TEST_CASE("one large tile is enough, one small tile gives a hint") {
  CHECK(printed_screen(tiles_of(1, dots(0.25, 45))).certainty == Certainty::firm);
  CHECK(printed_screen(tiles_of(1, dots(0.25, 45), 128)).certainty == Certainty::hint);
  CHECK(printed_screen({}).certainty == Certainty::cannot_tell);
}

TEST_CASE("lines that stray from tile to tile are no screen") {
  CHECK(printed_screen(tiles_of(6, dots(0.25, 35, 0.5))).certainty == Certainty::no);
}

TEST_CASE("noise, stripes and what lies along the rows are no screen") {
  CHECK(printed_screen(tiles_of(6, [](double, double) { return 120.0; })).certainty == Certainty::no);
  CHECK(printed_screen(tiles_of(6, [](double x, double y) {
          return 120 + 80 * std::cos(0.9 * x + 0.8 * y);
        })).certainty == Certainty::no);
  CHECK(printed_screen(tiles_of(6, dots(0.25, 0))).certainty == Certainty::no);
}

TEST_CASE("a mirrored screen has the mirrored angle") {
  const auto screen = dots(0.3, 20);
  const PrintedScreen found =
      printed_screen(tiles_of(6, [&](double x, double y) { return screen(2000 - x, y); }));
  CHECK(std::abs(found.ruling - 0.3) < 0.003);
  CHECK(off(found.angle, 70) < 0.5);
}

TEST_CASE("a wave stands in its bin, and the spectrum goes on periodically") {
  const auto tiles = tiles_of(1, [](double x, double y) {
    return 128 + 60 * std::cos(2 * std::numbers::pi * (40 * x - 24 * y) / 256);
  });
  const PlaneSpectrum spectrum(tiles.front());
  CHECK(spectrum.above_ground(40, -24) > 6);
  CHECK(spectrum.above_ground(40, 24) < 3);
  CHECK(spectrum.at(40, -24) == spectrum.at(-40, 24));
  CHECK(spectrum.at(40, -24) == spectrum.at(40 - 256, 256 - 24));
}
