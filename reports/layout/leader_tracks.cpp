// Tracks lie in the middle of narrow gaps, near both edges of wide ones, and on seams where two things meet.
// The only way in is LeaderTracks; tested through the leaders in tests/reports/layout.
#include "reports/layout/leader_tracks.h"

#include <algorithm>
#include <cstdlib>

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Length wide_gap = 6_mm, off_edge = 2_mm, slug_track = 2.5_mm;
constexpr Length same = Length::of_ticks(Length::ticks_per_mm / 50);
constexpr Length clearance = 0.4_mm; ///< wanted between a leader and what it passes
constexpr double close_by = 1;       ///< cost of a millimetre nearer than that
constexpr std::size_t most_tracks =
    128; ///< either way, so that the heaviest page takes no longer than this many

struct Span {
  Length low, high;
};

std::vector<Length> thinned(std::vector<Length> tracks) {
  std::sort(tracks.begin(), tracks.end());
  const Length span = tracks.back() - tracks.front();
  const Length apart = tracks.size() > most_tracks ? span / static_cast<int>(most_tracks) : same;
  std::vector<Length> kept;
  for (const Length track : tracks)
    if (kept.empty() || track - kept.back() >= apart) kept.push_back(track);
  return kept;
}

/// Tracks across things that take up `spans`, within `room`, and those that are wished for.
std::vector<Length> tracks_across(const std::vector<Span> &spans, const Span &room,
                                  std::vector<Length> tracks) {
  std::vector<Length> lows, edges{room.low, room.high};
  for (const Span &span : spans) {
    lows.push_back(span.low);
    for (const Length edge : {span.low, span.high})
      if (edge > room.low && edge < room.high) edges.push_back(edge);
  }
  std::sort(lows.begin(), lows.end());
  std::sort(edges.begin(), edges.end());
  for (const Span &span : spans) { // a seam: one thing ends where another begins
    const auto next = std::lower_bound(lows.begin(), lows.end(), span.high - same);
    if (next != lows.end() && *next <= span.high + same && span.high > room.low && span.high < room.high)
      tracks.push_back(span.high);
  }
  for (std::size_t i = 1; i < edges.size(); ++i) {
    const Length gap = edges[i] - edges[i - 1];
    if (gap > wide_gap) {
      tracks.push_back(edges[i - 1] + off_edge);
      tracks.push_back(edges[i] - off_edge);
    } else if (gap > same)
      tracks.push_back(edges[i - 1] + gap / 2);
  }
  return thinned(std::move(tracks));
}

/// Adds the cost of a line that crosses `across`, from each track to the next, `add(index, cost)`.
template <class Add>
void charge_along(const std::vector<Length> &tracks, const Span &across,
                  const LeaderTracks::Obstacle &obstacle, Add add) {
  const auto first = std::upper_bound(tracks.begin(), tracks.end(), across.low);
  for (auto i = first == tracks.begin() ? first : first - 1; i + 1 < tracks.end() && *i < across.high; ++i) {
    const Length from = *i, to = *(i + 1);
    double cost = (std::min(to, across.high) - std::max(from, across.low)).mm() * obstacle.inside;
    if (across.low >= from && across.low < to) cost += obstacle.rim;
    if (across.high > from && across.high <= to) cost += obstacle.rim;
    if (cost > 0) add(static_cast<std::size_t>(i - tracks.begin()), cost);
  }
}

/// The tracks that lie above `low` and below `high`, from the first to behind the last.
std::pair<std::size_t, std::size_t> tracks_between(const std::vector<Length> &tracks, Length low,
                                                   Length high) {
  const auto begin = std::upper_bound(tracks.begin(), tracks.end(), low);
  const auto end = std::lower_bound(begin, tracks.end(), high);
  return {begin - tracks.begin(), end - tracks.begin()};
}

} // namespace

LeaderTracks::LeaderTracks(std::span<const Rect> places, std::span<const Length> heights,
                           const LeaderRoom &room) {
  for (const Rect &box : room.pictures) obstacles_.push_back({box, 200, 1});
  for (const Rect &box : room.texts) obstacles_.push_back({box, 15, 2});
  for (const Rect &box : places) obstacles_.push_back({box, 60, 1});
  std::vector<Span> across, down;
  for (const Obstacle &obstacle : obstacles_) {
    across.push_back({obstacle.box.left(), obstacle.box.right()});
    down.push_back({obstacle.box.top(), obstacle.box.bottom()});
  }
  const Rect &drawing = room.drawing;
  std::vector<Length> levels(heights.begin(), heights.end());
  for (const Rect &place : places) levels.push_back(place.centre().y);
  for (Length &level : levels) level = std::clamp(level, drawing.top(), drawing.bottom());
  levels.push_back(drawing.top() - slug_track);
  levels.push_back(drawing.bottom() + slug_track);
  ys_ = tracks_across(down, {drawing.top(), drawing.bottom()}, std::move(levels));
  xs_ = tracks_across(across, {drawing.left(), drawing.right()}, {});
  xs_.push_back(drawing.right() + leader_exit);
  level_.resize(xs_.size() * ys_.size());
  upright_.resize(level_.size());
  for (const Obstacle &obstacle : obstacles_) charge(obstacle);
}

void LeaderTracks::charge(const Obstacle &obstacle) {
  const Rect &box = obstacle.box;
  charge_levels(obstacle, box.top() + same, box.bottom() - same);
  charge_uprights(obstacle, box.left() + same, box.right() - same);
  const Obstacle edge{box, 0, close_by};
  for (const Length y : {box.top() - clearance, box.bottom() - same})
    charge_levels(edge, y, y + clearance + same);
  for (const Length x : {box.left() - clearance, box.right() - same})
    charge_uprights(edge, x, x + clearance + same);
}

/// On the level tracks above `low` and below `high`.
void LeaderTracks::charge_levels(const Obstacle &obstacle, Length low, Length high) {
  const auto [begin, end] = tracks_between(ys_, low, high);
  charge_along(xs_, {obstacle.box.left(), obstacle.box.right()}, obstacle, [&](std::size_t x, double cost) {
    for (std::size_t y = begin; y < end; ++y) level_[x * ys_.size() + y] += cost;
  });
}

void LeaderTracks::charge_uprights(const Obstacle &obstacle, Length low, Length high) {
  const auto [begin, end] = tracks_between(xs_, low, high);
  charge_along(ys_, {obstacle.box.top(), obstacle.box.bottom()}, obstacle, [&](std::size_t y, double cost) {
    for (std::size_t x = begin; x < end; ++x) upright_[x * ys_.size() + y] += cost;
  });
}

double LeaderTracks::between(Point from, Point to) const {
  double cost = 0;
  const bool is_level = from.y == to.y;
  const Length at = is_level ? from.y : from.x;
  const std::vector<Length> ends = is_level ? std::vector{std::min(from.x, to.x), std::max(from.x, to.x)}
                                            : std::vector{std::min(from.y, to.y), std::max(from.y, to.y)};
  for (const Obstacle &obstacle : obstacles_) {
    const Rect &box = obstacle.box;
    const Span across = is_level ? Span{box.top(), box.bottom()} : Span{box.left(), box.right()};
    const Span along = is_level ? Span{box.left(), box.right()} : Span{box.top(), box.bottom()};
    if (at > across.low + same && at < across.high - same)
      charge_along(ends, along, obstacle, [&](std::size_t, double more) { cost += more; });
  }
  return cost;
}

} // namespace stoneproof::layout
