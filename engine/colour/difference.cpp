// Reckons CIEDE2000 step by step; equation numbers are those of Sharma, Wu and Dalal (2005). Only way in:
// ciede2000. Tested in tests/engine/colour/difference.test.cpp and, against the paper's pairs, in
// tests/outside/colour.test.cpp.
#include "engine/colour/difference.h"

#include <cmath>
#include <numbers>

namespace stoneproof {

namespace {

constexpr double degree = std::numbers::pi / 180;

constexpr double square(double x) { return x * x; }
constexpr double seventh(double x) { return square(x) * square(x) * square(x) * x; }

/// sqrt(C^7 / (C^7 + 25^7)): how far a chroma is from gray, from 0 to 1.
double strength(double chroma) {
  const double power = seventh(chroma);
  return std::sqrt(power / (power + seventh(25)));
}

/// Hue in degrees from 0 to 360; 0 for gray (7).
double hue_of(double a, double b) {
  if (a == 0 && b == 0) return 0;
  const double degrees = std::atan2(b, a) / degree;
  return degrees < 0 ? degrees + 360 : degrees;
}

struct Hues {
  double difference, mean; ///< in degrees
};

/// The way round the circle is the shorter one; with a gray, hue counts for nothing (10, 14).
Hues compare(double one, double other, bool gray) {
  const double difference = other - one, sum = one + other;
  if (gray) return {0, sum};
  if (std::abs(difference) <= 180) return {difference, sum / 2};
  return {difference > 0 ? difference - 360 : difference + 360, sum < 360 ? sum / 2 + 180 : sum / 2 - 180};
}

} // namespace

double ciede2000(Lab one, Lab other) {
  // Grays are drawn together along a (2 to 6).
  const double mean_ab = (std::hypot(one.a, one.b) + std::hypot(other.a, other.b)) / 2;
  const double stretch = 1 + 0.5 * (1 - strength(mean_ab));
  const double a1 = one.a * stretch, a2 = other.a * stretch;
  const double chroma1 = std::hypot(a1, one.b), chroma2 = std::hypot(a2, other.b);
  const Hues hue = compare(hue_of(a1, one.b), hue_of(a2, other.b), chroma1 == 0 || chroma2 == 0);

  // Differences and means (8 to 14).
  const double lightness = other.L - one.L, chroma = chroma2 - chroma1;
  const double turn = 2 * std::sqrt(chroma1 * chroma2) * std::sin(hue.difference / 2 * degree);
  const double mean_lightness = (one.L + other.L) / 2, mean_chroma = (chroma1 + chroma2) / 2;

  // Weights of the three, and what chroma and hue have in common among blues (15 to 21).
  const double t = 1 - 0.17 * std::cos((hue.mean - 30) * degree) + 0.24 * std::cos(2 * hue.mean * degree) +
                   0.32 * std::cos((3 * hue.mean + 6) * degree) -
                   0.20 * std::cos((4 * hue.mean - 63) * degree);
  const double off_middle = square(mean_lightness - 50);
  const double l = lightness / (1 + 0.015 * off_middle / std::sqrt(20 + off_middle));
  const double c = chroma / (1 + 0.045 * mean_chroma);
  const double h = turn / (1 + 0.015 * mean_chroma * t);
  const double blue = 60 * std::exp(-square((hue.mean - 275) / 25)); // twice the angle of (16)
  const double rotation = -std::sin(blue * degree) * 2 * strength(mean_chroma);

  // Rounding may take the sum of equal colours a hair below nought (22).
  const double sum = square(l) + square(c) + square(h) + rotation * c * h;
  return sum > 0 ? std::sqrt(sum) : 0;
}

} // namespace stoneproof
