// How many rows that differ stand behind a trace.
#pragma once

#include "engine/measure/tile.h"

#include <vector>

namespace stoneproof {

/// Near alpha / 2, where the trace is looked for: 1 where all rows of a tile are one and the same, stronger
/// here and weaker there, as in a drawing of stripes; as many as there are rows or bins, whichever are fewer,
/// where each runs for itself. 1 over the mean of |sum_r Y_k conj(Y_l)|^2 / (P_k P_l) over all pairs of bins:
/// the participation ratio of the bins that are brought to one power. Median over the tiles; 0 of none.
double different_rows(const std::vector<Tile> &tiles, double alpha);

} // namespace stoneproof
