// Random numbers and fractal noise that are the same on every machine: no standard distribution is used.
#pragma once

#include "demo/paint/colour.h"

#include <cstdint>

namespace stoneproof::demo {

/// Mixes the bits of two lattice coordinates and a seed (multiply and xor-shift).
constexpr std::uint32_t scramble(std::int32_t x, std::int32_t y, std::uint32_t seed) {
  std::uint32_t h = static_cast<std::uint32_t>(x) * 0x9E3779B1u ^
                    static_cast<std::uint32_t>(y) * 0x85EBCA77u ^ seed * 0xC2B2AE3Du;
  h = (h ^ (h >> 15)) * 0x2C1B3C6Du;
  h = (h ^ (h >> 12)) * 0x297A2D39u;
  return h ^ (h >> 15);
}
/// A share from 0 to 1 for a lattice point.
constexpr double chance(std::int32_t x, std::int32_t y, std::uint32_t seed) {
  return scramble(x, y, seed) * (1.0 / 4294967295.0);
}

class Random {
public:
  explicit Random(std::uint32_t seed) : seed_(seed) {}
  double share() { return chance(count_++, 77, seed_); }
  double between(double low, double high) { return low + (high - low) * share(); }
  int below(int end) { return std::min(end - 1, static_cast<int>(share() * end)); }
  /// About normal, deviation 1: the sum of four even shares.
  double bell() { return (share() + share() + share() + share() - 2) * 1.732; }
  std::uint32_t seed() { return scramble(count_++, 78, seed_); }

private:
  std::uint32_t seed_;
  std::int32_t count_ = 0;
};

constexpr std::int32_t whole(double v) {
  const auto i = static_cast<std::int32_t>(v);
  return v < i ? i - 1 : i;
}

/// Smooth value noise, 0 to 1, one bump a unit.
constexpr double noise(double x, double y, std::uint32_t seed) {
  const std::int32_t ix = whole(x), iy = whole(y);
  double u = x - ix, v = y - iy;
  u = u * u * (3 - 2 * u);
  v = v * v * (3 - 2 * v);
  const double top = chance(ix, iy, seed) * (1 - u) + chance(ix + 1, iy, seed) * u;
  const double low = chance(ix, iy + 1, seed) * (1 - u) + chance(ix + 1, iy + 1, seed) * u;
  return top * (1 - v) + low * v;
}

/// Fractal noise, about 0 to 1: each octave twice as fine and half as strong.
constexpr double fractal(double x, double y, int octaves, std::uint32_t seed) {
  double sum = 0, weight = 1, total = 0;
  for (int i = 0; i < octaves; ++i) {
    sum += weight * noise(x, y, seed + static_cast<std::uint32_t>(i));
    total += weight;
    weight *= 0.5;
    x = x * 2.03 + 17.1;
    y = y * 2.03 + 9.7;
  }
  return sum / total;
}

} // namespace stoneproof::demo
