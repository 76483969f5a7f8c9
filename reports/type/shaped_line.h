// A line of text as glyphs, the form in which it is drawn.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace stoneproof {

using FontId = std::size_t; ///< index of one of the typesetter's fonts
using GlyphId = std::uint32_t;

/// All lengths in font units.
struct ShapedGlyph {
  GlyphId id = 0;     ///< what no font has is set as a white square
  int advance = 0;    ///< from this glyph's origin to the next one's
  int dx = 0, dy = 0; ///< the glyph is drawn so far right of and above its origin
  std::size_t first = 0,
              count =
                  0; ///< the characters it came from; glyphs that came from the same ones follow each other
};

struct ShapedRun {
  FontId font = 0;
  std::vector<ShapedGlyph> glyphs; ///< from left to right
};

struct ShapedLine {
  std::u32string text;         ///< what is set, in reading order
  std::vector<ShapedRun> runs; ///< from left to right
};

} // namespace stoneproof
