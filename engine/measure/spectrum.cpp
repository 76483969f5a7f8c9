// Fourier transforms of rows. The only way in is RowSpectrum; tested in
// tests/engine/measure/spectrum.test.cpp.
#include "engine/measure/spectrum.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <memory>
#include <numbers>
#include <numeric>

#include <kissfft/kiss_fftr.h>

namespace stoneproof {

namespace {

struct Free {
  void operator()(kiss_fftr_state *state) const { std::free(state); }
};

} // namespace

RowSpectrum::RowSpectrum(const Tile &tile) : side_(tile.side) {
  const auto side = static_cast<std::size_t>(side_), count = static_cast<std::size_t>(bins());
  const auto height = static_cast<std::size_t>(rows());
  real_.resize(count * height);
  imaginary_.resize(count * height);
  power_.resize(count);
  std::vector<float> window(side), row(side);
  for (std::size_t x = 0; x < side; ++x) {
    window[x] =
        static_cast<float>(0.5 - 0.5 * std::cos(2 * std::numbers::pi * static_cast<double>(x) / side_));
    window_power_ += static_cast<double>(window[x]) * static_cast<double>(window[x]);
  }
  const std::unique_ptr<kiss_fftr_state, Free> transform(kiss_fftr_alloc(side_, 0, nullptr, nullptr));
  if (!transform) throw std::bad_alloc();
  std::vector<kiss_fft_cpx> values(count);
  for (std::size_t y = 0; y < height; ++y) {
    std::fill(row.begin(), row.end(), 0.0f);
    for (std::size_t i = 0; i < averaged; ++i)
      for (std::size_t x = 0; x < side; ++x) row[x] += tile.luma[(y * averaged + i) * side + x];
    const float mean = std::accumulate(row.begin(), row.end(), 0.0f) / static_cast<float>(side);
    for (std::size_t x = 0; x < side; ++x) row[x] = (row[x] - mean) / averaged * window[x];
    kiss_fftr(transform.get(), row.data(), values.data());
    for (std::size_t k = 0; k < count; ++k) {
      real_[k * height + y] = values[k].r;
      imaginary_[k * height + y] = values[k].i;
      power_[k] += static_cast<double>(values[k].r * values[k].r + values[k].i * values[k].i);
    }
  }
}

} // namespace stoneproof
