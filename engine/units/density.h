// Pixels, and pixels per printed inch.
#pragma once

#include "engine/units/length.h"

#include <compare>

namespace stoneproof {

/// A count of picture pixels along one axis; a crop may end inside a pixel, so the count need not be whole.
struct Pixels {
  double count = 0;
  constexpr auto operator<=>(const Pixels &) const = default;
};

/// Pixels per inch of paper (or of an original). Kept at full precision; rounded for display only, and then
/// down.
class Density {
public:
  constexpr Density() = default;
  static constexpr Density of_ppi(double ppi) { return Density(ppi); }
  constexpr double ppi() const { return ppi_; }
  constexpr auto operator<=>(const Density &) const = default;
  friend constexpr Density operator*(Density d, double factor) { return Density(d.ppi_ * factor); }
  friend constexpr double operator/(Density a, Density b) { return a.ppi_ / b.ppi_; }

private:
  explicit constexpr Density(double ppi) : ppi_(ppi) {}
  double ppi_ = 0;
};

/// Density is Pixels / Length. The length must not be zero.
constexpr Density operator/(Pixels pixels, Length length) {
  return Density::of_ppi(pixels.count / length.in());
}
/// The length that so many pixels cover at a density. The density must not be zero.
constexpr Length operator/(Pixels pixels, Density density) {
  return Length::of_in(pixels.count / density.ppi());
}
constexpr Pixels operator*(Density density, Length length) { return Pixels{density.ppi() * length.in()}; }

} // namespace stoneproof
