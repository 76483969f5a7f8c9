// The cheapest trail for one leader after the other, from the left to the right over the tracks (dynamic
// programming: an upright track is reached level, then followed up or down). What keeps them from crossing: a
// leader passes above the places of those after it and below those before it, and never gets above an earlier
// leader. Between places that lie apart there is always such a trail. The only way in is find_trails; tested
// through the leaders in tests/reports/layout.
#include "reports/layout/leader_trails.h"

#include "reports/layout/leader_bands.h"
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

  /// Up or down from every level at which the upright track is reached, and from the place itself.
  void follow(std::size_t x, bool up) {
    double cost = never;
    Step reached;
    for (std::size_t i = 1; i < ys_.size(); ++i) {
      const std::size_t y = up ? ys_.size() - 1 - i : i, before = up ? y + 1 : y - 1;
      const double move = upright_cost(x, std::min(y, before));
      cost += move;
      if (const double turned = arrival_[before] + bend + move; turned < cost)
        cost = turned, reached = {starts(x, before) ? Step::start_right : Step::level, before};
      if (const double rise = rise_cost(x, before, y); rise < cost)
        cost = rise, reached = {Step::start_rise, y};
      if (cost + bend < settled_[y]) settled_[y] = cost + bend, step(x, y) = reached;
    }
  }

  /// From the head or the foot of the place to the first level track beyond it.
  double rise_cost(std::size_t x, std::size_t before, std::size_t y) const {
    const Length off = std::min(off_corner, place_.width / 3);
    if (xs_[x] <= place_.left() + off || xs_[x] >= place_.right() - off) return never;
    const bool up = y < before;
    const Length rim = up ? place_.top() : place_.bottom();
    if (up ? ys_[y] >= rim || ys_[before] < rim : ys_[y] <= rim || ys_[before] > rim) return never;
    const Length above = std::min(rim, ys_[y]), below = std::max(rim, ys_[y]);
    const double cost = (below - above).mm() + tracks_.between({xs_[x], rim}, {xs_[x], ys_[y]});
    return bands_[x].crossed(above, below) ? cost + crossing : cost;
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

} // namespace

std::vector<Trail> find_trails(std::span<const Rect> places, std::span<const Length> wanted,
                               const LeaderRoom &room) {
  const LeaderTracks tracks(places, wanted, room);
  TakenBands taken(tracks.xs());
  std::vector<Trail> trails;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const std::vector<Band> bands = taken.narrowed(bands_beside(places, i, tracks.xs()));
    trails.push_back(TrailSearch(tracks, places[i], wanted[i], bands, taken.floor()).find());
    taken.add(trails.back(), places[i]);
  }
  return trails;
}

} // namespace stoneproof::layout
