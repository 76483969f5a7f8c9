// What time and a scanner do to a picture: tone, fading, vignette, grain, dust, and the print's paper border.
#pragma once

#include "demo/paint/canvas.h"

namespace stoneproof::demo {

enum class Tone { colour, faded, sepia, gray, cool };

struct Finish {
  Tone tone = Tone::colour;
  double vignette = 0; ///< share of light lost in the corners
  double grain = 0.02; ///< deviation of the film grain, share of full light
  double border = 0;   ///< width of the print's white edge, share of the picture's height
  int dust = 0;        ///< specks and hairs
};

void finish(Canvas &canvas, const Finish &how, std::uint32_t seed);

} // namespace stoneproof::demo
