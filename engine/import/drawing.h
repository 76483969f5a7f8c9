// What the pages of a finished PDF draw, as values: pictures with their places, texts, lines. Points of the
// page's own user space, y upwards, UserUnit and Rotate not yet applied.
#pragma once

#include "engine/import/plane.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace stoneproof::finished {

/// One use of a picture on a page.
struct ShownImage {
  std::size_t image = 0; ///< index into Drawn::images
  Matrix place;          ///< maps the unit square to the page, the picture's first row along its top edge
  Outline visible;       ///< what of it the clip leaves; empty: nothing
  bool tiled = false;    ///< in a cell of a pattern, the one that is told of many
};

/// One line of text, or as much of it as one operation showed.
struct ShownText {
  std::size_t font = 0; ///< index into Drawn::fonts
  double size = 0;      ///< height of the em on the page, in points
  Outline outline;      ///< from the descent to the ascent
  std::string text;     ///< UTF-8; U+FFFD for what the font gives no character for
  bool seen = true;     ///< false: drawn in no way (text rendering mode 3)
};

/// A line that was stroked, or a filled bar.
struct ShownLine {
  double width = 0; ///< in points; 0: as thin as the device can (ISO 32000-1, 8.4.3.2)
  Box box;
};

/// Shadings and paths that were painted, pictures, text and what lies wholly outside the trim aside.
struct Paints {
  bool any = false;
  Box box; ///< round all of it
};

/// The colour spaces in which something was painted with other than pictures.
struct ColourUse {
  bool gray = false, rgb = false, cmyk = false, spot = false;
};

/// What a page draws, each kind in the order in which it is drawn.
struct PageDrawing {
  std::vector<ShownImage> images;
  std::vector<ShownText> texts;
  std::vector<ShownLine> lines; ///< no wider than `widest_line`
  std::vector<bool> order;      ///< true: the next image, false: the next text, from the bottom up
  Paints paints;
  ColourUse colours;
  bool transparent = false; ///< something is blended, masked softly or not opaque
  bool cut_short = false;   ///< there was more than a reader can follow; what came before is here
  bool broken = false;      ///< some of its content could not be decoded
};

inline constexpr double widest_line = 1.0; ///< points; thicker ones are nobody's worry

} // namespace stoneproof::finished
