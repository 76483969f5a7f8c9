// Groups of places where many scans agree. Only ways in: repeats_in, common_specks. Tested in
// tests/engine/measure/glass_dirt.test.cpp; rates in tests/bench/detail.
#include "engine/measure/glass_specks.h"

#include "engine/measure/glass_places.h"

#include <algorithm>
#include <cstdlib>
#include <numeric>
#include <set>
#include <utility>

namespace stoneproof {

namespace {

/// The least that counts as a place of a speck at all, in what Place::beyond_chance says.
constexpr double least_of_place = -8;
/// What a speck is worth: how far its best place is beyond chance, and a tenth for each of its places, as
/// large things agree at many and chance at few. Set on the clean batches of tests/bench/detail.
constexpr double worth_of_a_place = 0.1, least_of_firm = 2, least_of_hint = 1;
constexpr std::size_t most_places_counted = 50;
/// A larger thing, in reduced pixels, is an edge or a frame; so many specks are something else than dirt.
constexpr int longest = 80, hair_length = 15;
constexpr std::size_t most_specks = 60;
/// Different subjects for more than a hint.
constexpr std::size_t least_for_firm = 5;

/// The batch seen in three ways: as it is, with a pixel of play around each mark, and with each scan moved to
/// where the dirt that is already known agrees best.
struct Views {
  std::vector<MarkedScans> views;
  struct Found {
    Place place;
    std::size_t view = 0;
  };
  std::vector<Found> found; ///< in all views, row by row
};

MarkedScans marked(const std::vector<const GlassMap *> &batch, const std::vector<std::size_t> &pictures,
                   int reach) {
  const GlassMap &first = *batch[pictures[0]];
  MarkedScans scans{first.width, first.height, {}, std::vector<Shift>(pictures.size()), reach};
  for (const std::size_t picture : pictures) scans.marks.push_back(placed_marks(*batch[picture], reach));
  return scans;
}

/// Places that lie within four pixels of each other, joined. They come row by row.
std::vector<std::vector<Views::Found>> joined(const std::vector<Views::Found> &found) {
  constexpr int gap = 4;
  std::vector<std::size_t> root(found.size());
  std::iota(root.begin(), root.end(), std::size_t{0});
  const auto find = [&](std::size_t i) {
    while (root[i] != i) i = root[i] = root[root[i]];
    return i;
  };
  std::size_t first = 0; // those further above cannot be near any more
  for (std::size_t i = 0; i < found.size(); ++i) {
    while (found[first].place.y + gap < found[i].place.y) ++first;
    for (std::size_t k = first; k < i; ++k)
      if (std::abs(found[k].place.x - found[i].place.x) <= gap) root[find(k)] = find(i);
  }
  std::vector<std::vector<Views::Found>> groups(found.size());
  for (std::size_t i = 0; i < found.size(); ++i) groups[find(i)].push_back(found[i]);
  groups.erase(std::remove_if(groups.begin(), groups.end(), [](const auto &g) { return g.empty(); }),
               groups.end());
  return groups;
}

const Views::Found &best_of(const std::vector<Views::Found> &group) {
  return *std::max_element(group.begin(), group.end(), [](const Views::Found &a, const Views::Found &b) {
    return a.place.beyond_chance < b.place.beyond_chance;
  });
}

double worth_of(const std::vector<Views::Found> &group) {
  std::set<std::pair<int, int>> places; // one place may be found in several views
  for (const Views::Found &found : group) places.emplace(found.place.x, found.place.y);
  const auto counted = static_cast<double>(std::min(places.size(), most_places_counted));
  return best_of(group).place.beyond_chance + worth_of_a_place * counted;
}

void look(Views &views, MarkedScans scans) {
  for (const Place &place : unlikely_places(scans, least_of_place))
    views.found.push_back({place, views.views.size()});
  std::stable_sort(views.found.begin(), views.found.end(),
                   [](const auto &a, const auto &b) { return a.place.y < b.place.y; });
  views.views.push_back(std::move(scans));
}

Views look_all_ways(const std::vector<const GlassMap *> &batch, const std::vector<std::size_t> &pictures) {
  Views views;
  look(views, marked(batch, pictures, 0));
  look(views, marked(batch, pictures, 1));
  std::vector<Place> sure;
  for (const auto &group : joined(views.found))
    if (worth_of(group) >= least_of_firm) sure.push_back(best_of(group).place);
  if (sure.empty()) return views;
  MarkedScans moved = views.views[0];
  moved.shifts = best_shifts(moved, sure);
  if (moved.shifts != views.views[0].shifts) look(views, std::move(moved));
  return views;
}

/// The largest contrast of a scan's marks within a few pixels of a place, levels.
double contrast_near(const MarkedScans &scans, std::size_t scan, const Place &place) {
  constexpr int around = 3;
  double most = 0;
  for (int y = -around; y <= around; ++y)
    for (int x = -around; x <= around; ++x)
      if (const PlacedMark *mark = mark_at(scans, scan, {place.x + x, place.y + y, 0}))
        most = std::max(most, std::abs(static_cast<double>(mark->contrast)));
  return most;
}

/// Names the scans that surely carry a speck: of those that mark its place the least number that must, all
/// that mark it strongly, and none where it is faint beside the others.
void set_carriers(GlassSpeck &speck, const MarkedScans &scans, const Place &place,
                  const std::vector<std::size_t> &pictures) {
  constexpr double strongly = 3.9 /* -ln 0.02 */, faint = 0.25;
  std::vector<double> surprises;
  for (std::size_t i = 0; i < pictures.size(); ++i) {
    const PlacedMark *mark = mark_at(scans, i, place);
    surprises.push_back(mark ? mark->surprise / surprise_unit : 0);
  }
  std::vector<double> sorted = surprises;
  std::sort(sorted.rbegin(), sorted.rend());
  const double least = std::min(strongly, sorted[least_carriers(pictures.size()) - 1]);
  std::vector<double> contrasts(pictures.size()), marked;
  for (std::size_t i = 0; i < pictures.size(); ++i)
    if (surprises[i] >= least) marked.push_back(contrasts[i] = contrast_near(scans, i, place));
  std::sort(marked.begin(), marked.end());
  speck.contrast = marked[marked.size() / 2];
  for (std::size_t i = 0; i < pictures.size(); ++i)
    if (surprises[i] >= least && contrasts[i] >= faint * speck.contrast)
      speck.carriers.push_back(pictures[i]);
}

GlassSpeck speck_of(const std::vector<Views::Found> &group, const Views &views,
                    const std::vector<std::size_t> &pictures, int factor) {
  GlassSpeck speck;
  const Views::Found &best = best_of(group);
  speck.beyond_chance = best.place.beyond_chance;
  set_carriers(speck, views.views[best.view], best.place, pictures);

  int left = best.place.x, right = left, top = best.place.y, bottom = top;
  for (const Views::Found &found : group) {
    left = std::min(left, found.place.x), right = std::max(right, found.place.x);
    top = std::min(top, found.place.y), bottom = std::max(bottom, found.place.y);
  }
  const int width = right - left + 1, height = bottom - top + 1;
  speck.where = {std::int64_t{left} * factor, std::int64_t{top} * factor, std::int64_t{width} * factor,
                 std::int64_t{height} * factor};
  speck.hair = std::max(width, height) > hair_length;
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
  const int factor = batch[pictures[0]]->factor;
  Views views = look_all_ways(batch, pictures);
  views.found.erase(
      std::remove_if(views.found.begin(), views.found.end(),
                     [&](const auto &found) { return on_streak(found.place, streaks, factor); }),
      views.found.end());
  std::vector<GlassSpeck> specks;
  for (const auto &group : joined(views.found)) {
    const double worth = worth_of(group);
    if (worth < least_of_hint) continue;
    GlassSpeck speck = speck_of(group, views, pictures, factor);
    if (std::max(speck.where.width, speck.where.height) > longest * factor) continue;
    const bool firm = worth >= least_of_firm && pictures.size() >= least_for_firm &&
                      speck.carriers.size() >= least_carriers(pictures.size());
    speck.certainty = firm ? Certainty::firm : Certainty::hint;
    specks.push_back(std::move(speck));
  }
  if (specks.size() > most_specks) return std::nullopt;
  std::sort(specks.begin(), specks.end(),
            [](const GlassSpeck &a, const GlassSpeck &b) { return a.beyond_chance > b.beyond_chance; });
  return specks;
}

std::vector<std::size_t> repeats_in(const std::vector<const GlassMap *> &batch,
                                    const std::vector<std::size_t> &pictures) {
  // Of the most surprising hundredth of two scans that show the same, more than this share meets.
  constexpr double same_subject = 0.4, hundredth = 4.6; // -ln 0.01
  const std::int64_t width = batch[pictures[0]]->width, height = batch[pictures[0]]->height;
  std::vector<std::size_t> repeats;
  std::vector<std::vector<bool>> kept; // of each picture kept: the pixels at and beside such marks
  for (const std::size_t picture : pictures) {
    std::vector<PlacedMark> marks = placed_marks(*batch[picture], 0);
    marks.erase(std::remove_if(marks.begin(), marks.end(),
                               [&](const PlacedMark &m) { return m.surprise < hundredth * surprise_unit; }),
                marks.end());
    const bool repeats_one = std::any_of(kept.begin(), kept.end(), [&](const std::vector<bool> &cover) {
      const auto met = std::count_if(marks.begin(), marks.end(), [&](const PlacedMark &m) {
        return cover[static_cast<std::size_t>(m.y * width + m.x)];
      });
      return static_cast<double>(met) > same_subject * static_cast<double>(marks.size());
    });
    if (repeats_one) {
      repeats.push_back(picture);
      continue;
    }
    auto &cover = kept.emplace_back(static_cast<std::size_t>(width * height));
    for (const PlacedMark &m : marks) // none lies at the very edge
      for (std::int64_t y = m.y - 1; y <= m.y + 1; ++y)
        for (std::int64_t x = m.x - 1; x <= m.x + 1; ++x)
          cover[static_cast<std::size_t>(y * width + x)] = true;
  }
  return repeats;
}

} // namespace stoneproof
