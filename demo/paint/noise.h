// Random numbers and fractal noise that are the same on every machine: no standard distribution is used.
#pragma once

#include "demo/paint/colour.h"

#include <array>
#include <cstddef>
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

/// Shares from 0 to 1 for the corners of the noise lattice; noise looks them up by a quick hash.
inline constexpr auto corner_shares = [] {
  std::array<float, 4096> shares{};
  for (std::size_t i = 0; i < shares.size(); ++i)
    shares[i] = static_cast<float>(chance(static_cast<std::int32_t>(i), 5, 99));
  return shares;
}();

/// Smooth value noise, 0 to 1, one bump a unit.
inline double noise(double x, double y, std::uint32_t seed) {
  constexpr std::uint32_t step_x = 0x9E3779B1u, step_y = 0x85EBCA77u;
  const std::int32_t ix = whole(x), iy = whole(y);
  const std::uint32_t left = static_cast<std::uint32_t>(ix) * step_x, right = left + step_x;
  const std::uint32_t top = static_cast<std::uint32_t>(iy) * step_y + seed * 0xC2B2AE3Du, low = top + step_y;
  const auto corner = [](std::uint32_t a, std::uint32_t b) {
    const std::uint32_t h = a ^ b;
    return static_cast<double>(corner_shares[((h ^ (h >> 15)) * 0x2C1B3C6Du) >> 20]);
  };
  double u = x - ix, v = y - iy;
  u = u * u * (3 - 2 * u);
  v = v * v * (3 - 2 * v);
  const double above = corner(left, top) + u * (corner(right, top) - corner(left, top));
  const double below = corner(left, low) + u * (corner(right, low) - corner(left, low));
  return above + v * (below - above);
}

/// Fractal noise, about 0 to 1: each octave twice as fine and half as strong.
inline double fractal(double x, double y, int octaves, std::uint32_t seed) {
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
