// Lines that stand out in several scans, or much in one. Only way in: common_streaks. Tested in
// tests/engine/measure/glass_dirt.test.cpp; rates in tests/bench/detail.
#include "engine/measure/glass_streaks.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace stoneproof {

namespace {

/// Bounds for one scan alone, and for each of several; set on the tune half of tests/bench/detail.
struct Bounds {
  double deviation, agreeing, strength;
};
constexpr Bounds alone{8, 1, 0.8}, together{5, 0.85, 0.4};
/// A picture with more lines of one direction than this is one of lines itself: fences, shelves, weave.
constexpr std::ptrdiff_t most_alone = 1;
/// Lines at the very edge, and one picture's lines within so many of each other, which are one streak.
constexpr std::int64_t margin = 6, near = 3;
/// Beside a streak there are lines on both sides that stand out the other way, as it is in their
/// surroundings; beside a step from dark to light, on one side only. They count from this share of its
/// strength on.
constexpr double opposite = 0.5;

bool is_step(const std::vector<StreakLine> &lines, std::size_t i) {
  const auto stands_against = [&](std::size_t k) {
    return lines[k].strength * lines[i].strength < 0 &&
           std::abs(lines[k].strength) > opposite * std::abs(lines[i].strength);
  };
  bool before = false, after = false;
  for (std::size_t k = 1; k <= near; ++k) {
    before = before || stands_against(i - k);
    after = after || stands_against(i + k);
  }
  return before != after;
}

bool meets(const StreakLine &line, const Bounds &bounds) {
  return line.deviation >= bounds.deviation && line.agreeing >= bounds.agreeing &&
         std::abs(line.strength) >= bounds.strength;
}

/// The lines of one scan that meet bounds, of close ones the strongest.
std::vector<StreakLine> lines_of(const StreakLines &lines, const Bounds &bounds) {
  const std::vector<StreakLine> judged = judge_lines(lines);
  std::vector<StreakLine> found;
  for (std::size_t i = margin; i + margin < judged.size(); ++i) {
    if (!meets(judged[i], bounds) || is_step(judged, i)) continue;
    if (!found.empty() && judged[i].at - found.back().at <= near) {
      if (std::abs(judged[i].strength) > std::abs(found.back().strength)) found.back() = judged[i];
    } else {
      found.push_back(judged[i]);
    }
  }
  return found;
}

struct Carried {
  StreakLine line;
  std::size_t picture;
};

/// Those of `lines` that lie at `at` or beside it and stand out the same way; one for each picture.
std::vector<Carried> carriers_of(const std::vector<Carried> &lines, const StreakLine &at) {
  std::vector<Carried> carriers;
  for (const Carried &carried : lines) {
    if (std::abs(carried.line.at - at.at) > 1 || carried.line.strength * at.strength < 0) continue;
    if (carriers.empty() || carriers.back().picture != carried.picture) carriers.push_back(carried);
  }
  return carriers;
}

GlassStreak streak_of(const std::vector<Carried> &carriers, bool column, int factor, Certainty certainty) {
  GlassStreak streak;
  streak.column = column;
  streak.certainty = certainty;
  std::vector<double> strengths, places;
  for (const Carried &carried : carriers) {
    streak.carriers.push_back(carried.picture);
    strengths.push_back(carried.line.strength);
    places.push_back(static_cast<double>(carried.line.at));
  }
  std::sort(strengths.begin(), strengths.end());
  std::sort(places.begin(), places.end());
  streak.strength = strengths[strengths.size() / 2];
  streak.at = (places[places.size() / 2] + 0.5) * factor;
  return streak;
}

std::vector<GlassStreak> streaks_along(const std::vector<const GlassMap *> &batch,
                                       const std::vector<std::size_t> &pictures, bool column) {
  const int factor = batch[pictures[0]]->factor;
  std::vector<Carried> lines; // picture after picture
  for (const std::size_t i : pictures)
    for (const StreakLine &line : lines_of(column ? batch[i]->columns : batch[i]->rows, together))
      lines.push_back({line, i});

  std::vector<GlassStreak> streaks;
  const auto is_known = [&](const StreakLine &line) {
    return std::any_of(streaks.begin(), streaks.end(), [&](const GlassStreak &streak) {
      return std::abs(streak.at / factor - 0.5 - static_cast<double>(line.at)) <= near;
    });
  };
  for (const Carried &carried : lines) {
    if (is_known(carried.line)) continue;
    const auto carriers = carriers_of(lines, carried.line);
    if (carriers.size() >= 2 && 2 * carriers.size() >= pictures.size())
      streaks.push_back(streak_of(carriers, column, factor, Certainty::firm));
  }
  const auto is_of_lines = [&](std::size_t picture) {
    return std::count_if(lines.begin(), lines.end(), [&](const Carried &other) {
             return other.picture == picture && meets(other.line, alone);
           }) > most_alone;
  };
  for (const Carried &carried : lines)
    if (meets(carried.line, alone) && !is_known(carried.line) && !is_of_lines(carried.picture))
      streaks.push_back(streak_of({carried}, column, factor, Certainty::hint));
  return streaks;
}

} // namespace

std::vector<GlassStreak> common_streaks(const std::vector<const GlassMap *> &batch,
                                        const std::vector<std::size_t> &pictures) {
  std::vector<GlassStreak> streaks = streaks_along(batch, pictures, true);
  for (GlassStreak &streak : streaks_along(batch, pictures, false)) streaks.push_back(std::move(streak));
  std::sort(streaks.begin(), streaks.end(), [](const GlassStreak &a, const GlassStreak &b) {
    return std::abs(a.strength) > std::abs(b.strength);
  });
  return streaks;
}

} // namespace stoneproof
