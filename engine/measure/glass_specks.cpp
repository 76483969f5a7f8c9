// Places where peaks of many scans meet. Only ways in: repeats_in, common_specks. Tested in
// tests/engine/measure/glass_dirt.test.cpp; rates in tests/bench/detail.
#include "engine/measure/glass_specks.h"

#include "engine/measure/glass_chance.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numeric>

namespace stoneproof {

namespace {

/// A speck shows in at least so many scans, and in one of so many of the batch.
constexpr std::size_t least_carriers = 4, one_carrier_of = 3;
/// How much less likely than once in the whole glass the best place of a speck must be, and each other place
/// of it, as natural logarithms; set on the clean batches of tests/bench/detail.
constexpr double least_beyond_chance = 6, least_beyond_chance_beside = 1;
/// A larger thing, in reduced pixels, is an edge or a frame; so many specks are something else than dirt.
constexpr int longest = 80;
constexpr std::size_t most_specks = 60;
/// Of the strongest peaks of two scans that show the same, more than this share meets.
constexpr std::size_t compared_peaks = 1000;
constexpr double same_subject = 0.25;
constexpr std::int64_t strip_rows = 64;

/// A place that many scans mark.
struct Place {
  int x, y;
  double beyond_chance;
};

/// -ln of the chance that at least m of n scans mark a place as surprisingly as the m-th surprising does, at
/// its most unlikely m.
class Coincidence {
public:
  explicit Coincidence(std::size_t scans)
      : least_(std::max(least_carriers, (scans + one_carrier_of - 1) / one_carrier_of)), choices_(scans + 1) {
    const auto factorial = [](std::size_t i) { return std::lgamma(static_cast<double>(i) + 1); };
    for (std::size_t m = 0; m <= scans; ++m)
      choices_[m] = factorial(scans) - factorial(m) - factorial(scans - m);
  }
  std::size_t least_carriers_of_batch() const { return least_; }

  struct Found {
    double surprise = -1e9;
    std::size_t carriers = 0;
  };
  /// The surprises of the scans that mark the place, the largest first.
  Found operator()(const std::vector<double> &surprises) const {
    Found best;
    for (std::size_t m = least_; m <= surprises.size(); ++m) {
      const double surprise = static_cast<double>(m) * surprises[m - 1] - choices_[m];
      if (surprise > best.surprise) best = {surprise, m};
    }
    return best;
  }

private:
  std::size_t least_;
  std::vector<double> choices_; ///< ln of how many ways there are to choose m of n
};

/// The squares of marks of all scans on some rows of the glass.
class Strip {
public:
  Strip(const std::vector<std::vector<GlassMark>> &marks, std::int64_t width)
      : marks_(marks), width_(width), next_(marks.size()),
        surprises_(marks.size(), std::vector<std::uint8_t>(static_cast<std::size_t>(width * strip_rows))),
        counts_(static_cast<std::size_t>(width * strip_rows)) {}

  void move_to(std::int64_t top) {
    std::fill(counts_.begin(), counts_.end(), std::uint16_t{0});
    for (std::size_t scan = 0; scan < marks_.size(); ++scan) {
      std::fill(surprises_[scan].begin(), surprises_[scan].end(), std::uint8_t{0});
      std::size_t &next = next_[scan];
      while (next < marks_[scan].size() && marks_[scan][next].y + 1 < top) ++next;
      for (std::size_t i = next; i < marks_[scan].size() && marks_[scan][i].y - 1 < top + strip_rows; ++i)
        paint(scan, marks_[scan][i], top);
    }
  }
  std::uint16_t count(std::size_t at) const { return counts_[at]; }
  std::vector<double> surprises(std::size_t at) const {
    std::vector<double> values;
    for (const auto &scan : surprises_)
      if (scan[at] != 0) values.push_back(scan[at] / surprise_unit);
    std::sort(values.rbegin(), values.rend());
    return values;
  }

private:
  void paint(std::size_t scan, const GlassMark &mark, std::int64_t top) {
    const std::int64_t first = std::max<std::int64_t>(mark.y - 1, top),
                       last = std::min<std::int64_t>(mark.y + 1, top + strip_rows - 1);
    for (std::int64_t y = first; y <= last; ++y)
      for (std::int64_t x = std::max(0, mark.x - 1); x <= std::min<std::int64_t>(mark.x + 1, width_ - 1);
           ++x) {
        const auto at = static_cast<std::size_t>((y - top) * width_ + x);
        std::uint8_t &surprise = surprises_[scan][at];
        if (surprise == 0 && mark.surprise != 0) ++counts_[at];
        surprise = std::max(surprise, mark.surprise);
      }
  }

  const std::vector<std::vector<GlassMark>> &marks_;
  std::int64_t width_;
  std::vector<std::size_t> next_; ///< for each scan the first mark that may reach the strip
  std::vector<std::vector<std::uint8_t>> surprises_;
  std::vector<std::uint16_t> counts_; ///< of scans that mark the place
};

std::vector<Place> unlikely_places(const std::vector<std::vector<GlassMark>> &marks, std::int64_t width,
                                   std::int64_t height) {
  const Coincidence coincidence(marks.size());
  const double places = std::log(static_cast<double>(width * height));
  Strip strip(marks, width);
  std::vector<Place> found;
  for (std::int64_t top = 0; top < height; top += strip_rows) {
    strip.move_to(top);
    const std::int64_t pixels = std::min(strip_rows, height - top) * width;
    for (std::int64_t i = 0; i < pixels; ++i) {
      const auto at = static_cast<std::size_t>(i);
      if (strip.count(at) < coincidence.least_carriers_of_batch()) continue;
      const double beyond = coincidence(strip.surprises(at)).surprise - places;
      if (beyond < least_beyond_chance_beside) continue;
      found.push_back({static_cast<int>(i % width), static_cast<int>(top + i / width), beyond});
    }
  }
  return found;
}

/// Places that lie within `gap` of each other, joined.
std::vector<std::vector<Place>> joined(const std::vector<Place> &places) {
  constexpr int gap = 4;
  std::vector<std::size_t> root(places.size());
  std::iota(root.begin(), root.end(), std::size_t{0});
  const auto find = [&](std::size_t i) {
    while (root[i] != i) i = root[i] = root[root[i]];
    return i;
  };
  std::size_t first = 0; // places come row by row: those further above cannot be near any more
  for (std::size_t i = 0; i < places.size(); ++i) {
    while (places[first].y + gap < places[i].y) ++first;
    for (std::size_t k = first; k < i; ++k)
      if (std::abs(places[k].x - places[i].x) <= gap) root[find(k)] = find(i);
  }
  std::vector<std::vector<Place>> groups(places.size());
  for (std::size_t i = 0; i < places.size(); ++i) groups[find(i)].push_back(places[i]);
  groups.erase(std::remove_if(groups.begin(), groups.end(), [](const auto &g) { return g.empty(); }),
               groups.end());
  return groups;
}

/// The strongest mark of a scan that reaches a place, or null.
const GlassMark *mark_at(const std::vector<GlassMark> &marks, const Place &place) {
  const GlassMark *best = nullptr;
  auto mark = std::lower_bound(marks.begin(), marks.end(), place.y - 1,
                               [](const GlassMark &m, int y) { return m.y < y; });
  for (; mark != marks.end() && mark->y <= place.y + 1; ++mark)
    if (std::abs(mark->x - place.x) <= 1 && (!best || mark->surprise > best->surprise)) best = &*mark;
  return best;
}

GlassSpeck speck_of(const std::vector<Place> &group, const std::vector<std::vector<GlassMark>> &marks,
                    const std::vector<std::size_t> &pictures, int factor) {
  GlassSpeck speck;
  const Place best = *std::max_element(group.begin(), group.end(), [](const Place &a, const Place &b) {
    return a.beyond_chance < b.beyond_chance;
  });
  speck.beyond_chance = best.beyond_chance;

  std::vector<double> surprises;
  for (const auto &scan : marks)
    if (const GlassMark *mark = mark_at(scan, best)) surprises.push_back(mark->surprise / surprise_unit);
  std::sort(surprises.rbegin(), surprises.rend());
  const double least = surprises[Coincidence(marks.size())(surprises).carriers - 1];
  std::vector<double> contrasts;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const GlassMark *mark = mark_at(marks[i], best);
    if (!mark || mark->surprise / surprise_unit < least) continue;
    speck.carriers.push_back(pictures[i]);
    contrasts.push_back(std::abs(mark->contrast) / double{SpeckFilter::unit});
  }
  std::sort(contrasts.begin(), contrasts.end());
  speck.contrast = contrasts[contrasts.size() / 2];

  int left = group[0].x, right = left, top = group[0].y, bottom = top;
  for (const Place &place : group) {
    left = std::min(left, place.x), right = std::max(right, place.x);
    top = std::min(top, place.y), bottom = std::max(bottom, place.y);
  }
  const int width = right - left + 1, height = bottom - top + 1;
  speck.where = {std::int64_t{left} * factor, std::int64_t{top} * factor, std::int64_t{width} * factor,
                 std::int64_t{height} * factor};
  // A hair may lie aslant or be bent: it fills little of its rectangle, or that is long.
  const double diagonal = std::hypot(width, height);
  speck.hair = diagonal * diagonal > 3.0 * static_cast<double>(group.size()) && diagonal > 15;
  return speck;
}

bool on_streak(const Place &place, const std::vector<GlassStreak> &streaks, int factor) {
  constexpr double near = 4;
  return std::any_of(streaks.begin(), streaks.end(), [&](const GlassStreak &streak) {
    return std::abs(streak.at / factor - (streak.column ? place.x : place.y)) <= near;
  });
}

} // namespace

std::optional<std::vector<GlassSpeck>> common_specks(const std::vector<const GlassMap *> &batch,
                                                     const std::vector<std::size_t> &pictures,
                                                     const std::vector<GlassStreak> &streaks) {
  std::vector<std::vector<GlassMark>> marks;
  for (const std::size_t i : pictures) marks.push_back(marks_of(*batch[i]));
  const GlassMap &first = *batch[pictures[0]];
  std::vector<Place> places = unlikely_places(marks, first.width, first.height);
  places.erase(std::remove_if(places.begin(), places.end(),
                              [&](const Place &place) { return on_streak(place, streaks, first.factor); }),
               places.end());
  std::vector<GlassSpeck> specks;
  for (const auto &group : joined(places)) {
    GlassSpeck speck = speck_of(group, marks, pictures, first.factor);
    if (speck.beyond_chance < least_beyond_chance) continue;
    if (std::max(speck.where.width, speck.where.height) > longest * first.factor) continue;
    specks.push_back(std::move(speck));
  }
  if (specks.size() > most_specks) return std::nullopt;
  std::sort(specks.begin(), specks.end(),
            [](const GlassSpeck &a, const GlassSpeck &b) { return a.beyond_chance > b.beyond_chance; });
  return specks;
}

std::vector<std::size_t> repeats_in(const std::vector<const GlassMap *> &batch,
                                    const std::vector<std::size_t> &pictures) {
  std::vector<std::size_t> repeats;
  std::vector<std::vector<bool>> covers; // of the pictures kept: two pixels around each peak
  const std::int64_t width = batch[pictures[0]]->width, height = batch[pictures[0]]->height;
  for (const std::size_t picture : pictures) {
    const auto &peaks = batch[picture]->peaks;
    const std::size_t count = std::min(compared_peaks, peaks.size());
    const bool repeats_one = std::any_of(covers.begin(), covers.end(), [&](const std::vector<bool> &cover) {
      std::size_t met = 0;
      for (std::size_t i = 0; i < count; ++i)
        met += cover[static_cast<std::size_t>(peaks[i].y * width + peaks[i].x)];
      return static_cast<double>(met) > same_subject * static_cast<double>(count);
    });
    if (repeats_one) {
      repeats.push_back(picture);
      continue;
    }
    auto &cover = covers.emplace_back(static_cast<std::size_t>(width * height));
    for (std::size_t i = 0; i < count; ++i)
      for (std::int64_t y = std::max(0, peaks[i].y - 2);
           y <= std::min<std::int64_t>(peaks[i].y + 2, height - 1); ++y)
        for (std::int64_t x = std::max(0, peaks[i].x - 2);
             x <= std::min<std::int64_t>(peaks[i].x + 2, width - 1); ++x)
          cover[static_cast<std::size_t>(y * width + x)] = true;
  }
  return repeats;
}

} // namespace stoneproof
