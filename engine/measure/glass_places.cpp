// Counts scans that agree. Only ways in: glass_places.h. Tested in tests/engine/measure/glass_dirt.test.cpp.
#include "engine/measure/glass_places.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace stoneproof {

namespace {

constexpr std::int64_t strip_rows = 64;

/// What all scans tell of some rows of the glass.
class Strip {
public:
  explicit Strip(const MarkedScans &scans)
      : scans_(scans), next_(scans.marks.size()),
        surprises_(scans.marks.size(),
                   std::vector<std::uint8_t>(static_cast<std::size_t>(scans.width * strip_rows))),
        counts_(static_cast<std::size_t>(scans.width * strip_rows)) {}

  void move_to(std::int64_t top) {
    std::fill(counts_.begin(), counts_.end(), std::uint16_t{0});
    for (std::size_t scan = 0; scan < next_.size(); ++scan) {
      std::fill(surprises_[scan].begin(), surprises_[scan].end(), std::uint8_t{0});
      const auto &marks = scans_.marks[scan];
      const std::int64_t down = scans_.shifts[scan].y;
      std::size_t &next = next_[scan];
      while (next < marks.size() && marks[next].y - down + scans_.reach < top) ++next;
      for (std::size_t i = next; i < marks.size() && marks[i].y - down - scans_.reach < top + strip_rows; ++i)
        paint(scan, marks[i], top);
    }
  }
  std::uint16_t count(std::size_t at) const { return counts_[at]; }
  /// The largest first.
  void surprises(std::size_t at, std::vector<double> &values) const {
    values.clear();
    for (const auto &scan : surprises_)
      if (scan[at] != 0) values.push_back(scan[at] / surprise_unit);
    std::sort(values.rbegin(), values.rend());
  }

private:
  void paint(std::size_t scan, const PlacedMark &mark, std::int64_t top) {
    const std::int64_t x0 = mark.x - scans_.shifts[scan].x, y0 = mark.y - scans_.shifts[scan].y;
    const std::int64_t first = std::max(y0 - scans_.reach, top),
                       last = std::min(y0 + scans_.reach, top + strip_rows - 1);
    const std::int64_t left = std::max<std::int64_t>(0, x0 - scans_.reach),
                       right = std::min(x0 + scans_.reach, scans_.width - 1);
    for (std::int64_t y = first; y <= last; ++y)
      for (std::int64_t x = left; x <= right; ++x) {
        const auto at = static_cast<std::size_t>((y - top) * scans_.width + x);
        std::uint8_t &surprise = surprises_[scan][at];
        if (surprise == 0 && mark.surprise != 0) ++counts_[at];
        surprise = std::max(surprise, mark.surprise);
      }
  }

  const MarkedScans &scans_;
  std::vector<std::size_t> next_; ///< for each scan the first mark that may reach the strip
  std::vector<std::vector<std::uint8_t>> surprises_;
  std::vector<std::uint16_t> counts_; ///< of scans that mark the place
};

/// The surprises of one scan in squares around places, unshifted.
class Patches {
public:
  static constexpr int around = 8, side = 2 * around + 1;

  Patches(const std::vector<PlacedMark> &marks, const std::vector<Place> &places) {
    for (const Place &place : places) {
      auto &patch = patches_.emplace_back(std::size_t{side * side});
      auto mark = std::lower_bound(marks.begin(), marks.end(), place.y - around,
                                   [](const PlacedMark &m, int y) { return m.y < y; });
      for (; mark != marks.end() && mark->y <= place.y + around; ++mark)
        if (std::abs(mark->x - place.x) <= around)
          patch[static_cast<std::size_t>((mark->y - place.y + around) * side + mark->x - place.x + around)] =
              mark->surprise;
    }
  }
  /// At (x, y) from the place's own, as a shifted scan tells of it.
  double at(std::size_t patch, int x, int y, Shift shift) const {
    return patches_[patch][static_cast<std::size_t>((y + shift.y + around) * side + x + shift.x + around)];
  }
  std::size_t count() const { return patches_.size(); }

private:
  std::vector<std::vector<std::uint8_t>> patches_;
};

/// How well one scan agrees with the sum of the others.
double match(const std::vector<Patches> &scans, const std::vector<Shift> &shifts, std::size_t scan,
             Shift shift) {
  constexpr int inner = 5;
  double sum = 0;
  for (std::size_t patch = 0; patch < scans[scan].count(); ++patch)
    for (int y = -inner; y <= inner; ++y)
      for (int x = -inner; x <= inner; ++x) {
        const double own = scans[scan].at(patch, x, y, shift);
        if (own == 0) continue;
        for (std::size_t other = 0; other < scans.size(); ++other)
          if (other != scan) sum += own * scans[other].at(patch, x, y, shifts[other]);
      }
  return sum;
}

} // namespace

std::size_t least_carriers(std::size_t scans) { return std::max<std::size_t>(4, (scans + 2) / 3); }

Agreement::Agreement(std::size_t scans)
    : scans_(scans), least_(least_carriers(scans)), left_out_(scans < 5 ? 1 : 2) {}

Agreement::Found Agreement::operator()(const std::vector<double> &surprises) const {
  Found best;
  double sum = 0;
  for (std::size_t m = left_out_ + 1; m <= surprises.size(); ++m) {
    sum += surprises[m - 1];
    if (m < least_) continue;
    const double surprise = of_sum(sum, m);
    if (surprise > best.surprise) best = {surprise, m};
  }
  return best;
}

// The sum of the values from the (left out + 1)-th to the m-th is that of the gaps below them, each as often
// as it is below one of them: gap i, X / i, at most m - left out times.
double Agreement::of_sum(double sum, std::size_t carriers) const {
  std::vector<double> weights;
  for (std::size_t i = left_out_ + 1; i <= scans_; ++i)
    weights.push_back(static_cast<double>(std::min(i, carriers) - left_out_) / static_cast<double>(i));
  // The bound is largest where its derivative, sum - mean(tilt), crosses zero.
  const auto mean = [&](double tilt) {
    double total = 0;
    for (const double weight : weights) total += weight / (1 - tilt * weight);
    return total;
  };
  if (sum <= mean(0)) return 0;
  double low = 0, high = 1 / *std::max_element(weights.begin(), weights.end());
  constexpr int halvings = 30;
  for (int i = 0; i < halvings; ++i) {
    const double middle = (low + high) / 2;
    (mean(middle) < sum ? low : high) = middle;
  }
  double surprise = low * sum;
  for (const double weight : weights) surprise += std::log(1 - low * weight);
  return surprise;
}

std::vector<Place> unlikely_places(const MarkedScans &scans, double least_beyond_chance) {
  const double places = std::log(static_cast<double>(scans.width * scans.height));
  const std::size_t count = scans.marks.size(), least = least_carriers(count);
  const Agreement agreement(count);
  Strip strip(scans);
  std::vector<Place> found;
  std::vector<double> surprises;
  for (std::int64_t top = 0; top < scans.height; top += strip_rows) {
    strip.move_to(top);
    const std::int64_t pixels = std::min(strip_rows, scans.height - top) * scans.width;
    for (std::int64_t i = 0; i < pixels; ++i) {
      const auto at = static_cast<std::size_t>(i);
      if (strip.count(at) < least) continue;
      strip.surprises(at, surprises);
      const double beyond = agreement(surprises).surprise - places;
      if (beyond < least_beyond_chance) continue;
      found.push_back({static_cast<int>(i % scans.width), static_cast<int>(top + i / scans.width), beyond});
    }
  }
  return found;
}

const PlacedMark *mark_at(const MarkedScans &scans, std::size_t scan, const Place &place) {
  const int x = place.x + scans.shifts[scan].x, y = place.y + scans.shifts[scan].y;
  const auto &marks = scans.marks[scan];
  const PlacedMark *best = nullptr;
  auto mark = std::lower_bound(marks.begin(), marks.end(), y - scans.reach,
                               [](const PlacedMark &m, int row) { return m.y < row; });
  for (; mark != marks.end() && mark->y <= y + scans.reach; ++mark)
    if (std::abs(mark->x - x) <= scans.reach && (!best || mark->surprise > best->surprise)) best = &*mark;
  return best;
}

std::vector<Shift> best_shifts(MarkedScans scans, const std::vector<Place> &places) {
  std::vector<Patches> patches;
  for (const auto &marks : scans.marks) patches.emplace_back(marks, places);
  constexpr int rounds = 4, farthest = 2;
  for (int round = 0; round < rounds; ++round)
    for (std::size_t scan = 0; scan < patches.size(); ++scan) {
      Shift &shift = scans.shifts[scan];
      double best = match(patches, scans.shifts, scan, shift);
      for (int y = -farthest; y <= farthest; ++y)
        for (int x = -farthest; x <= farthest; ++x) {
          const double agrees = match(patches, scans.shifts, scan, {x, y});
          if (agrees > best) best = agrees, shift = {x, y};
        }
    }
  return scans.shifts;
}

} // namespace stoneproof
