// Waves of known length and height stand in their bin; what runs across the rows is averaged away.
#include "engine/measure/spectrum.h"

#include "tests/support/catch.h"

#include <cmath>
#include <numbers>

using namespace stoneproof;

namespace {

Tile drawn(double (*value)(int, int)) {
  Tile tile{0, 0, TileSampler::small, {}, 0};
  for (int y = 0; y < tile.side; ++y)
    for (int x = 0; x < tile.side; ++x)
      tile.luma.push_back(static_cast<std::uint8_t>(std::lround(value(x, y))));
  return tile;
}

double wave(double cycles) { return 128 + 100 * std::cos(2 * std::numbers::pi * cycles); }

} // namespace

TEST_CASE("a wave along the rows stands in its bin with its power") {
  const RowSpectrum spectrum(drawn([](int x, int) { return wave(16.0 * x / TileSampler::small); }));
  CHECK(spectrum.rows() == TileSampler::small / RowSpectrum::averaged);
  CHECK(spectrum.bins() == 65);
  // Analytic: a Hann window, mean 1/2, leaves a quarter of height x side of a wave in its bin, half of that
  // beside it, and nothing further away.
  const double bin = 100.0 / 4 * TileSampler::small, power = spectrum.rows() * bin * bin;
  CHECK(spectrum.power(16) == Approx(power).epsilon(0.01));
  CHECK(spectrum.power(15) == Approx(power / 4).epsilon(0.01));
  CHECK(spectrum.power(17) == Approx(power / 4).epsilon(0.01));
  CHECK(spectrum.power(20) < power / 1e4);
  CHECK(spectrum.window_power() == Approx(3.0 / 8 * TileSampler::small));
  const double length = std::hypot(spectrum.real(16)[3], spectrum.imaginary(16)[3]);
  CHECK(length == Approx(bin).epsilon(0.01));
}

TEST_CASE("a wave across the rows, as long as the rows that are averaged, is not seen") {
  const RowSpectrum spectrum(drawn([](int x, int y) { return wave(x / 8.0 + y / 4.0); }));
  const RowSpectrum alone(drawn([](int x, int) { return wave(x / 8.0); }));
  CHECK(spectrum.power(16) < alone.power(16) / 1e4);
}
