// A net of level and upright tracks over a drawing, and what it costs to follow them.
#pragma once

#include "reports/layout/leaders.h"

namespace stoneproof::layout {

/// Costs are in millimetres: what way round would be as bad.
class LeaderTracks {
public:
  LeaderTracks(std::span<const Rect> places, std::span<const Length> heights, const LeaderRoom &room);

  const std::vector<Length> &xs() const {
    return xs_;
  } ///< of upright tracks, ascending; the last is the exit
  const std::vector<Length> &ys() const { return ys_; } ///< of level tracks, ascending
  /// Along level track `y` from upright track `x` to the next.
  double level(std::size_t x, std::size_t y) const { return level_[x * ys_.size() + y]; }
  /// Along upright track `x` from level track `y` to the next.
  double upright(std::size_t x, std::size_t y) const { return upright_[x * ys_.size() + y]; }
  /// Straight from one point to another, level or upright.
  double between(Point from, Point to) const;

  struct Obstacle {
    Rect box;
    double rim, inside; ///< costs of crossing an edge, and of each millimetre within
  };

private:
  void charge(const Obstacle &obstacle);
  void charge_levels(const Obstacle &obstacle, Length low, Length high);
  void charge_uprights(const Obstacle &obstacle, Length low, Length high);

  std::vector<Length> xs_, ys_;
  std::vector<Obstacle> obstacles_;
  std::vector<double> level_, upright_;
};

} // namespace stoneproof::layout
