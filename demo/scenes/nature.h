// Skies, hills, trees, grass, water and walls that several scenes share.
#pragma once

#include "demo/paint/canvas.h"
#include "demo/paint/noise.h"

namespace stoneproof::demo {

/// A sky from `zenith` to `haze` at the horizon, with drifting clouds. The clouds are soft: they are worked
/// out on a coarse grid once.
class Sky {
public:
  Sky(const Canvas &canvas, double horizon, Colour zenith, Colour haze, std::uint32_t seed);
  Colour operator()(Vec p) const;

private:
  static constexpr double cells = 360; // grid cells a unit
  struct Cell {
    double cover, shade;
  };
  const Cell &cell(int x, int y) const;
  double horizon_;
  Colour zenith_, haze_;
  int columns_, rows_;
  std::vector<Cell> grid_;
};

/// The y of a ridge at x: `base` with hills of the given height, about `pitch` hills a unit.
double ridge(double x, double base, double height, double pitch, std::uint32_t seed);

/// A ridge worked out once for every column of a canvas.
class Skyline {
public:
  Skyline(const Canvas &canvas, double base, double height, double pitch, std::uint32_t seed);
  double operator()(double x) const {
    const auto last = static_cast<double>(tops_.size() - 1);
    return tops_[static_cast<std::size_t>(std::clamp(x * scale_, 0.0, last))];
  }

private:
  double scale_;
  std::vector<double> tops_;
};

/// A leafy tree standing at `foot`. `bare` leaves off the leaves.
void tree(Canvas &canvas, Vec foot, double height, Colour bark, Colour leaf, bool bare, Random &random);
/// A fir: layered dark boughs; `snow` whitens their tops.
void fir(Canvas &canvas, Vec foot, double height, Colour needles, double snow, Random &random);
/// Blades of grass from `top` down to `bottom`, growing larger towards the viewer.
void grass(Canvas &canvas, double top, double bottom, Colour light, Colour dark, int blades, Random &random);

/// Turns what lies below `level` into water: the mirrored picture above it, rippled, under a tint.
void flood(Canvas &canvas, double level, Colour tint, double ripple, std::uint32_t seed);

/// Bricks in stretcher bond, `courses` a unit.
Colour bricks(Vec p, double courses, Colour brick, Colour mortar, std::uint32_t seed);
/// Rounded roof tiles in staggered rows.
Colour tiles(Vec p, double rows, Colour tile, std::uint32_t seed);

} // namespace stoneproof::demo
