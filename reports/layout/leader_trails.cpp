// The cheapest trail for one leader after the other, from the left to the right over the tracks (dynamic
// programming: an upright track is reached level, then followed up or down). What keeps them from crossing: a
// leader passes above the places of those after it and below those before it, and never gets above an earlier
// leader. Between places that lie apart there is always such a trail. The only way in is find_trails; tested
// through the leaders in tests/reports/layout.
#include "reports/layout/leader_trails.h"

#include "reports/layout/leader_tracks.h"

#include <algorithm>
#include <limits>

namespace stoneproof::layout {

namespace {

using namespace literals;

// Costs in millimetres of way.
constexpr double bend = 3;
constexpr double within_itself = 1000; ///< a millimetre through its own place
constexpr double wrong_side = 20;      ///< a millimetre on the side where it must cross another leader
constexpr double crossing = 100;       ///< of an earlier leader, upright
constexpr double off_height = 0.5;     ///< a millimetre that it comes out away from its words

constexpr Length off_corner =
    1_mm; ///< a leader does not begin nearer to a corner, so that there is room for its lane

constexpr double never = std::numeric_limits<double>::infinity();
constexpr Length lowest = Length::of_mm(-1e6), highest = Length::of_mm(1e6);

/// Where a leader may be between two upright tracks without crossing others; where an earlier leader lies
/// across the first of them, and where one runs along it.
struct Band {
  Length top = lowest, bottom = highest;
  Length across = lowest;
  Length along_from = highest, along_to = lowest;
  /// Whether an upright move, downwards or back, crosses the earlier leader; on the same track it is below
  /// it.
  bool crossed(Length above, Length below) const { return above < across && below >= across; }
};

/// How a crossing of two tracks was reached.
struct Step {
  enum Kind : char { level, start_right, start_rise } kind = level;
  std::size_t from = 0; ///< the level track on which this upright track was reached
};

class TrailSearch {
public:
  TrailSearch(const LeaderTracks &tracks, const Rect &place, Length wanted, const std::vector<Band> &bands,
              Length floor)
      : tracks_(tracks), xs_(tracks.xs()), ys_(tracks.ys()), place_(place), wanted_(wanted), bands_(bands),
        floor_(floor), arrival_(ys_.size(), never), settled_(ys_.size()), starts_(xs_.size() * ys_.size()),
        steps_(xs_.size() * ys_.size()) {}

  Trail find() {
    const auto after_left = std::upper_bound(xs_.begin(), xs_.end(), place_.left());
    const auto after_right = std::lower_bound(xs_.begin(), xs_.end(), place_.right());
    const auto right = std::min(static_cast<std::size_t>(after_right - xs_.begin()), xs_.size() - 1);
    for (std::size_t x = std::min(static_cast<std::size_t>(after_left - xs_.begin()), right); x < xs_.size();
         ++x) {
      if (x == right) start_at_right(x);
      settle(x);
      if (x + 1 < xs_.size()) go_on(x);
    }
    return traced(best_exit());
  }

private:
  Step &step(std::size_t x, std::size_t y) { return steps_[x * ys_.size() + y]; }
  char &starts(std::size_t x, std::size_t y) { return starts_[x * ys_.size() + y]; }

  void start_at_right(std::size_t x) {
    const std::size_t middle = nearest_level(place_.centre().y); // always there, however flat the place is
    const Length off = std::min(off_corner, place_.height / 3);
    for (std::size_t y = 0; y < ys_.size(); ++y) {
      if (y != middle && (ys_[y] < place_.top() + off || ys_[y] > place_.bottom() - off)) continue;
      const Point from{place_.right(), ys_[y]};
      const double cost = (xs_[x] - from.x).mm() + tracks_.between(from, {xs_[x], ys_[y]});
      if (cost < arrival_[y]) arrival_[y] = cost, starts(x, y) = 1;
    }
  }

  std::size_t nearest_level(Length y) const {
    const auto after = std::lower_bound(ys_.begin(), ys_.end(), y);
    const auto index = static_cast<std::size_t>(after - ys_.begin());
    if (index == 0) return 0;
    return after == ys_.end() || y - ys_[index - 1] < *after - y ? index - 1 : index;
  }

  /// The best way to every level on this upright track: as it was reached, or from above or below.
  void settle(std::size_t x) {
    for (std::size_t y = 0; y < ys_.size(); ++y) {
      if (ys_[y] >= bands_[x].along_from && ys_[y] <= bands_[x].along_to) arrival_[y] += crossing;
      settled_[y] = arrival_[y];
      step(x, y) = {starts(x, y) ? Step::start_right : Step::level, y};
    }
    follow(x, true);
    follow(x, false);
  }

  void follow(std::size_t x, bool up) {
    const std::size_t count = ys_.size();
    const Length off = std::min(off_corner, place_.width / 3);
    const bool over_place = xs_[x] > place_.left() + off && xs_[x] < place_.right() - off;
    double cost = never;
    Step step_so_far;
    for (std::size_t i = 0; i < count; ++i) {
      const std::size_t y = up ? count - 1 - i : i;
      if (i > 0) {
        const std::size_t before = up ? y + 1 : y - 1;
        cost += upright_cost(x, std::min(y, before));
        if (arrival_[before] + bend + upright_cost(x, std::min(y, before)) < cost) {
          cost = arrival_[before] + bend + upright_cost(x, std::min(y, before));
          step_so_far = {starts(x, before) ? Step::start_right : Step::level, before};
        }
        const Length rim = up ? place_.top() : place_.bottom();
        const bool first_outside =
            up ? ys_[y] < rim && ys_[before] >= rim : ys_[y] > rim && ys_[before] <= rim;
        if (over_place && first_outside) {
          const Point from{xs_[x], rim}, to{xs_[x], ys_[y]};
          const Length above = std::min(from.y, to.y), below = std::max(from.y, to.y);
          double rise = (below - above).mm() + tracks_.between(from, to);
          if (bands_[x].crossed(above, below)) rise += crossing;
          if (rise < cost) cost = rise, step_so_far = {Step::start_rise, y};
        }
      }
      if (cost + bend < settled_[y]) settled_[y] = cost + bend, step(x, y) = step_so_far;
    }
  }

  double upright_cost(std::size_t x, std::size_t y) const {
    double cost = (ys_[y + 1] - ys_[y]).mm() + tracks_.upright(x, y);
    if (bands_[x].crossed(ys_[y], ys_[y + 1])) cost += crossing;
    if (xs_[x] > place_.left() && xs_[x] < place_.right())
      cost += overlap(ys_[y], ys_[y + 1], place_.top(), place_.bottom()) * within_itself;
    return cost;
  }

  void go_on(std::size_t x) {
    const double ahead = (xs_[x + 1] - xs_[x]).mm();
    const double inside = overlap(xs_[x], xs_[x + 1], place_.left(), place_.right()) * within_itself;
    for (std::size_t y = 0; y < ys_.size(); ++y) {
      double cost = settled_[y] + ahead + tracks_.level(x, y);
      if (ys_[y] > place_.top() && ys_[y] < place_.bottom()) cost += inside;
      if (ys_[y] < bands_[x].top || ys_[y] > bands_[x].bottom) cost += ahead * wrong_side;
      arrival_[y] = cost;
    }
  }

  static double overlap(Length low, Length high, Length from, Length to) {
    return std::max(0.0, (std::min(high, to) - std::max(low, from)).mm());
  }

  std::size_t best_exit() const {
    std::size_t best = ys_.size() - 1;
    double least = never;
    for (std::size_t y = 0; y < ys_.size(); ++y) {
      const double cost = settled_[y] + std::max(ys_[y] - wanted_, wanted_ - ys_[y]).mm() * off_height;
      if (ys_[y] >= floor_ && cost < least) least = cost, best = y;
    }
    return best;
  }

  Trail traced(std::size_t y) {
    Trail trail;
    trail.levels.push_back(ys_[y]);
    for (std::size_t x = xs_.size(); x-- > 0;) {
      const Step taken = step(x, y);
      if (taken.kind == Step::start_rise) {
        trail.rise = xs_[x];
        break;
      }
      if (taken.from != y) {
        trail.uprights.push_back(xs_[x]);
        trail.levels.push_back(ys_[taken.from]);
        y = taken.from;
      }
      if (taken.kind == Step::start_right) break;
    }
    std::reverse(trail.levels.begin(), trail.levels.end());
    std::reverse(trail.uprights.begin(), trail.uprights.end());
    return trail;
  }

  const LeaderTracks &tracks_;
  const std::vector<Length> &xs_, &ys_;
  const Rect place_;
  const Length wanted_;
  const std::vector<Band> &bands_;
  const Length floor_;
  std::vector<double> arrival_, settled_; ///< by level track, at the upright track in hand
  std::vector<char> starts_;              ///< whether the arrival is the place itself
  std::vector<Step> steps_;
};

/// Which bands the other places leave to the leader of place `own`.
std::vector<Band> bands_beside(std::span<const Rect> places, std::size_t own, const std::vector<Length> &xs) {
  std::vector<Band> bands(xs.size());
  for (std::size_t other = 0; other < places.size(); ++other) {
    const Rect &place = places[other];
    if (other == own || shared_part(place, places[own])) continue;
    for (std::size_t x = 0; x + 1 < xs.size(); ++x) {
      if (xs[x + 1] <= place.left() || xs[x] >= place.right()) continue;
      if (other < own) bands[x].top = std::max(bands[x].top, place.top());
      if (other > own) bands[x].bottom = std::min(bands[x].bottom, place.bottom());
    }
  }
  return bands;
}

/// What the leaders so far leave to the next one, which must not get above them.
class Taken {
public:
  explicit Taken(const std::vector<Length> &xs) : xs_(xs), bands_(xs.size()) {}

  Length floor() const { return bands_.back().top; }

  std::vector<Band> left_of(std::vector<Band> bands) const {
    for (std::size_t x = 0; x < bands.size(); ++x) {
      bands[x].top = std::max(bands[x].top, bands_[x].top);
      bands[x].across = bands_[x].across;
      bands[x].along_from = bands_[x].along_from;
      bands[x].along_to = bands_[x].along_to;
    }
    return bands;
  }

  void add(const Trail &trail, const Rect &place) {
    std::size_t level = 0;
    for (std::size_t x = 0; x < xs_.size(); ++x) {
      if (xs_[x] < trail.rise.value_or(place.right())) continue;
      const Length before = trail.levels[level];
      while (level < trail.uprights.size() && trail.uprights[level] <= xs_[x]) ++level;
      bands_[x].top = std::max(bands_[x].top, trail.levels[level]);
      bands_[x].across = std::max(bands_[x].across, std::min(before, trail.levels[level]));
      if (trail.rise == xs_[x]) add_rise(bands_[x], trail.levels[0], place);
    }
  }

private:
  /// On the same level track the next leader is below this one, and so crosses it only if this one comes from
  /// below.
  static void add_rise(Band &band, Length level, const Rect &place) {
    const bool up = level < place.centre().y;
    band.along_from = std::min(band.along_from, up ? level : place.bottom());
    band.along_to = std::max(band.along_to, up ? place.top() : level - smallest);
  }
  static constexpr Length smallest = Length::of_ticks(1);

  const std::vector<Length> &xs_;
  std::vector<Band> bands_;
};

} // namespace

std::vector<Trail> find_trails(std::span<const Rect> places, std::span<const Length> wanted,
                               const LeaderRoom &room) {
  const LeaderTracks tracks(places, wanted, room);
  Taken taken(tracks.xs());
  std::vector<Trail> trails;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const std::vector<Band> bands = taken.left_of(bands_beside(places, i, tracks.xs()));
    trails.push_back(TrailSearch(tracks, places[i], wanted[i], bands, taken.floor()).find());
    taken.add(trails.back(), places[i]);
  }
  return trails;
}

} // namespace stoneproof::layout
