// Points and colours of the painted pictures. A picture is one unit high; x runs from 0 to its aspect ratio.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <vector>

namespace stoneproof::demo {

struct Vec {
  double x = 0, y = 0;
  friend constexpr Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
  friend constexpr Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y}; }
  friend constexpr Vec operator*(Vec a, double s) { return {a.x * s, a.y * s}; }
};
inline double length(Vec v) { return std::sqrt(v.x * v.x + v.y * v.y); }
inline Vec polar(double angle, double radius) { return {std::cos(angle) * radius, std::sin(angle) * radius}; }

using Outline = std::vector<Vec>;
inline constexpr double pi = std::numbers::pi;

/// sRGB values as shares of full light; painting blends them as they are, as paint programs do.
struct Colour {
  double r = 0, g = 0, b = 0;
  friend constexpr Colour operator+(Colour a, Colour c) { return {a.r + c.r, a.g + c.g, a.b + c.b}; }
  friend constexpr Colour operator*(Colour a, double s) { return {a.r * s, a.g * s, a.b * s}; }
};

constexpr Colour rgb(std::uint32_t hex) {
  return {((hex >> 16) & 255) / 255.0, ((hex >> 8) & 255) / 255.0, (hex & 255) / 255.0};
}
constexpr Colour mix(Colour a, Colour b, double share) { return a * (1 - share) + b * share; }
constexpr double luminance(Colour c) { return 0.3 * c.r + 0.59 * c.g + 0.11 * c.b; }

constexpr double clamp01(double v) { return v < 0 ? 0 : v > 1 ? 1 : v; }
/// 0 below `from`, 1 above `to`, smooth between them.
constexpr double ramp(double from, double to, double v) {
  const double t = clamp01((v - from) / (to - from));
  return t * t * (3 - 2 * t);
}

} // namespace stoneproof::demo
