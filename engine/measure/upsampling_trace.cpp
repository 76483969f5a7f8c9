// Coherence of mirrored frequencies. The only way in is upsampling_trace; tested in
// tests/engine/measure/upsampling.test.cpp.
#include "engine/measure/upsampling_trace.h"

#include "engine/picture/lanes.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>

namespace stoneproof {

namespace {

using Complex = std::complex<double>;

struct Pair {
  int sum, low, high; ///< bins low + high = sum
  double weight;
};

/// Pairs round half of every sum, weighted by a squared cosine of their distance.
std::vector<Pair> pairs_of(int side) {
  std::vector<Pair> pairs;
  const int first = UpsamplingTrace::first_sum(side), end = 86 * side / 100;
  for (int sum = first; sum < end; ++sum) {
    const double reach = UpsamplingTrace::reach(sum);
    for (int high = (sum + 1) / 2; high <= side / 2; ++high) {
      const double distance = high - sum / 2.0;
      if (distance > reach || sum - high < 2) break;
      const double c = std::cos(std::numbers::pi * distance / (2 * reach + 1));
      pairs.push_back({sum, sum - high, high, c * c});
    }
  }
  return pairs;
}

std::size_t sums_of(const std::vector<Pair> &pairs) {
  return pairs.empty() ? 0 : static_cast<std::size_t>(pairs.back().sum - pairs.front().sum + 1);
}

/// Sum over the rows of Y_low Y_high, neither conjugated; two sums side by side, so that none waits for the
/// other.
Complex product(const RowSpectrum &spectrum, int low, int high) {
  const float *a = spectrum.real(low), *b = spectrum.imaginary(low);
  const float *c = spectrum.real(high), *d = spectrum.imaginary(high);
  std::array<Lanes, 2> real{}, imaginary{};
  for (std::size_t y = 0; y < static_cast<std::size_t>(spectrum.rows()); y += 2 * lane_count)
    for (std::size_t i = 0; i < 2; ++i) {
      const std::size_t at = y + i * lane_count;
      const Lanes ra = lanes_at(a + at), ia = lanes_at(b + at), rb = lanes_at(c + at), ib = lanes_at(d + at);
      real[i] += ra * rb - ia * ib;
      imaginary[i] += ra * ib + ia * rb;
    }
  Complex sum;
  for (std::size_t i = 0; i < 2; ++i)
    for (std::size_t k = 0; k < lane_count; ++k) sum += Complex(real[i][k], imaginary[i][k]);
  return sum;
}

/// Of one tile.
struct Coherence {
  std::int64_t place; ///< along the rows, in tiles
  std::vector<Complex> plain, damped;
};

Coherence coherence_of(const RowSpectrum &spectrum, const std::vector<Pair> &pairs) {
  const std::size_t sums = sums_of(pairs);
  Coherence coherence{0, std::vector<Complex>(sums), std::vector<Complex>(sums)};
  std::vector<double> weights(sums), root, damped_root;
  // One level in every pixel, in every bin; rows that are means of some hold as much less.
  const double noise = spectrum.window_power() * spectrum.rows() / RowSpectrum::averaged;
  for (int bin = 0; bin < spectrum.bins(); ++bin) {
    root.push_back(1 / std::sqrt(spectrum.power(bin) + 1e-9));
    damped_root.push_back(1 / std::sqrt(spectrum.power(bin) + noise));
  }
  for (const Pair &pair : pairs) {
    const Complex value = product(spectrum, pair.low, pair.high) * pair.weight;
    const auto i = static_cast<std::size_t>(pair.sum - UpsamplingTrace::first_sum(spectrum.side()));
    const auto low = static_cast<std::size_t>(pair.low), high = static_cast<std::size_t>(pair.high);
    coherence.plain[i] += value * root[low] * root[high];
    coherence.damped[i] += value * damped_root[low] * damped_root[high];
    weights[i] += pair.weight;
  }
  for (std::size_t i = 0; i < sums; ++i)
    if (weights[i] > 0) coherence.plain[i] /= weights[i], coherence.damped[i] /= weights[i];
  return coherence;
}

/// |C| of all tiles together at every sum: between two sums the tiles turn against each other by their
/// places, so that steps finer than one sum are tried and the highest kept.
std::vector<double> together(const std::vector<Coherence> &tiles, std::size_t sums) {
  const auto [first, last] = std::ranges::minmax_element(tiles, {}, &Coherence::place);
  const auto steps = static_cast<std::size_t>(2 * (last->place - first->place) + 3);
  std::vector<double> sizes(sums);
  std::vector<Complex> turned(sums);
  for (std::size_t step = 0; step < steps; ++step) {
    const double part = (static_cast<double>(step) + 0.5) / static_cast<double>(steps) - 0.5;
    std::ranges::fill(turned, Complex());
    for (const Coherence &tile : tiles) {
      const Complex turn =
          std::polar(1.0 / static_cast<double>(tiles.size()),
                     -2 * std::numbers::pi * part * static_cast<double>(tile.place - first->place));
      for (std::size_t i = 0; i < sums; ++i) turned[i] += tile.plain[i] * turn;
    }
    for (std::size_t i = 0; i < sums; ++i) sizes[i] = std::max(sizes[i], std::abs(turned[i]));
  }
  return sizes;
}

/// Above the running median; beyond the ends the end values count.
std::vector<double> above_median(const std::vector<double> &sizes, int window) {
  const auto count = static_cast<int>(sizes.size());
  std::vector<double> around(static_cast<std::size_t>(window)), above;
  for (int i = 0; i < count; ++i) {
    for (int k = 0; k < window; ++k)
      around[static_cast<std::size_t>(k)] =
          sizes[static_cast<std::size_t>(std::clamp(i + k - window / 2, 0, count - 1))];
    std::nth_element(around.begin(), around.begin() + window / 2, around.end());
    above.push_back(sizes[static_cast<std::size_t>(i)] - around[static_cast<std::size_t>(window / 2)]);
  }
  return above;
}

/// What a line at an eighth leaves in the two sums on either side: the transform of the squared Hann window,
/// 3/8, 1/4 and 1/16 at 0, 1 and 2 bins.
void take_off_eighths(UpsamplingTrace &trace) {
  constexpr double shares[] = {1.0, 2.0 / 3, 1.0 / 6};
  for (int k = 2; k < static_cast<int>(trace.at_eighths.size()); ++k)
    for (int away = -2; away <= 2; ++away) {
      const auto i = static_cast<std::size_t>(k * trace.side / 8 + away - trace.first_sum());
      const double line = std::abs(trace.at_eighths[static_cast<std::size_t>(k)]);
      if (away != 0 && i < trace.excess.size()) trace.excess[i] -= shares[std::abs(away)] * line;
    }
}

void add_eighths(const Tile &tile, const Coherence &coherence, double share, UpsamplingTrace &trace) {
  for (std::size_t k = 2; k < trace.at_eighths.size(); ++k) {
    const Complex turn = std::polar(share, -2 * std::numbers::pi * static_cast<double>(k) / 8 *
                                               static_cast<double>(tile.x % 8));
    const auto i = static_cast<std::size_t>(static_cast<int>(k) * tile.side / 8 - trace.first_sum());
    trace.at_eighths[k] += coherence.plain[i] * turn;
    trace.damped_at_eighths[k] += coherence.damped[i] * turn;
  }
}

void add_power(const RowSpectrum &spectrum, double share, std::vector<double> &power) {
  power.resize(static_cast<std::size_t>(spectrum.bins()));
  for (int bin = 0; bin < spectrum.bins(); ++bin)
    power[static_cast<std::size_t>(bin)] +=
        share * spectrum.power(bin) / spectrum.window_power() / spectrum.rows();
}

} // namespace

UpsamplingTrace upsampling_trace(const std::vector<Tile> &tiles) {
  UpsamplingTrace trace;
  if (tiles.empty()) return trace;
  trace.side = tiles.front().side;
  const std::size_t best = std::min<std::size_t>(4, tiles.size());
  const std::vector<Pair> pairs = pairs_of(trace.side);
  std::vector<Coherence> coherences;
  for (std::size_t i = 0; i < tiles.size(); ++i) {
    const RowSpectrum spectrum(tiles[i]);
    coherences.push_back(coherence_of(spectrum, pairs));
    coherences.back().place = tiles[i].x / trace.side;
    const double share = 1.0 / static_cast<double>(tiles.size());
    add_eighths(tiles[i], coherences.back(), share, trace);
    add_power(spectrum, share, trace.power);
    if (i < best) add_power(spectrum, 1.0 / static_cast<double>(best), trace.power_of_best);
  }
  trace.excess = above_median(together(coherences, sums_of(pairs)), (25 * trace.side / 256) | 1);
  take_off_eighths(trace);
  return trace;
}

} // namespace stoneproof
