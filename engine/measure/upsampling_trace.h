// The traces that an enlargement in software leaves in the spectrum.
//
// An enlargement by f folds copies of the small picture's spectrum round v = 1/f cycles a pixel and damps
// them, so that what lies a little above 0.5/f runs in step with what lies as far below it. Pairs of bins k +
// l = j show it as coherence C(j) = sum_r Y_k Y_l / sqrt(P_k P_l), at alpha = j / side = 1/f (the relation is
// that of periodically correlated signals; compare A. C. Gallagher, Canadian Conference on Computer and Robot
// Vision 2005, and D. Vazquez-Padin, F. Perez-Gonzalez, IEEE WIFS 2011).
#pragma once

#include "engine/measure/spectrum.h"

#include <array>
#include <complex>
#include <vector>

namespace stoneproof {

/// Columns repeated without smoothing (nearest neighbour) step only where the small picture had its next
/// column.
struct RepeatedColumns {
  double gap =
      1; ///< how far steps fall apart into none and some: steps of the lowest tenth over those of the highest
  double share = 1; ///< of the columns that step, which is 1/f
  /// Of the stretches between steps, those that are as long as 1/share makes them, one pixel up or down.
  double regular = 0;
};

/// Of one axis, over all tiles.
struct UpsamplingTrace {
  int side = 0;  ///< of the tiles
  int tiles = 0; ///< how many were looked at
  /// |C| above its running median, by j from first_sum on; with and without one level of white noise allowed
  /// for, which keeps what is hardly there from counting.
  std::vector<double> plain, damped;
  /// C at alpha = k/8, where JPEG's blocks leave lines too, turned to the picture's own origin so that tiles
  /// add up only where the trace is one of position.
  std::array<std::complex<double>, 8> at_eighths{};
  std::vector<double> power;         ///< by bin, mean over the tiles, for one pixel
  std::vector<double> power_of_best; ///< the same of the four with most detail
  RepeatedColumns repeated;

  int first_sum() const { return (17 * side + 99) / 100; }
  double alpha(std::size_t i) const { return (first_sum() + static_cast<double>(i)) / side; }
};

/// Tiles most detail first, all of one side; along their rows.
UpsamplingTrace upsampling_trace(const std::vector<Tile> &tiles);

} // namespace stoneproof
