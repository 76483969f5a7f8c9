// What is known of a font besides its glyphs.
#pragma once

#include <string>

namespace stoneproof {

/// Measures of a font in its own units, as a PDF font descriptor wants them.
struct FontFacts {
  std::string name; ///< PostScript name
  int units_per_em = 1000;
  int ascent = 0, descent = 0; ///< of the line; descent is negative
  int cap_height = 0;
  int left = 0, bottom = 0, right = 0, top = 0; ///< box that holds every glyph
  double italic_angle = 0;     ///< degrees, counterclockwise from upright: negative leans right
  int weight = 400;            ///< 100 to 900, as OpenType's usWeightClass
  bool may_be_embedded = true; ///< OpenType's fsType does not forbid it
};

} // namespace stoneproof
