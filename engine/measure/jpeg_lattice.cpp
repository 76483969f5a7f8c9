// Looking for a JPEG's lattice. The only way in is jpeg_trace; tested in
// tests/engine/measure/jpeg_past.test.cpp, scored by tests/bench/detail/history.cpp.
#include "engine/measure/jpeg_lattice.h"

#include "engine/measure/jpeg_quality.h"
#include "engine/picture/lanes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <cstring>
#include <numbers>
#include <numeric>

namespace stoneproof {

namespace {

constexpr int places = jpeg_block * jpeg_block;
constexpr int patch_side = 2 * jpeg_block - 1; ///< holds a block at every place
constexpr int least_quality = 25, most_quality = 97;
constexpr int smallest_step = 2, largest_step = 60;
constexpr std::size_t mode_count = 35;
/// |Values| of a frequency, counted in halves of a level up to 96: larger ones are few, and share a last bin.
constexpr int value_bins = 192;
constexpr float bins_a_level = 2;

/// A row of a patch; the last value is nought, and fills the vectors that rows are handled in.
using PatchRow = std::array<float, patch_side + 1>;
using Patch = std::array<PatchRow, patch_side>;

struct Found {
  double variance;
  const Tile *tile;
  int x, y;
};

/// Of the columns of some rows of a tile: sums of its values and of their squares.
struct ColumnSums {
  std::vector<std::int32_t> values, squares;
};

ColumnSums column_sums(const Tile &tile, int top) {
  const auto side = static_cast<std::size_t>(tile.side);
  ColumnSums sums{std::vector<std::int32_t>(side), std::vector<std::int32_t>(side)};
  for (int y = top; y < top + patch_side; ++y) {
    const std::uint8_t *row = tile.luma.data() + static_cast<std::ptrdiff_t>(y) * tile.side;
    for (std::size_t x = 0; x < side; ++x) sums.values[x] += row[x], sums.squares[x] += row[x] * row[x];
  }
  return sums;
}

double variance_of(const ColumnSums &sums, int left) {
  const auto sum = [left](const std::vector<std::int32_t> &columns) {
    return std::accumulate(columns.begin() + left, columns.begin() + left + patch_side, 0);
  };
  constexpr double count = patch_side * patch_side;
  const double mean = sum(sums.values) / count;
  return sum(sums.squares) / count - mean * mean;
}

/// Patches with most texture; none where there are too few.
std::vector<Patch> patches_of(const std::vector<Tile> &tiles) {
  constexpr double least_variance = 4;
  constexpr std::size_t most_patches = 500, least_patches = 50;
  std::vector<Found> found;
  for (const Tile &tile : tiles)
    for (int y = 0; y + patch_side <= tile.side; y += jpeg_block) {
      const ColumnSums sums = column_sums(tile, y);
      const ClippedColumns clipped(tile, y, patch_side);
      for (int x = 0; x + patch_side <= tile.side; x += jpeg_block)
        if (const double variance = variance_of(sums, x);
            variance > least_variance && !clipped.any(x, patch_side))
          found.push_back({variance, &tile, x, y});
    }
  if (found.size() < least_patches) return {};
  if (found.size() > most_patches) {
    std::nth_element(found.begin(), found.begin() + most_patches, found.end(),
                     [](const Found &a, const Found &b) { return a.variance > b.variance; });
    found.resize(most_patches);
  }
  std::vector<Patch> patches(found.size());
  for (std::size_t i = 0; i < found.size(); ++i)
    for (int y = 0; y < patch_side; ++y)
      for (int x = 0; x < patch_side; ++x)
        patches[i][static_cast<std::size_t>(y)][static_cast<std::size_t>(x)] =
            static_cast<float>(found[i].tile->at(found[i].x + x, found[i].y + y)) - 128.0F;
  return patches;
}

/// The waves down of all patches, for one row of places: [frequency][patch][across].
using Columns = std::array<std::vector<PatchRow>, jpeg_block>;

void find_columns(const std::vector<Patch> &patches, std::size_t dy, Columns &columns) {
  const BlockCosines &c = block_cosines();
  for (std::size_t u = 0; u < jpeg_block; ++u) {
    columns[u].resize(patches.size());
    for (std::size_t i = 0; i < patches.size(); ++i)
      for (std::size_t x = 0; x < PatchRow().size(); x += lane_count) {
        Lanes sum{};
        for (std::size_t y = 0; y < jpeg_block; ++y) sum += c[u][y] * lanes_at(&patches[i][dy + y][x]);
        std::memcpy(&columns[u][i][x], &sum, sizeof sum);
      }
  }
}

/// How often each |value| of a mode occurs, at the eight places of a row.
using Counts = std::array<std::array<std::int16_t, value_bins + 8>, jpeg_block>;

Counts counts_of(const Columns &columns, BlockMode mode) {
  const auto &wave = block_cosines()[static_cast<std::size_t>(mode.across)];
  Counts counts{};
  for (const PatchRow &column : columns[static_cast<std::size_t>(mode.down)]) {
    for (std::size_t dx = 0; dx < jpeg_block; dx += lane_count) {
      Lanes value{};
      for (std::size_t x = 0; x < jpeg_block; ++x) value += lanes_at(&column[dx + x]) * wave[x];
      const IntLanes bins = whole(value * bins_a_level);
      for (std::size_t i = 0; i < lane_count; ++i)
        ++counts[dx + i][static_cast<std::size_t>(std::min(std::abs(bins[i]), value_bins))];
    }
  }
  return counts;
}

/// cos(2 pi c / step) of every bin's middle, in 16384ths; values of less than half a step tell nothing.
using Wave = std::array<std::int16_t, value_bins>;
const Wave &wave(int step) {
  static const std::vector<Wave> all = [] {
    std::vector<Wave> waves(largest_step + 1);
    for (int s = smallest_step; s <= largest_step; ++s)
      for (int bin = s; bin < value_bins; ++bin)
        waves[static_cast<std::size_t>(s)][static_cast<std::size_t>(bin)] = static_cast<std::int16_t>(
            std::lround(16384 * std::cos(2 * std::numbers::pi * (bin + 0.5) / bins_a_level / s)));
    return waves;
  }();
  return all[static_cast<std::size_t>(step)];
}

struct Sum {
  float cosines = 0, count = 0;

  /// In standard deviations of what chance gives.
  double strength(float least_count) const {
    return count >= least_count ? cosines / std::sqrt(count / 2) : 0;
  }
};

/// Of every mode, step and place.
class Sums {
public:
  using OfPlaces = std::array<Sum, places>;

  explicit Sums(const std::vector<Patch> &patches) {
    Columns columns;
    for (std::size_t dy = 0; dy < jpeg_block; ++dy) {
      find_columns(patches, dy, columns);
      for (std::size_t mode = 0; mode < mode_count; ++mode) {
        const Counts counts = counts_of(columns, block_modes()[mode]);
        for (std::size_t dx = 0; dx < jpeg_block; ++dx) fill(counts[dx].data(), mode, dy * jpeg_block + dx);
      }
    }
  }

  const OfPlaces &at(std::size_t mode, int step) const { return sums_[mode][static_cast<std::size_t>(step)]; }

private:
  void fill(const std::int16_t *counts, std::size_t mode, std::size_t place) {
    constexpr int lanes = 8;
    std::array<std::int32_t, value_bins + 1> from{}; // how many values lie in this bin or beyond
    for (std::size_t bin = value_bins; bin-- > 0;) from[bin] = from[bin + 1] + counts[bin];
    int end = value_bins;
    while (end > lanes && from[static_cast<std::size_t>(end - lanes)] == 0) end -= lanes;
    for (int step = smallest_step; step <= largest_step; ++step) {
      const std::int16_t *cosines = wave(step).data();
      std::int32_t sum = 0;
      for (int bin = step / lanes * lanes; bin < end; ++bin) sum += counts[bin] * cosines[bin];
      sums_[mode][static_cast<std::size_t>(step)][place] = {
          static_cast<float>(sum) / 16384, static_cast<float>(from[static_cast<std::size_t>(step)])};
    }
  }

  std::vector<std::array<OfPlaces, largest_step + 1>> sums_ =
      std::vector<std::array<OfPlaces, largest_step + 1>>(mode_count);
};

struct Peak {
  double contrast = 0;
  std::size_t place = 0;
};

/// The search over places and tables.
class Search {
public:
  Search(const Sums &sums, const LatticeOrder &order) : sums_(sums), present_(order.present) {
    if (present_) {
      // What lies nearer to its own steps is the shadow of its own lattice.
      constexpr int apart = 4;
      JpegFacts facts;
      facts.luma = present_;
      if (const auto quality = jpeg_quality(facts)) most_ = std::min(most_, quality->quality - apart);
    }
  }

  JpegTrace best() const {
    std::array<double, most_quality + 1> of_quality{};
    Peak top;
    int at = least_quality;
    bool top_turned = false;
    for (int quality = least_quality; quality <= most_; ++quality)
      for (const bool turned : {false, true}) {
        const Peak peak = peak_of(standard_luma(quality), turned);
        double &here = of_quality[static_cast<std::size_t>(quality)];
        here = std::max(here, peak.contrast);
        if (peak.contrast > top.contrast) top = peak, at = quality, top_turned = turned;
      }
    JpegTrace trace{{at, at, at}, 0, 0, top.contrast};
    trace.shift_x = static_cast<int>(top.place % jpeg_block);
    trace.shift_y = static_cast<int>(top.place / jpeg_block);
    const auto near = [&](int quality) {
      return quality >= least_quality && quality <= most_ &&
             of_quality[static_cast<std::size_t>(quality)] > 0.8 * top.contrast;
    };
    while (near(trace.earlier.low - 1)) --trace.earlier.low;
    while (near(trace.earlier.high + 1)) ++trace.earlier.high;
    --trace.earlier.low;
    ++trace.earlier.high;
    if (const auto other = other_table(top.place, standard_luma(at), top_turned)) trace.earlier = *other;
    return trace;
  }

private:
  bool usable(std::size_t mode, int step) const {
    return step >= smallest_step && step <= largest_step &&
           (!present_ || step > (*present_)[block_modes()[mode].at()]);
  }

  static int step_of(const QuantTable &table, std::size_t mode, bool turned) {
    return table[turned ? block_modes()[mode].turned_at() : block_modes()[mode].at()];
  }

  Peak peak_of(const QuantTable &table, bool turned) const {
    Sums::OfPlaces total{};
    for (std::size_t mode = 0; mode < mode_count; ++mode) {
      const int step = step_of(table, mode, turned);
      if (!usable(mode, step)) continue;
      const Sums::OfPlaces &here = sums_.at(mode, step);
      for (std::size_t place = 0; place < places; ++place) {
        total[place].cosines += here[place].cosines;
        total[place].count += here[place].count;
      }
    }
    std::array<double, places> strengths{};
    std::ranges::transform(total, strengths.begin(), [](const Sum &sum) { return sum.strength(100); });
    std::array<double, places> sorted = strengths;
    std::ranges::sort(sorted);
    const double usual = (sorted[places / 2 - 1] + sorted[places / 2]) / 2;
    Peak peak;
    for (std::size_t place = present_ ? 1 : 0; place < places; ++place)
      if (strengths[place] - usual > peak.contrast) peak = {strengths[place] - usual, place};
    return peak;
  }

  /// How far a place stands above the mean of all, for one mode and step.
  double above_mean(std::size_t mode, int step, std::size_t place) const {
    const Sums::OfPlaces &here = sums_.at(mode, step);
    double mean = 0;
    for (const Sum &sum : here) mean += sum.strength(30) / places;
    return here[place].strength(30) - mean;
  }

  /// The quality of the steps that each mode has by itself at this place, where they are not the table's.
  std::optional<EarlierQuality> other_table(std::size_t place, const QuantTable &table, bool turned) const {
    constexpr double sure = 5, as_good = 0.9;
    constexpr std::size_t least_modes = 6;
    std::vector<FoundStep> steps;
    std::size_t fitting = 0;
    for (std::size_t mode = 0; mode < mode_count; ++mode) {
      std::array<double, largest_step + 1> strength{};
      for (int step = smallest_step; step <= largest_step; ++step)
        if (usable(mode, step)) strength[static_cast<std::size_t>(step)] = above_mean(mode, step, place);
      const double best = *std::ranges::max_element(strength);
      if (best < sure) continue;
      int step = largest_step; // what lies on multiples of a step lies on those of its half, too
      while (strength[static_cast<std::size_t>(step)] < as_good * best) --step;
      steps.push_back({block_modes()[mode], step});
      const int expected = std::min(step_of(table, mode, turned), largest_step);
      fitting += std::abs(expected - step) <= std::max(1, step / 16) ||
                 strength[static_cast<std::size_t>(expected)] > as_good * best;
    }
    if (steps.size() < least_modes || 4 * fitting >= 3 * steps.size()) return std::nullopt;
    return nearest_quality(steps);
  }

  const Sums &sums_;
  const std::optional<QuantTable> &present_;
  int most_ = most_quality;
};

} // namespace

std::optional<JpegTrace> jpeg_trace(const std::vector<Tile> &tiles, const LatticeOrder &order) {
  const std::vector<Patch> patches = patches_of(tiles);
  if (patches.empty()) return std::nullopt;
  return Search(Sums(patches), order).best();
}

} // namespace stoneproof
