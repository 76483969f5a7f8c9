// Writing: a stroke alphabet drawn for this album, in print, typewriter and joined handwriting.
#pragma once

#include "demo/paint/canvas.h"
#include "demo/paint/noise.h"

#include <string>
#include <string_view>

namespace stoneproof::demo {

struct Pen {
  Colour ink = rgb(0x1d1a18);
  double weight = 0.09;    ///< stroke width as a share of the letter height
  double slant = 0;        ///< share of the height by which the top leans right
  double tremble = 0;      ///< random shift of each point, share of the height
  bool joined = false;     ///< a hairline runs from letter to letter
  bool even_pitch = false; ///< every letter as wide as the next, like a typewriter
  double opacity = 0.92;
};

/// Writes one line; `base` is where its base line begins, `height` that of a capital. Returns where it ended.
double write(Canvas &canvas, Vec base, double height, std::string_view text, const Pen &pen, Random &random);
double written_width(std::string_view text, double height, const Pen &pen);
void write_centred(Canvas &canvas, Vec base_middle, double height, std::string_view text, const Pen &pen,
                   Random &random);

/// Words that look like a language and are none, for small print: about `letters` characters.
std::string babble(Random &random, int letters);

} // namespace stoneproof::demo
