// Coherence of mirrored frequencies. The only way in is upsampling_trace; tested in
// tests/engine/measure/upsampling.test.cpp.
#include "engine/measure/upsampling_trace.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iterator>
#include <numbers>

namespace stoneproof {

namespace {

struct Pair {
  int sum, low, high; ///< bins low + high = sum
  double weight;
};

/// Pairs round half of every sum, weighted by a squared cosine of their distance.
std::vector<Pair> pairs_of(int side) {
  std::vector<Pair> pairs;
  const int first = (17 * side + 99) / 100, end = 93 * side / 100;
  for (int sum = first; sum < end; ++sum) {
    const double reach = std::max(3.0, 0.1 * sum);
    for (int high = (sum + 1) / 2; high <= side / 2; ++high) {
      const double distance = high - sum / 2.0;
      if (distance > reach || sum - high < 2) break;
      const double c = std::cos(std::numbers::pi * distance / (2 * reach + 1));
      pairs.push_back({sum, sum - high, high, c * c});
    }
  }
  return pairs;
}

/// Sum over the rows of Y_low Y_high, neither conjugated.
std::complex<double> product(const RowSpectrum &spectrum, int low, int high) {
  constexpr int lanes = 8;
  std::array<float, lanes> real{}, imaginary{};
  const float *a = spectrum.real(low), *b = spectrum.imaginary(low);
  const float *c = spectrum.real(high), *d = spectrum.imaginary(high);
  for (int y = 0; y < spectrum.side(); y += lanes)
    for (int i = 0; i < lanes; ++i) {
      const int at = y + i;
      real[static_cast<std::size_t>(i)] += a[at] * c[at] - b[at] * d[at];
      imaginary[static_cast<std::size_t>(i)] += a[at] * d[at] + b[at] * c[at];
    }
  std::complex<double> sum;
  for (std::size_t i = 0; i < lanes; ++i) sum += std::complex<double>(real[i], imaginary[i]);
  return sum;
}

struct Coherence {
  std::vector<std::complex<double>> plain, damped; ///< by sum
};

Coherence coherence_of(const RowSpectrum &spectrum, const std::vector<Pair> &pairs, std::size_t sums) {
  Coherence coherence{std::vector<std::complex<double>>(sums), std::vector<std::complex<double>>(sums)};
  std::vector<double> weights(sums);
  const double noise = spectrum.window_power() * spectrum.side(); // of one level, in every bin
  for (const Pair &pair : pairs) {
    const std::complex<double> value = product(spectrum, pair.low, pair.high) * pair.weight;
    const double low = spectrum.power(pair.low), high = spectrum.power(pair.high);
    const auto i = static_cast<std::size_t>(pair.sum - pairs.front().sum);
    coherence.plain[i] += value / (std::sqrt(low * high) + 1e-9);
    coherence.damped[i] += value / (std::sqrt((low + noise) * (high + noise)) + 1e-9);
    weights[i] += pair.weight;
  }
  for (std::size_t i = 0; i < sums; ++i)
    if (weights[i] > 0) coherence.plain[i] /= weights[i], coherence.damped[i] /= weights[i];
  return coherence;
}

/// Adds |C| less its running median; beyond the ends the end values count.
void add_peaks(const std::vector<std::complex<double>> &values, int window, std::vector<double> &peaks) {
  const auto count = static_cast<int>(values.size());
  std::vector<double> sizes, around(static_cast<std::size_t>(window));
  for (const auto &value : values) sizes.push_back(std::abs(value));
  for (int i = 0; i < count; ++i) {
    for (int k = 0; k < window; ++k)
      around[static_cast<std::size_t>(k)] =
          sizes[static_cast<std::size_t>(std::clamp(i + k - window / 2, 0, count - 1))];
    std::nth_element(around.begin(), around.begin() + window / 2, around.end());
    peaks[static_cast<std::size_t>(i)] +=
        sizes[static_cast<std::size_t>(i)] - around[static_cast<std::size_t>(window / 2)];
  }
}

double quantile(std::vector<double> values, double share) {
  const auto at = static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
  std::nth_element(values.begin(), values.begin() + at, values.end());
  return values[static_cast<std::size_t>(at)];
}

/// Mean step from each column to the next, as a share of the largest near it; less than nothing where all
/// near it is flat.
std::vector<double> relative_steps(const Tile &tile) {
  constexpr int near = 12;
  constexpr double flat = 0.5; // levels
  const int count = tile.side - 1;
  std::vector<double> steps(static_cast<std::size_t>(count));
  for (int y = 0; y < tile.side; ++y)
    for (int x = 0; x < count; ++x)
      steps[static_cast<std::size_t>(x)] += std::abs(tile.at(x + 1, y) - tile.at(x, y));
  std::vector<double> shares;
  for (int x = 0; x < count; ++x) {
    const auto begin = steps.begin() + std::max(0, x - near),
               end = steps.begin() + std::min(count, x + near + 1);
    const double top = *std::max_element(begin, end);
    shares.push_back(top > flat * tile.side ? steps[static_cast<std::size_t>(x)] / top : -1);
  }
  return shares;
}

RepeatedColumns repeated_columns(const std::vector<Tile> &tiles) {
  std::vector<std::vector<double>> by_tile;
  std::vector<double> all;
  for (const Tile &tile : tiles) {
    by_tile.push_back(relative_steps(tile));
    std::ranges::copy_if(by_tile.back(), std::back_inserter(all), [](double share) { return share >= 0; });
  }
  RepeatedColumns repeated;
  if (all.size() < 100) return repeated;
  const double low = quantile(all, 0.1), high = quantile(all, 0.9), bound = low + 0.2 * (high - low);
  if (high <= 0) return repeated;
  repeated.gap = low / high;
  const auto stepping = std::ranges::count_if(all, [&](double share) { return share > bound; });
  repeated.share = static_cast<double>(stepping) / static_cast<double>(all.size());
  int stretches = 0, regular = 0;
  for (const auto &shares : by_tile) {
    int last = -1;
    for (int x = 0; x < static_cast<int>(shares.size()); ++x) {
      const double share = shares[static_cast<std::size_t>(x)];
      if (share < 0) last = -1; // what is flat ends every stretch
      if (share <= bound) continue;
      if (last >= 0) ++stretches, regular += std::abs(x - last - 1 / repeated.share) < 1;
      last = x;
    }
  }
  repeated.regular = stretches > 0 ? static_cast<double>(regular) / stretches : 0;
  return repeated;
}

void add_tile(const Tile &tile, const std::vector<Pair> &pairs, bool among_best, UpsamplingTrace &trace) {
  const RowSpectrum spectrum(tile);
  const Coherence coherence = coherence_of(spectrum, pairs, trace.plain.size());
  const int window = (25 * tile.side / 256) | 1;
  add_peaks(coherence.plain, window, trace.plain);
  add_peaks(coherence.damped, window, trace.damped);
  for (int k = 2; k < 8; ++k) {
    const double turn = -2 * std::numbers::pi * k / 8 * static_cast<double>(tile.x % 8);
    const auto i = static_cast<std::size_t>(k * tile.side / 8 - trace.first_sum());
    trace.at_eighths[static_cast<std::size_t>(k)] += coherence.plain[i] * std::polar(1.0, turn);
  }
  for (int bin = 0; bin < spectrum.bins(); ++bin) {
    const double power = spectrum.power(bin) / spectrum.window_power() / spectrum.side();
    trace.power[static_cast<std::size_t>(bin)] += power;
    if (among_best) trace.power_of_best[static_cast<std::size_t>(bin)] += power;
  }
}

} // namespace

UpsamplingTrace upsampling_trace(const std::vector<Tile> &tiles) {
  UpsamplingTrace trace;
  if (tiles.empty()) return trace;
  constexpr std::size_t best = 4;
  trace.side = tiles.front().side;
  trace.tiles = static_cast<int>(tiles.size());
  const std::vector<Pair> pairs = pairs_of(trace.side);
  const auto sums = static_cast<std::size_t>(pairs.back().sum - pairs.front().sum + 1);
  const auto bins = static_cast<std::size_t>(trace.side / 2 + 1);
  trace.plain.resize(sums), trace.damped.resize(sums);
  trace.power.resize(bins), trace.power_of_best.resize(bins);
  for (std::size_t i = 0; i < tiles.size(); ++i) add_tile(tiles[i], pairs, i < best, trace);
  const double all = trace.tiles, few = static_cast<double>(std::min(best, tiles.size()));
  for (double &value : trace.plain) value /= all;
  for (double &value : trace.damped) value /= all;
  for (auto &value : trace.at_eighths) value /= all;
  for (double &value : trace.power) value /= all;
  for (double &value : trace.power_of_best) value /= few;
  trace.repeated = repeated_columns(tiles);
  return trace;
}

} // namespace stoneproof
