// All that the tiles of a part of a picture tell of it.
#pragma once

#include "engine/measure/jpeg_past.h"
#include "engine/measure/printed_screen.h"
#include "engine/measure/screen_likeness.h"

#include "engine/measure/upsampling.h"

namespace stoneproof {

struct Detail {
  Upsampling upsampling; ///< its axes as the picture is seen
  JpegPast past;         ///< its grid as the picture is stored
  PrintedScreen printed; ///< its angle as the picture is seen
  ScreenLikeness screenshot;
};

/// From the tiles of a part, most detail first; none: cannot tell. The facts are those of their picture. The
/// past as a JPEG is looked for in TIFFs and PNGs, and in JPEGs in gray or YCbCr.
Detail detail_of(const std::vector<Tile> &tiles, const Facts &facts);

} // namespace stoneproof
