// Fourier transforms of tiles in two directions. The only way in is PlaneSpectrum; tested in
// tests/engine/measure/printed_screen.test.cpp.
#include "engine/measure/plane_spectrum.h"

#include <cmath>
#include <cstdlib>
#include <memory>
#include <new>
#include <numbers>

#include <kissfft/kiss_fft.h>
#include <kissfft/kiss_fftr.h>

namespace stoneproof {

namespace {

struct Free {
  void operator()(void *state) const { std::free(state); }
};

std::vector<float> hann(int side) {
  std::vector<float> window(static_cast<std::size_t>(side));
  double x = 0;
  for (float &weight : window)
    weight = static_cast<float>(0.5 - 0.5 * std::cos(2 * std::numbers::pi * x++ / side));
  return window;
}

std::vector<float> windowed(const Tile &tile) {
  const std::vector<float> window = hann(tile.side);
  const auto side = static_cast<std::size_t>(tile.side);
  std::int64_t sum = 0;
  for (const std::uint8_t value : tile.luma) sum += value;
  const float mean = static_cast<float>(sum) / static_cast<float>(tile.luma.size());
  std::vector<float> values(side * side);
  for (std::size_t y = 0; y < side; ++y)
    for (std::size_t x = 0; x < side; ++x)
      values[y * side + x] = (static_cast<float>(tile.luma[y * side + x]) - mean) * window[x] * window[y];
  return values;
}

/// Of real rows, then of the columns of what came out: side / 2 + 1 values a row.
std::vector<kiss_fft_cpx> transform(const std::vector<float> &pixels, int side) {
  const std::unique_ptr<kiss_fftr_state, Free> of_rows(kiss_fftr_alloc(side, 0, nullptr, nullptr));
  const std::unique_ptr<kiss_fft_state, Free> of_columns(kiss_fft_alloc(side, 0, nullptr, nullptr));
  if (!of_rows || !of_columns) throw std::bad_alloc();
  const auto count = static_cast<std::size_t>(side), bins = count / 2 + 1;
  std::vector<kiss_fft_cpx> values(count * bins), column(count);
  for (std::size_t y = 0; y < count; ++y)
    kiss_fftr(of_rows.get(), pixels.data() + y * count, values.data() + y * bins);
  for (std::size_t x = 0; x < bins; ++x) {
    kiss_fft_stride(of_columns.get(), values.data() + x, column.data(), static_cast<int>(bins));
    for (std::size_t y = 0; y < count; ++y) values[y * bins + x] = column[y];
  }
  return values;
}

} // namespace

PlaneSpectrum::PlaneSpectrum(const std::vector<PlaneSpectrum> &spectra)
    : side_(spectra.front().side_), logarithms_(spectra.front().logarithms_.size()) {
  const float share = 1 / static_cast<float>(spectra.size());
  for (const PlaneSpectrum &spectrum : spectra)
    for (std::size_t i = 0; i < logarithms_.size(); ++i) logarithms_[i] += share * spectrum.logarithms_[i];
  find_ground();
}

std::size_t PlaneSpectrum::index(int across, int down) const {
  across = (across % side_ + side_) % side_;
  if (across > side_ / 2) across = side_ - across, down = -down;
  down = (down % side_ + side_) % side_;
  return static_cast<std::size_t>(down) * static_cast<std::size_t>(side_ / 2 + 1) +
         static_cast<std::size_t>(across);
}

double PlaneSpectrum::at(int across, int down) const { return logarithms_[index(across, down)]; }

PlaneSpectrum::PlaneSpectrum(const Tile &tile) : side_(tile.side) {
  const std::vector<kiss_fft_cpx> values = transform(windowed(tile), side_);
  std::vector<float> power(values.size());
  for (std::size_t i = 0; i < values.size(); ++i)
    power[i] = values[i].r * values[i].r + values[i].i * values[i].i;
  const int least = static_cast<int>(fine * side_);
  double sum = 1e-6;
  std::int64_t count = 1;
  for (int down = -side_ / 2; down < side_ / 2; ++down)
    for (int across = 0; across <= side_ / 2; ++across)
      if (across * across + down * down > least * least)
        sum += static_cast<double>(power[index(across, down)]), ++count;
  const float share = static_cast<float>(static_cast<double>(count) / sum);
  logarithms_.resize(power.size());
  for (std::size_t i = 0; i < power.size(); ++i) logarithms_[i] = std::log(power[i] * share + 1e-4F);
}

double PlaneSpectrum::above_ground(int across, int down) const {
  if (!ground_.empty()) return at(across, down) - static_cast<double>(ground_[index(across, down)]);
  constexpr int width = 2 * reach + 1;
  double sum = 0;
  for (int y = down - reach; y <= down + reach; ++y)
    for (int x = across - reach; x <= across + reach; ++x) sum += at(x, y);
  return at(across, down) - sum / (width * width);
}

void PlaneSpectrum::find_ground() {
  constexpr int width = 2 * reach + 1;
  const int bins = side_ / 2 + 1;
  // Sums along the rows, then down the columns.
  std::vector<float> rows(logarithms_.size());
  for (int down = 0; down < side_; ++down) {
    double sum = 0;
    for (int k = -reach; k <= reach; ++k) sum += at(k, down);
    for (int across = 0; across < bins; ++across) {
      rows[index(across, down)] = static_cast<float>(sum);
      sum += at(across + reach + 1, down) - at(across - reach, down);
    }
  }
  ground_.resize(rows.size());
  for (int across = 0; across < bins; ++across) {
    double sum = 0;
    for (int k = -reach; k <= reach; ++k) sum += static_cast<double>(rows[index(across, k)]);
    for (int down = 0; down < side_; ++down) {
      ground_[index(across, down)] = static_cast<float>(sum / (width * width));
      sum += static_cast<double>(rows[index(across, down + reach + 1)]) -
             static_cast<double>(rows[index(across, down - reach)]);
    }
  }
}

} // namespace stoneproof
