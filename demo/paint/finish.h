// What time and a scanner do to a picture: tone, fading, vignette, grain, dust, the print's paper
// border, and a correction.
#pragma once

#include "demo/paint/canvas.h"

namespace stoneproof::demo {

enum class Tone { colour, faded, sepia, gray, cool, vivid };

struct Finish {
  Tone tone = Tone::colour;
  double vignette = 0; ///< share of light lost in the corners
  double grain = 0.02; ///< deviation of the film grain, share of full light
  double border = 0;   ///< width of the print's white edge, share of the picture's height
  int dust = 0;        ///< specks and hairs
  /// What a scanner's software made of it: black and white become these shares of full light, cut at 0 and 1.
  double black = 0, white = 1;
  double blur = 0; ///< deviation in pixels of what the scanner left out of focus
  double dots = 0; ///< pixels from one row of dots to the next, where it was printed before it was scanned
  double bed = 0;  ///< width of the black lid of the scanner round it, share of the picture's height
  double tilt = 0; ///< degrees that it is turned clockwise on that
  bool dirty_glass = false; ///< a speck and a hair on the scanner's glass
  double stretch = 1;       ///< a correction in 8 bits afterwards: distances from middle gray times this
};

void finish(Canvas &canvas, const Finish &how, std::uint32_t seed);

} // namespace stoneproof::demo
