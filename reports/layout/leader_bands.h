// What places and earlier leaders leave to a leader that is to cross none of them.
#pragma once

#include "reports/layout/leader_trails.h"

namespace stoneproof::layout {

inline constexpr Length no_top = Length::of_mm(-1e6), no_bottom = Length::of_mm(1e6);

/// Where a leader may be between two upright tracks without crossing others; where an earlier leader lies
/// across the first of them, and where one runs along it.
struct Band {
  Length top = no_top, bottom = no_bottom;
  Length across = no_top;
  Length along_from = no_bottom, along_to = no_top;
  /// Whether an upright move, downwards or back, crosses the earlier leader; on the same track it is below
  /// it.
  bool crossed(Length above, Length below) const { return above < across && below >= across; }
};

/// The bands that the other places leave to the leader of place `own`: below those before it, above those
/// after it. `xs` are the upright tracks; the band of each reaches to the next.
std::vector<Band> bands_beside(std::span<const Rect> places, std::size_t own, const std::vector<Length> &xs);

/// The bands that the leaders so far leave to the next one, which must not get above them.
class TakenBands {
public:
  explicit TakenBands(const std::vector<Length> &xs) : xs_(xs), bands_(xs.size()) {}

  void add(const Trail &trail, const Rect &place);
  Length floor() const { return bands_.back().top; } ///< at the exit
  std::vector<Band> narrowed(std::vector<Band> bands) const;

private:
  const std::vector<Length> &xs_;
  std::vector<Band> bands_;
};

} // namespace stoneproof::layout
