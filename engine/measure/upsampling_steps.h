// Whether columns are pixels repeated, without smoothing (nearest neighbour).
#pragma once

#include "engine/measure/tile.h"

#include <vector>

namespace stoneproof {

/// Columns repeated by a factor f step only where the small picture had its next column: from column x to the
/// next where floor(x / f + offset) grows. Elsewhere nothing steps, or, after a JPEG, little.
class ColumnSteps {
public:
  explicit ColumnSteps(const std::vector<Tile> &tiles);

  /// How well steps follow a factor (above 1): their correlation with being where it puts them, 1 where
  /// nothing else steps and all of them as much.
  double likeness(double factor) const;

private:
  /// Mean step from each column to the next, as a share of the largest near it; less than nothing where all
  /// near it is flat.
  std::vector<std::vector<double>> by_tile_;
};

} // namespace stoneproof
