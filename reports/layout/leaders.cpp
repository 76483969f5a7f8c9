// Leaders from rough trails: lanes first for their levels, then for what joins the levels, then the ends on
// the rims. The only ways in are the functions of leaders.h; tested in tests/reports/layout.
#include "reports/layout/leaders.h"

#include "reports/layout/leader_lanes.h"
#include "reports/layout/leader_trails.h"
#include "reports/layout/outline.h"

#include <algorithm>
#include <optional>

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Length beside_drawing = 4_mm; ///< how far above or below the drawing a leader may pass
constexpr Length near = 0.3_mm;         ///< lines whose ends come so close still keep apart
constexpr Length before_tags = 0.8_mm;  ///< between the last upright and the tags

/// A stretch of a leader: `from` and `to` along itself, in the direction in which the leader runs.
struct Stretch {
  std::size_t leader = 0;
  Length from, to;
  Lane lane;
  Length low() const { return std::min(from, to); }
  Length high() const { return std::max(from, to); }
  bool beside(const Stretch &other) const {
    return leader != other.leader && low() < other.high() + near && other.low() < high() + near;
  }
};

/// Lanes for stretches that are listed so that of any two beside each other the earlier one belongs before.
std::vector<Length> spread(const std::vector<Stretch> &stretches) {
  std::vector<Lane> lanes;
  std::vector<LaneOrder> orders;
  for (std::size_t i = 0; i < stretches.size(); ++i) {
    lanes.push_back(stretches[i].lane);
    for (std::size_t before = 0; before < i; ++before)
      if (stretches[before].beside(stretches[i]) && stretches[before].lane.wanted <= stretches[i].lane.wanted)
        orders.push_back({before, i});
  }
  return spread_lanes(lanes, orders, leader_pitch);
}

/// Where a straight line through a convex shape leaves it: the largest `along` at `across`; `start` where
/// they miss.
Length rim_at(const Outline &shape, Length at, Length start, bool largest, Length Point::*along,
              Length Point::*across) {
  std::optional<Length> found;
  for (std::size_t i = 0; i < shape.size(); ++i) {
    const Point &a = shape[i], &b = shape[(i + 1) % shape.size()];
    const Length low = std::min(a.*across, b.*across), high = std::max(a.*across, b.*across);
    if (at < low || at > high) continue;
    const double share = high == low ? 0 : (at - a.*across) / (b.*across - a.*across);
    const Length here = a.*along + (b.*along - a.*along) * share;
    if (!found || (largest ? here > *found : here < *found)) found = here;
  }
  return found.value_or(start);
}

class Untangling {
public:
  /// `places` are the boxes round `outlines`.
  Untangling(std::span<const Outline> outlines, std::span<const Rect> places, std::vector<Trail> trails,
             const LeaderRoom &room)
      : outlines_(outlines), places_(places), trails_(std::move(trails)), room_(room) {
    for (std::size_t i = 0; i < places.size(); ++i)
      rims_.push_back(trails_[i].levels[0] < places[i].centre().y ? places[i].top() : places[i].bottom());
    for (const std::vector<Rect> *things : {&room.pictures, &room.texts})
      obstacles_.insert(obstacles_.end(), things->begin(), things->end());
    obstacles_.insert(obstacles_.end(), places.begin(), places.end());
  }

  std::vector<Way> ways() {
    move_levels();
    move_uprights(true);
    move_uprights(false);
    std::vector<Way> ways;
    for (std::size_t i = 0; i < trails_.size(); ++i) ways.push_back(way_of(i));
    return ways;
  }

private:
  void move_levels() {
    std::vector<Stretch> stretches;
    std::vector<Length *> moved;
    for (std::size_t i = 0; i < trails_.size(); ++i) {
      Trail &trail = trails_[i];
      Length from = trail.rise.value_or(places_[i].right());
      for (std::size_t level = 0; level < trail.levels.size(); ++level) {
        const Length to = level < trail.uprights.size() ? trail.uprights[level] : exit_of(room_);
        stretches.push_back({i, from, to, level_lane(trail.levels[level], from, to)});
        if (level == 0 && !trail.rise) keep_at(stretches.back().lane, places_[i].top(), places_[i].bottom());
        moved.push_back(&trail.levels[level]);
        from = to;
      }
    }
    const std::vector<Length> at = spread(stretches);
    for (std::size_t i = 0; i < at.size(); ++i) *moved[i] = at[i];
    for (std::size_t i = 0; i < trails_.size(); ++i) keep_outside(i);
  }

  /// A lane for which there was no room may have been moved into its own place.
  void keep_outside(std::size_t i) {
    const Rect &place = places_[i];
    Length &level = trails_[i].levels[0];
    if (!trails_[i].rise)
      level = std::clamp(level, place.top(), place.bottom());
    else
      level = rims_[i] == place.top() ? std::min(level, rims_[i]) : std::max(level, rims_[i]);
  }

  /// All that run up, or all that run down. Of those that run up the earlier leader turns first, of those
  /// that run down the later one.
  void move_uprights(bool up) {
    std::vector<Stretch> stretches;
    std::vector<Length *> moved;
    for (std::size_t n = 0; n < trails_.size(); ++n) {
      const std::size_t i = up ? n : trails_.size() - 1 - n;
      Trail &trail = trails_[i];
      const auto add = [&](Length &x, Length from, Length to, bool rise) {
        if ((to < from) != up) return;
        stretches.push_back({i, from, to, upright_lane(x, std::min(from, to), std::max(from, to))});
        if (rise) keep_at(stretches.back().lane, places_[i].left(), places_[i].right());
        moved.push_back(&x);
      };
      if (trail.rise) add(*trail.rise, rims_[i], trail.levels[0], true);
      for (std::size_t j = 0; j < trail.uprights.size(); ++j)
        add(trail.uprights[j], trail.levels[j], trail.levels[j + 1], false);
    }
    const std::vector<Length> at = spread(stretches);
    for (std::size_t i = 0; i < at.size(); ++i) *moved[i] = at[i];
  }

  static void keep_at(Lane &lane, Length low, Length high) {
    lane.low = std::clamp(lane.low, low, high);
    lane.high = std::clamp(lane.high, low, high);
    lane.wanted = std::clamp(lane.wanted, lane.low, lane.high);
  }

  /// What lies before and after a track bounds it; what it has to cross does not.
  Lane level_lane(Length y, Length from, Length to) const {
    Lane lane{y, room_.drawing.top() - beside_drawing, room_.drawing.bottom() + beside_drawing};
    for (const Rect &box : obstacles_)
      if (box.left() < to && box.right() > from) bound(lane, box.top(), box.bottom());
    return lane;
  }
  Lane upright_lane(Length x, Length from, Length to) const {
    Lane lane{x, room_.drawing.left(), exit_of(room_)};
    for (const Rect &box : obstacles_)
      if (box.top() < to && box.bottom() > from) bound(lane, box.left(), box.right());
    return lane;
  }
  static void bound(Lane &lane, Length low, Length high) {
    if (high <= lane.wanted) lane.low = std::max(lane.low, high);
    if (low >= lane.wanted) lane.high = std::min(lane.high, low);
  }

  Way way_of(std::size_t i) const {
    const Trail &trail = trails_[i];
    Way way;
    if (trail.rise)
      way = {{*trail.rise, head_or_foot(i)}, {*trail.rise, trail.levels[0]}};
    else
      way = {{right_side(i), trail.levels[0]}};
    for (std::size_t j = 0; j < trail.uprights.size(); ++j) {
      way.push_back({trail.uprights[j], trail.levels[j]});
      way.push_back({trail.uprights[j], trail.levels[j + 1]});
    }
    way.push_back({exit_of(room_), trail.levels.back()});
    return way;
  }

  // The box round a turned place has corners that do not belong to it: a way begins on the outline itself.
  Length head_or_foot(std::size_t i) const {
    const bool foot = rims_[i] == places_[i].bottom();
    return rim_at(outlines_[i], *trails_[i].rise, rims_[i], foot, &Point::y, &Point::x);
  }
  Length right_side(std::size_t i) const {
    return rim_at(outlines_[i], trails_[i].levels[0], places_[i].right(), true, &Point::x, &Point::y);
  }

  std::span<const Outline> outlines_;
  std::span<const Rect> places_;
  std::vector<Length> rims_; ///< head or foot, where the leader leaves there
  std::vector<Trail> trails_;
  const LeaderRoom &room_;
  std::vector<Rect> obstacles_;
};

} // namespace

std::vector<Way> lead_out(std::span<const Outline> places, std::span<const Length> wanted,
                          const LeaderRoom &room) {
  std::vector<Rect> boxes;
  for (const Outline &place : places) boxes.push_back(box_round(place));
  if (boxes.empty()) return {};
  return Untangling(places, boxes, find_trails(boxes, wanted, room), room).ways();
}

void lead_to_tags(std::span<Way> ways, std::span<const Length> heights, Length tags) {
  for (const bool up : {true, false}) {
    std::vector<Stretch> stretches;
    for (std::size_t n = 0; n < ways.size(); ++n) {
      const std::size_t i = up ? n : ways.size() - 1 - n;
      const Point from = ways[i].back();
      const Length low = from.x, high = tags - before_tags;
      if (heights[i] != from.y && (heights[i] < from.y) == up)
        stretches.push_back({i, from.y, heights[i], {low + (high - low) / 2, low, high}});
    }
    const std::vector<Length> at = spread(stretches);
    for (std::size_t i = 0; i < at.size(); ++i) {
      Way &way = ways[stretches[i].leader];
      way.back().x = at[i];
      way.push_back({at[i], stretches[i].to});
    }
  }
  for (std::size_t i = 0; i < ways.size(); ++i) ways[i].push_back({tags, heights[i]});
}

} // namespace stoneproof::layout
