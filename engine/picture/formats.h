// What each format gives to facts.cpp and rows.cpp. A new format adds its two functions here, and its
// signature.
#pragma once

#include "engine/picture/facts.h"
#include "engine/picture/picture_file.h"
#include "engine/picture/rows.h"

#include <memory>

namespace stoneproof {

using Rows = std::unique_ptr<RowSource>;

Outcome<Facts> jpeg_facts(const PictureFile &file, const PictureLimits &limits);
Outcome<Facts> tiff_facts(const PictureFile &file, const PictureLimits &limits);
Outcome<Facts> png_facts(const PictureFile &file, const PictureLimits &limits);
Outcome<Facts> gif_facts(const PictureFile &file, const PictureLimits &limits);
Outcome<Facts> webp_facts(const PictureFile &file, const PictureLimits &limits);
/// HEIC and AVIF are one container; `format` says which of them the file is.
Outcome<Facts> heif_facts(const PictureFile &file, Format format, const PictureLimits &limits);

Outcome<Rows> jpeg_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits);
Outcome<Rows> tiff_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits);
Outcome<Rows> png_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits);
Outcome<Rows> gif_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits);
Outcome<Rows> webp_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits);
Outcome<Rows> heif_rows(PictureFile file, Format format, const RowOrder &order, const PictureLimits &limits);

/// Gives the facts that depend on orientation: the seen size, and densities (none where zero or not a number)
/// in pixels for `inches` of length, swapped when the picture lies on its side.
void set_seen(Facts &facts, PixelSize stored, int orientation);
void set_density(Facts &facts, double x, double y, double inches);

} // namespace stoneproof
