// The traces that an enlargement in software leaves in the spectrum.
//
// An enlargement by f folds copies of the small picture's spectrum round v = 1/f cycles a pixel and damps
// them, so that what lies a little above 0.5/f runs in step with what lies as far below it. Pairs of bins k +
// l = j show it as coherence C(j) = sum_r Y_k Y_l / sqrt(P_k P_l), at alpha = j / side = 1/f (the relation is
// that of periodically correlated signals; compare A. C. Gallagher, Canadian Conference on Computer and Robot
// Vision 2005, and D. Vazquez-Padin, F. Perez-Gonzalez, IEEE WIFS 2011). The trace is one of position: turned
// to a common origin, the tiles of an enlargement add up, and those of a pattern seldom do.
#pragma once

#include "engine/measure/spectrum.h"

#include <algorithm>
#include <array>
#include <complex>
#include <vector>

namespace stoneproof {

/// Of one axis, over all tiles.
struct UpsamplingTrace {
  int side = 0; ///< of the tiles
  /// |C| of the tiles together above its running median, by j from first_sum on; the lines at eighths that
  /// reach over by the window are taken off.
  std::vector<double> excess;
  /// C at alpha = k/8, k from 2 to 6, where JPEG's blocks leave lines too, turned to the picture's own
  /// origin. Damped: one level of white noise allowed for, which keeps what is hardly there from counting.
  std::array<std::complex<double>, 7> at_eighths{}, damped_at_eighths{};
  std::vector<double> power;         ///< by bin, mean over the tiles, for one pixel
  std::vector<double> power_of_best; ///< the same of the four with most detail

  int first_sum() const { return first_sum(side); }
  double alpha(std::size_t i) const { return (first_sum() + static_cast<double>(i)) / side; }
  static int first_sum(int side) { return (17 * side + 99) / 100; }
  /// How far from half of a sum, in bins, its pairs reach.
  static double reach(double sum) { return std::max(3.0, 0.1 * sum); }
};

/// Tiles most detail first, all of one side and multiples of it apart; along their rows.
UpsamplingTrace upsampling_trace(const std::vector<Tile> &tiles);

} // namespace stoneproof
