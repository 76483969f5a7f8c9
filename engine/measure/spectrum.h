// The spectrum of a tile along its rows. Beside plane_spectrum the one place that knows kissfft.
#pragma once

#include "engine/measure/tile.h"

#include <vector>

namespace stoneproof {

/// Real Fourier transforms of the rows, of every `averaged` the mean: what runs along the rows stays, and
/// noise and what runs across goes, at a quarter of the cost. From each its mean is taken, then it is
/// weighted by a Hann window (0.5 - 0.5 cos(2 pi x / side)). Bin k stands for k / side cycles a pixel, k from
/// 0 to side / 2. Values of one bin lie side by side, row after row, real and imaginary parts apart.
class RowSpectrum {
public:
  static constexpr int averaged = 4;

  /// Its side must be a multiple of `averaged`.
  explicit RowSpectrum(const Tile &tile);

  int side() const { return side_; }
  int rows() const { return side_ / averaged; }
  int bins() const { return side_ / 2 + 1; }
  const float *real(int bin) const { return real_.data() + static_cast<std::ptrdiff_t>(bin) * rows(); }
  const float *imaginary(int bin) const {
    return imaginary_.data() + static_cast<std::ptrdiff_t>(bin) * rows();
  }
  /// Sum over the rows of |value|^2 of a bin.
  double power(int bin) const { return power_[static_cast<std::size_t>(bin)]; }
  /// Sum of the squared window weights.
  double window_power() const { return window_power_; }

private:
  int side_;
  std::vector<float> real_, imaginary_;
  std::vector<double> power_;
  double window_power_ = 0;
};

} // namespace stoneproof
