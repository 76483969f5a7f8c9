// Fourier transforms of rows. The only way in is RowSpectrum; tested in
// tests/engine/measure/spectrum.test.cpp.
#include "engine/measure/spectrum.h"

#include <cmath>
#include <cstdlib>
#include <memory>
#include <numbers>

#include <kissfft/kiss_fftr.h>

namespace stoneproof {

namespace {

struct Free {
  void operator()(kiss_fftr_state *state) const { std::free(state); }
};

} // namespace

RowSpectrum::RowSpectrum(const Tile &tile) : side_(tile.side) {
  const auto side = static_cast<std::size_t>(side_), count = static_cast<std::size_t>(bins());
  real_.resize(count * side);
  imaginary_.resize(count * side);
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
  for (std::size_t y = 0; y < side; ++y) {
    const std::uint8_t *pixels = tile.luma.data() + y * side;
    std::uint32_t sum = 0;
    for (std::size_t x = 0; x < side; ++x) sum += pixels[x];
    const float mean = static_cast<float>(sum) / static_cast<float>(side);
    for (std::size_t x = 0; x < side; ++x) row[x] = (static_cast<float>(pixels[x]) - mean) * window[x];
    kiss_fftr(transform.get(), row.data(), values.data());
    for (std::size_t k = 0; k < count; ++k) {
      real_[k * side + y] = values[k].r;
      imaginary_[k * side + y] = values[k].i;
      power_[k] += static_cast<double>(values[k].r * values[k].r + values[k].i * values[k].i);
    }
  }
}

} // namespace stoneproof
