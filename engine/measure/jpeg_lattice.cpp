// Looking for a JPEG's lattice. The only way in is jpeg_trace; tested in
// tests/engine/measure/jpeg_lattice.test.cpp, scored by tests/bench/detail.
#include "engine/measure/jpeg_lattice.h"

#include "engine/measure/jpeg_quality.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stoneproof {

namespace {

constexpr int block = 8, places = block * block;
constexpr int patch_side = 15; ///< holds a block at every place
constexpr int least_quality = 25, most_quality = 97;
constexpr int largest_step = 60;
constexpr std::size_t most_patches = 500, least_patches = 50;
/// Values of a frequency, counted in quarters up to 96: larger ones are few.
constexpr int value_bins = 384;
constexpr double bins_a_level = 4;

struct Mode {
  int down, across;
};

/// The low frequencies, up to the seventh diagonal: higher ones are mostly nought.
const std::vector<Mode> &modes() {
  static const std::vector<Mode> all = [] {
    std::vector<Mode> list;
    for (int down = 0; down < block; ++down)
      for (int across = 0; across < block; ++across)
        if (down + across >= 1 && down + across <= 7) list.push_back({down, across});
    return list;
  }();
  return all;
}

using Patch = std::array<float, static_cast<std::size_t>(patch_side) * patch_side>;

struct Found {
  double variance;
  const Tile *tile;
  int x, y;
};

/// Variance of a patch; nothing where it is black or white anywhere, since clipping hides the lattice.
std::optional<double> variance_of(const Tile &tile, int left, int top) {
  double sum = 0, squares = 0;
  for (int y = top; y < top + patch_side; ++y)
    for (int x = left; x < left + patch_side; ++x) {
      const int value = tile.at(x, y);
      if (value <= 1 || value >= 254) return std::nullopt;
      sum += value;
      squares += value * value;
    }
  constexpr double count = patch_side * patch_side;
  return squares / count - (sum / count) * (sum / count);
}

/// Patches with most texture.
std::vector<Patch> patches_of(const std::vector<Tile> &tiles) {
  constexpr double least_variance = 4;
  std::vector<Found> found;
  for (const Tile &tile : tiles)
    for (int y = 0; y + patch_side <= tile.side; y += block)
      for (int x = 0; x + patch_side <= tile.side; x += block)
        if (const auto variance = variance_of(tile, x, y); variance && *variance > least_variance)
          found.push_back({*variance, &tile, x, y});
  if (found.size() > most_patches) {
    std::nth_element(found.begin(), found.begin() + most_patches, found.end(),
                     [](const Found &a, const Found &b) { return a.variance > b.variance; });
    found.resize(most_patches);
  }
  std::vector<Patch> patches(found.size());
  for (std::size_t i = 0; i < found.size(); ++i)
    for (int y = 0; y < patch_side; ++y)
      for (int x = 0; x < patch_side; ++x)
        patches[i][static_cast<std::size_t>(y * patch_side + x)] =
            static_cast<float>(found[i].tile->at(found[i].x + x, found[i].y + y)) - 128.0F;
  return patches;
}

/// The discrete cosine transform of T.81: [frequency][place].
const std::array<std::array<float, block>, block> &cosines() {
  static const auto table = [] {
    std::array<std::array<float, block>, block> values{};
    for (std::size_t u = 0; u < block; ++u)
      for (std::size_t x = 0; x < block; ++x)
        values[u][x] = static_cast<float>(
            (u == 0 ? std::sqrt(1.0 / 8) : 0.5) *
            std::cos((2 * static_cast<double>(x) + 1) * static_cast<double>(u) * std::numbers::pi / 16));
    return values;
  }();
  return table;
}

/// How often each |value| of a mode occurs, by place of the grid.
class Counts {
public:
  Counts() : counts_(static_cast<std::size_t>(places) * modes().size() * value_bins) {}

  void add(const Patch &patch) {
    const auto &c = cosines();
    for (std::size_t dy = 0; dy < block; ++dy) {
      std::array<std::array<float, patch_side>, block> columns{};
      for (std::size_t u = 0; u < block; ++u)
        for (std::size_t y = 0; y < block; ++y)
          for (std::size_t x = 0; x < patch_side; ++x)
            columns[u][x] += c[u][y] * patch[(dy + y) * patch_side + x];
      for (std::size_t dx = 0; dx < block; ++dx) add_block(columns, dx, dy * block + dx);
    }
  }

  const float *of(std::size_t place, std::size_t mode) const {
    return counts_.data() + (place * modes().size() + mode) * value_bins;
  }

private:
  void add_block(const std::array<std::array<float, patch_side>, block> &columns, std::size_t dx,
                 std::size_t place) {
    const auto &c = cosines();
    for (std::size_t m = 0; m < modes().size(); ++m) {
      const auto &column = columns[static_cast<std::size_t>(modes()[m].down)];
      const auto &wave = c[static_cast<std::size_t>(modes()[m].across)];
      float value = 0;
      for (std::size_t x = 0; x < block; ++x) value += column[dx + x] * wave[x];
      const float bin = std::abs(value) * static_cast<float>(bins_a_level);
      if (bin < value_bins)
        ++counts_[(place * modes().size() + m) * value_bins + static_cast<std::size_t>(bin)];
    }
  }

  std::vector<float> counts_; ///< whole numbers
};

/// cos(2 pi c / step) of every bin's middle.
const std::vector<float> &waves(int step) {
  static const std::vector<std::vector<float>> all = [] {
    std::vector<std::vector<float>> tables(largest_step + 1);
    for (std::size_t s = 2; s < tables.size(); ++s)
      for (int bin = 0; bin < value_bins; ++bin)
        tables[s].push_back(static_cast<float>(
            std::cos(2 * std::numbers::pi * (bin + 0.5) / bins_a_level / static_cast<double>(s))));
    return tables;
  }();
  return all[static_cast<std::size_t>(step)];
}

struct Sum {
  double cosines = 0, count = 0;
};

/// Values of less than half a step tell nothing.
Sum sum_of(const float *counts, int step) {
  constexpr int lanes = 8;
  const float *wave = waves(step).data();
  std::array<float, lanes> cosines{}, count{};
  for (int bin = 2 * step / lanes * lanes; bin < value_bins; bin += lanes)
    for (int i = 0; i < lanes; ++i) {
      const auto lane = static_cast<std::size_t>(i);
      const float here = bin + i >= 2 * step ? counts[bin + i] : 0.0F;
      cosines[lane] += here * wave[bin + i];
      count[lane] += here;
    }
  Sum sum;
  for (std::size_t i = 0; i < lanes; ++i) sum.cosines += cosines[i], sum.count += count[i];
  return sum;
}

/// [quality][place], in standard deviations of what chance gives.
class Scores {
public:
  Scores(const Counts &counts, const LatticeOrder &order) {
    constexpr std::size_t qualities = most_quality - least_quality + 1;
    sums_.resize(qualities);
    std::vector<QuantTable> tables;
    for (int q = least_quality; q <= most_quality; ++q) tables.push_back(standard_luma(q));
    for (std::size_t mode = 0; mode < modes().size(); ++mode) {
      const auto at = static_cast<std::size_t>(modes()[mode].down * block + modes()[mode].across);
      std::array<std::vector<Sum>, largest_step + 1> known; // by step: of every place
      for (std::size_t q = 0; q < qualities; ++q) {
        const int step = tables[q][at];
        if (step < 2 || step > largest_step || (order.present && step <= (*order.present)[at])) continue;
        auto &of_places = known[static_cast<std::size_t>(step)];
        if (of_places.empty())
          for (std::size_t place = 0; place < places; ++place)
            of_places.push_back(sum_of(counts.of(place, mode), step));
        for (std::size_t place = 0; place < places; ++place) {
          sums_[q][place].cosines += of_places[place].cosines;
          sums_[q][place].count += of_places[place].count;
        }
      }
    }
  }

  JpegTrace best(bool without_origin) const {
    JpegTrace best;
    for (std::size_t q = 0; q < sums_.size(); ++q) {
      std::array<double, places> z{};
      for (std::size_t place = 0; place < places; ++place) {
        const Sum &sum = sums_[q][place];
        constexpr double least_count = 100;
        z[place] = sum.count >= least_count ? sum.cosines / std::sqrt(sum.count / 2) : 0;
      }
      std::array<double, places> sorted = z;
      std::ranges::sort(sorted);
      const double usual = (sorted[places / 2 - 1] + sorted[places / 2]) / 2;
      for (std::size_t place = without_origin ? 1 : 0; place < places; ++place)
        if (z[place] - usual > best.contrast)
          best = {static_cast<int>(q) + least_quality, static_cast<int>(place % block),
                  static_cast<int>(place / block), z[place] - usual};
    }
    return best;
  }

private:
  std::vector<std::array<Sum, places>> sums_;
};

} // namespace

std::optional<JpegTrace> jpeg_trace(const std::vector<Tile> &tiles, const LatticeOrder &order) {
  const std::vector<Patch> patches = patches_of(tiles);
  if (patches.size() < least_patches) return std::nullopt;
  Counts counts;
  for (const Patch &patch : patches) counts.add(patch);
  return Scores(counts, order).best(order.present.has_value());
}

} // namespace stoneproof
