// Rows of a TIFF in YCbCr that was not packed by JPEG: libtiff itself turns a strip or a tile into RGB.
#pragma once

#include "engine/picture/formats.h"
#include "engine/picture/tiff_session.h"

namespace stoneproof {

bool needs_tiff_rgba(const TiffHeader &header);
/// Holds one strip, or one row of tiles, at four bytes a pixel.
Outcome<Rows> tiff_rgba_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits);

} // namespace stoneproof
