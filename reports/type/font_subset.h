// The part of a font that a PDF embeds.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace stoneproof {

enum class Outlines { true_type, cff };

struct FontSubset {
  Outlines outlines = Outlines::true_type;
  std::string program; ///< a TrueType file, or a bare CFF font (Adobe Technical Note 5176)
  /// What the program calls the glyphs that were asked for, in their order: a glyph of a TrueType or
  /// name-keyed CFF font by its number, one of a CID-keyed CFF font by its CID (ISO 32000-1, 9.7.4.2).
  std::vector<std::uint16_t> numbers;
};

} // namespace stoneproof
