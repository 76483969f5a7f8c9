// Looking for an earlier JPEG on the same grid. The only way in is jpeg_before; tested in
// tests/engine/measure/jpeg_past.test.cpp, scored by tests/bench/detail/history.cpp.
#include "engine/measure/jpeg_before.h"

#include "engine/measure/jpeg_quality.h"
#include "engine/picture/lanes.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <numbers>
#include <utility>

namespace stoneproof {

namespace {

constexpr double reach = 160; ///< values beyond are few
constexpr double rounding = 0.45;
constexpr int largest_step = 120, least_quality = 20, most_quality = 99;
constexpr std::size_t mode_count = 20; ///< five diagonals

/// Share of what pixels were rounded to that lies less than `off` above its multiple. Of halves only, where
/// bins begin and end.
double rounded_below(double off) {
  constexpr int least = -10, most = 40; // there it is 0 and 1
  static const auto table = [] {
    std::array<double, most - least + 1> shares{};
    for (int half = least; half <= most; ++half)
      shares[static_cast<std::size_t>(half - least)] =
          0.5 * std::erfc(-0.5 * half / rounding / std::numbers::sqrt2);
    return shares;
  }();
  return table[static_cast<std::size_t>(std::clamp(2 * off, double{least}, double{most}) - least)];
}

/// The |values| of one mode: how often each multiple of the present step occurs, and how values lie where no
/// grid bends them.
class Values {
public:
  explicit Values(int step) : step_(step), counts_(static_cast<std::size_t>(reach / step) + 1) {}

  void add(float value) {
    const auto k = static_cast<std::size_t>(std::abs(value) / static_cast<float>(step_) + 0.5F);
    if (k < counts_.size()) ++counts_[k];
  }
  void add_free(float value) {
    const auto bin = static_cast<std::size_t>(std::abs(value) * free_bins_a_level);
    if (bin < free_bins) ++free_[bin + 1];
  }
  void finish() {
    // One for each bin, so that it is even where there are few.
    for (std::size_t i = 1; i < free_.size(); ++i) free_[i] += free_[i - 1] + 1;
    below_.assign(counts_.size() + 1, 0);
    for (std::size_t k = 0; k < counts_.size(); ++k) below_[k + 1] = below_[k] + counts_[k];
  }

  int step() const { return step_; }
  const std::vector<double> &counts() const { return counts_; }
  double low(std::size_t k) const { return std::max(0.0, (static_cast<double>(k) - 0.5) * step_); }
  double high(std::size_t k) const { return (static_cast<double>(k) + 0.5) * step_; }
  std::size_t bin_of(double value) const {
    return value <= 0 ? 0 : static_cast<std::size_t>(value / step_ + 0.5);
  }

  /// How many of the free values lie below; of halves of a level, where bins begin and end.
  double free_below(double value) const {
    return free_[static_cast<std::size_t>(std::min(value * free_bins_a_level, free_bins - 1.0))];
  }
  /// How many values of the picture lay below before they were quantized with the present step; of halves,
  /// too.
  double counted_below(double value) const {
    const std::size_t k = bin_of(value);
    if (k >= counts_.size()) return below_.back();
    const double begin = free_below(low(k));
    return below_[k] + counts_[k] * (free_below(value) - begin) / (free_below(high(k)) - begin);
  }

private:
  static constexpr double free_bins_a_level = 2;
  static constexpr std::size_t free_bins = 400;
  int step_;
  std::vector<double> counts_, below_;
  std::vector<double> free_ = std::vector<double>(free_bins + 1);
};

/// What is expected of each multiple of the present step.
struct Expected {
  std::vector<double> stepped, even;
};

Expected expected(const Values &values, int step) {
  const std::size_t bins = values.counts().size();
  Expected e{std::vector<double>(bins), std::vector<double>(bins)};
  const double end = values.high(bins - 1);
  double counted = 0;
  for (int j = 0; (j - 0.5) * step < end; ++j) {
    const double centre = j * step, begin = std::max(0.0, (j - 0.5) * step), stop = (j + 0.5) * step;
    const double upto_stop = values.counted_below(stop),
                 count = upto_stop - std::exchange(counted, upto_stop);
    const double density = count / (values.free_below(stop) - values.free_below(begin));
    for (std::size_t k = values.bin_of(begin); k < bins && values.low(k) < stop; ++k)
      e.even[k] += density * (values.free_below(std::min(stop, values.high(k))) -
                              values.free_below(std::max(begin, values.low(k))));
    double before = 0;
    for (std::size_t k = values.bin_of(centre - 4 * rounding);
         k < bins && values.low(k) < centre + 4 * rounding; ++k) {
      const double upto = rounded_below(values.high(k) - centre);
      e.stepped[k] += count * (upto - before);
      before = upto;
    }
  }
  return e;
}

/// Logarithm of the likelihood ratio; values of less than half an earlier step tell nothing.
double likelihood(const Values &values, int step) {
  constexpr double least_count = 30, outliers = 0.03, nothing = 1e-9;
  const std::vector<double> &counts = values.counts();
  const auto first = static_cast<std::size_t>(0.5 * step / values.step() + 0.5) + 1;
  double count = 0, stepped = nothing, even = nothing;
  for (std::size_t k = first; k < counts.size(); ++k) count += counts[k];
  if (count < least_count) return 0;
  const Expected e = expected(values, step);
  for (std::size_t k = first; k < counts.size(); ++k) stepped += e.stepped[k], even += e.even[k];
  double sum = 0;
  for (std::size_t k = first; k < counts.size(); ++k) {
    if (counts[k] == 0) continue;
    const double plain = e.even[k] / even;
    const double combed = (1 - outliers) * e.stepped[k] / stepped + outliers * plain;
    sum += counts[k] * std::log((combed + nothing) / (plain + nothing));
  }
  return sum;
}

constexpr std::size_t waves = 6; ///< as many as five diagonals need

/// The waves down of a row of blocks: [frequency][across].
using Columns = std::array<std::vector<float>, waves>;

void find_columns(const Tile &tile, int top, Columns &columns) {
  const auto side = static_cast<std::size_t>(tile.side);
  std::vector<float> row(side);
  for (auto &column : columns) column.assign(side, 0);
  for (std::size_t y = 0; y < jpeg_block; ++y) {
    const std::uint8_t *from = tile.luma.data() + (static_cast<std::size_t>(top) + y) * side;
    for (std::size_t x = 0; x < side; ++x) row[x] = from[x];
    for (std::size_t u = 0; u < waves; ++u) {
      const float cosine = block_cosines()[u][y];
      float *to = columns[u].data();
      for (std::size_t x = 0; x < side; ++x) to[x] += cosine * row[x];
    }
  }
}

/// The low frequencies of one block, in the order of block_modes.
std::array<float, mode_count> frequencies(const Columns &columns, std::size_t left) {
  // [place][frequency], so that the waves across lie side by side, more of them than are asked for.
  static const BlockCosines across = [] {
    BlockCosines turned{};
    for (std::size_t u = 0; u < jpeg_block; ++u)
      for (std::size_t x = 0; x < jpeg_block; ++x) turned[x][u] = block_cosines()[u][x];
    return turned;
  }();
  std::array<std::array<float, jpeg_block>, waves> both;
  for (std::size_t down = 0; down < waves; ++down)
    for (std::size_t u = 0; u < jpeg_block; u += lane_count) {
      Lanes sum{};
      for (std::size_t x = 0; x < jpeg_block; ++x) sum += columns[down][left + x] * lanes_at(&across[x][u]);
      std::memcpy(&both[down][u], &sum, sizeof sum);
    }
  std::array<float, mode_count> values;
  for (std::size_t m = 0; m < mode_count; ++m) {
    const BlockMode mode = block_modes()[m];
    values[m] = both[static_cast<std::size_t>(mode.down)][static_cast<std::size_t>(mode.across)];
  }
  return values;
}

/// Hands the frequencies of all blocks that are not clipped, from `offset` on, to `use`.
template <class Use>
void for_blocks(const std::vector<Tile> &tiles, int offset, Use use) {
  Columns columns;
  for (const Tile &tile : tiles)
    for (int y = offset; y + jpeg_block <= tile.side; y += jpeg_block) {
      find_columns(tile, y, columns);
      const ClippedColumns clipped(tile, y, jpeg_block);
      for (int x = offset; x + jpeg_block <= tile.side; x += jpeg_block)
        if (!clipped.any(x, jpeg_block)) use(frequencies(columns, static_cast<std::size_t>(x)));
    }
}

std::optional<std::vector<Values>> values_of(const std::vector<Tile> &tiles, const QuantTable &present) {
  constexpr int least_blocks = 50;
  constexpr double least_values = 200;
  std::vector<Values> values;
  for (std::size_t m = 0; m < mode_count; ++m)
    values.emplace_back(std::max<int>(1, present[block_modes()[m].at()]));
  int blocks = 0;
  for_blocks(tiles, 0, [&](const std::array<float, mode_count> &block) {
    ++blocks;
    for (std::size_t m = 0; m < mode_count; ++m) values[m].add(block[m]);
  });
  for_blocks(tiles, jpeg_block / 2, [&](const std::array<float, mode_count> &block) {
    for (std::size_t m = 0; m < mode_count; ++m) values[m].add_free(block[m]);
  });
  double beside_nought = 0;
  for (Values &mode : values) {
    mode.finish();
    for (std::size_t k = 1; k < mode.counts().size(); ++k) beside_nought += mode.counts()[k];
  }
  if (blocks < least_blocks || beside_nought < least_values) return std::nullopt;
  return values;
}

/// [mode][step]; 0 where a step is not looked for.
using Likelihoods = std::vector<std::array<double, largest_step + 1>>;

/// The best of the standard tables, as stored or turned by a quarter.
JpegBefore best_standard(const Likelihoods &known) {
  JpegBefore best;
  std::array<double, most_quality + 1> of_quality{};
  for (int quality = least_quality; quality <= most_quality; ++quality) {
    const QuantTable table = standard_luma(quality);
    double upright = 0, turned = 0;
    for (std::size_t m = 0; m < mode_count; ++m) {
      upright += known[m][std::min<std::size_t>(table[block_modes()[m].at()], largest_step)];
      turned += known[m][std::min<std::size_t>(table[block_modes()[m].turned_at()], largest_step)];
    }
    const double here = std::max(upright, turned);
    of_quality[static_cast<std::size_t>(quality)] = here;
    if (here > best.likelihood) best = {here, {quality, quality, quality}};
  }
  // As far as tables nearly as likely stand side by side, and one more.
  const auto likely = [&](int quality) {
    return quality >= least_quality && quality <= most_quality &&
           of_quality[static_cast<std::size_t>(quality)] > 0.7 * best.likelihood;
  };
  while (likely(best.earlier.low - 1)) --best.earlier.low;
  while (likely(best.earlier.high + 1)) ++best.earlier.high;
  --best.earlier.low;
  ++best.earlier.high;
  return best;
}

/// The best step of each mode by itself.
JpegBefore best_steps(const Likelihoods &known) {
  constexpr double sure = 40;
  std::vector<FoundStep> steps;
  double sum = 0;
  for (std::size_t m = 0; m < mode_count; ++m) {
    const auto best = std::ranges::max_element(known[m]);
    if (*best <= sure) continue;
    sum += *best;
    steps.push_back({block_modes()[m], static_cast<int>(best - known[m].begin())});
  }
  constexpr std::size_t least_modes = 2;
  if (steps.size() < least_modes) return {};
  return {sum, nearest_quality(steps)};
}

} // namespace

std::optional<JpegBefore> jpeg_before(const std::vector<Tile> &tiles, const QuantTable &present) {
  const auto values = values_of(tiles, present);
  if (!values) return std::nullopt;
  Likelihoods known(mode_count);
  for (std::size_t m = 0; m < mode_count; ++m)
    for (int step = (*values)[m].step() + 1; step <= largest_step; ++step)
      known[m][static_cast<std::size_t>(step)] = likelihood((*values)[m], step);
  const JpegBefore standard = best_standard(known), other = best_steps(known);
  constexpr double enough_of_other = 0.5;
  return standard.likelihood >= enough_of_other * other.likelihood ? standard : other;
}

} // namespace stoneproof
