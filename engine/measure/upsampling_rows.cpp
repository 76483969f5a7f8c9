// Likeness of rows. The only way in is different_rows; tested in tests/engine/measure/upsampling.test.cpp.
#include "engine/measure/upsampling_rows.h"

#include "engine/measure/upsampling_trace.h"

#include <algorithm>
#include <cmath>

namespace stoneproof {

namespace {

/// |sum over the rows of Y_a conj(Y_b)|^2 / (P_a P_b).
double likeness(const RowSpectrum &spectrum, int a, int b) {
  const double powers = spectrum.power(a) * spectrum.power(b);
  if (powers <= 0) return 0;
  std::complex<double> sum;
  for (int y = 0; y < spectrum.rows(); ++y)
    sum += std::complex<double>(spectrum.real(a)[y], spectrum.imaginary(a)[y]) *
           std::complex<double>(spectrum.real(b)[y], -spectrum.imaginary(b)[y]);
  return std::norm(sum) / powers;
}

double different_rows_of(const RowSpectrum &spectrum, double alpha) {
  const double sum = alpha * spectrum.side(), reach = UpsamplingTrace::reach(sum);
  const int first = std::max(2, static_cast<int>(std::ceil(sum / 2 - reach)));
  const int last = std::min(spectrum.bins() - 1, static_cast<int>(std::floor(sum / 2 + reach)));
  double pairs = 0, alike = 0;
  for (int a = first; a <= last; ++a)
    for (int b = first; b <= last; ++b) ++pairs, alike += likeness(spectrum, a, b);
  return alike > 0 ? pairs / alike : 0;
}

} // namespace

double different_rows(const std::vector<Tile> &tiles, double alpha) {
  if (tiles.empty()) return 0;
  std::vector<double> counts;
  for (const Tile &tile : tiles) counts.push_back(different_rows_of(RowSpectrum(tile), alpha));
  const auto middle = counts.begin() + static_cast<std::ptrdiff_t>(counts.size() / 2);
  std::nth_element(counts.begin(), middle, counts.end());
  return *middle;
}

} // namespace stoneproof
