// Fourier transforms of tiles in two directions. The only way in is PlaneSpectrum; tested in
// tests/engine/measure/printed_screen.test.cpp.
#include "engine/measure/plane_spectrum.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <memory>
#include <new>
#include <numbers>
#include <numeric>

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

/// |value|^2 of the transform of real rows, then of the columns of what came out: side / 2 + 1 values a row.
std::vector<float> power_of(const std::vector<float> &pixels, int side) {
  const std::unique_ptr<kiss_fftr_state, Free> of_rows(kiss_fftr_alloc(side, 0, nullptr, nullptr));
  const std::unique_ptr<kiss_fft_state, Free> of_columns(kiss_fft_alloc(side, 0, nullptr, nullptr));
  if (!of_rows || !of_columns) throw std::bad_alloc();
  const auto count = static_cast<std::size_t>(side), bins = count / 2 + 1;
  constexpr std::size_t strip = 8; // so many columns fill a line of the cache
  std::vector<kiss_fft_cpx> values(count * bins), columns(count * strip), column(count);
  std::vector<float> power(values.size());
  for (std::size_t y = 0; y < count; ++y)
    kiss_fftr(of_rows.get(), pixels.data() + y * count, values.data() + y * bins);
  for (std::size_t first = 0; first < bins; first += strip) {
    const std::size_t wide = std::min(strip, bins - first);
    for (std::size_t y = 0; y < count; ++y)
      for (std::size_t i = 0; i < wide; ++i) columns[i * count + y] = values[y * bins + first + i];
    for (std::size_t i = 0; i < wide; ++i) {
      kiss_fft(of_columns.get(), columns.data() + i * count, column.data());
      for (std::size_t y = 0; y < count; ++y)
        power[y * bins + first + i] = column[y].r * column[y].r + column[y].i * column[y].i;
    }
  }
  return power;
}

} // namespace

PlaneSpectrum::PlaneSpectrum(const std::vector<PlaneSpectrum> &spectra)
    : side_(spectra.front().side_), logarithms_(spectra.front().powers_.size()) {
  constexpr std::size_t together = 8; // the logarithm of their product stands for one of each
  const auto count = static_cast<double>(spectra.size());
  for (std::size_t first = 0; first < spectra.size(); first += together) {
    std::vector<double> products(logarithms_.size(), 1.0);
    for (std::size_t at = first; at < std::min(first + together, spectra.size()); ++at)
      for (std::size_t i = 0; i < products.size(); ++i)
        products[i] *= static_cast<double>(spectra[at].powers_[i]);
    for (std::size_t i = 0; i < products.size(); ++i)
      logarithms_[i] += static_cast<float>(std::log(products[i]) / count);
  }
  find_ground();
}

std::size_t PlaneSpectrum::index(int across, int down) const {
  const auto within = [this](int bin) {
    while (bin < 0) bin += side_;
    while (bin >= side_) bin -= side_;
    return bin;
  };
  across = within(across);
  if (across > side_ / 2) across = side_ - across, down = -down;
  return static_cast<std::size_t>(within(down)) * static_cast<std::size_t>(side_ / 2 + 1) +
         static_cast<std::size_t>(across);
}

double PlaneSpectrum::at(int across, int down) const {
  const std::size_t i = index(across, down);
  return static_cast<double>(powers_.empty() ? logarithms_[i] : std::log(powers_[i]));
}

PlaneSpectrum::PlaneSpectrum(const Tile &tile) : side_(tile.side), powers_(power_of(windowed(tile), side_)) {
  const int least = static_cast<int>(fine * side_);
  double sum = 1e-6;
  std::int64_t count = 1;
  for (int down = -side_ / 2; down < side_ / 2; ++down) {
    const float *row = powers_.data() + index(0, down);
    for (int across = 0; across <= side_ / 2; ++across)
      if (across * across + down * down > least * least) sum += static_cast<double>(row[across]), ++count;
  }
  const float share = static_cast<float>(static_cast<double>(count) / sum);
  for (float &power : powers_) power = power * share + 1e-4F;
}

double PlaneSpectrum::above_ground(int across, int down) const {
  if (!ground_.empty()) return at(across, down) - static_cast<double>(ground_[index(across, down)]);
  constexpr int width = 2 * reach + 1;
  double sum = 0;
  for (int y = down - reach; y <= down + reach; ++y)
    for (int x = across - reach; x <= across + reach; ++x) sum += at(x, y);
  return at(across, down) - sum / (width * width);
}

/// The row `down` from `reach` bins before its first to `reach` and one beyond its last.
void PlaneSpectrum::continued(int down, std::vector<double> &row) const {
  const int half = side_ / 2;
  const float *here = logarithms_.data() + index(0, down), *opposite = logarithms_.data() + index(0, -down);
  row.clear();
  for (int across = reach; across > 0; --across) row.push_back(static_cast<double>(opposite[across]));
  row.insert(row.end(), here, here + half + 1);
  for (int across = half - 1; across >= half - reach - 1; --across)
    row.push_back(static_cast<double>(opposite[across]));
}

void PlaneSpectrum::find_ground() {
  constexpr int width = 2 * reach + 1;
  const auto bins = static_cast<std::size_t>(side_ / 2 + 1);
  // Sums along the rows, then down the columns.
  std::vector<float> along(logarithms_.size());
  std::vector<double> row;
  for (int down = 0; down < side_; ++down) {
    continued(down, row);
    double sum = std::accumulate(row.begin(), row.begin() + width, 0.0);
    float *to = along.data() + index(0, down);
    for (std::size_t across = 0; across < bins; ++across) {
      to[across] = static_cast<float>(sum);
      sum += row[across + width] - row[across];
    }
  }
  ground_.resize(along.size());
  std::vector<double> sums(bins);
  const auto row_at = [&](int down) { return along.data() + index(0, down); };
  for (int down = -reach; down <= reach; ++down)
    for (std::size_t across = 0; across < bins; ++across)
      sums[across] += static_cast<double>(row_at(down)[across]);
  for (int down = 0; down < side_; ++down) {
    float *to = ground_.data() + index(0, down);
    const float *next = row_at(down + reach + 1), *last = row_at(down - reach);
    for (std::size_t across = 0; across < bins; ++across) {
      to[across] = static_cast<float>(sums[across] / (width * width));
      sums[across] += static_cast<double>(next[across]) - static_cast<double>(last[across]);
    }
  }
}

} // namespace stoneproof
