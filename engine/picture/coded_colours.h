// What the numbers of ITU-T H.273 say of a picture's colours, as a PNG's cICP chunk and a HEIF's nclx box
// hold them.
#pragma once

#include "engine/picture/facts.h"

#include <optional>

namespace stoneproof {

/// Tables 2 and 3 of H.273. Primaries 1 are those of sRGB: with one of the usual curves (1, 6 and 15 of
/// video, 2 not said, 13 of sRGB) they are taken as sRGB; with another, as one for bright displays, only the
/// primaries are known. 9 (BT.2020), 10 (XYZ), 11 and 12 (DCI and display P3) are wider; the others are not.
/// None: 2, not said.
inline std::optional<ColourTag> tag_of_code(int primaries, int curve) {
  if (primaries == 2) return std::nullopt;
  if (primaries >= 9 && primaries <= 12) return ColourTag::coded;
  const bool usual = curve == 1 || curve == 2 || curve == 6 || curve == 13 || curve == 15;
  return primaries == 1 && usual ? ColourTag::srgb : ColourTag::gamma;
}

} // namespace stoneproof
