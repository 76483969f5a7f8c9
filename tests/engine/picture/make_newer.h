// Makes GIF, WebP, HEIC and AVIF files for tests: invented pixels, written with the format's own library.
#pragma once

#include "tests/engine/picture/make_pictures.h"

namespace made {

struct GifKind {
  int screen_width = 0, screen_height = 0; ///< 0: that of the picture
  int left = 0, top = 0;
  bool interlaced = false;
  std::vector<std::array<std::uint8_t, 3>> palette; ///< 2^n colours; empty: none at all
  bool local = false; ///< the palette stands with the picture; that of the screen is another
  int see_through = -1;
  int pages = 1; ///< the picture as often
  Bytes icc;
};
/// The picture's samples are indices.
void write_gif(const std::filesystem::path &file, const Raster &picture, const GifKind &kind);

struct WebpKind {
  bool lossless = true;
  Bytes icc, exif; ///< as they stand in their chunks
  /// Not zero: a frame of an animation on a canvas of this size, at an even place, as often as `pages`.
  int canvas_width = 0, canvas_height = 0, left = 0, top = 0;
  int pages = 1;
};
/// 8-bit RGB or RGBA.
void write_webp(const std::filesystem::path &file, const Raster &picture, const WebpKind &kind = {});

struct HeifKind {
  bool avif = false;
  bool lossless = true; ///< colours stored as they are, none left out; AV1 of more than 8 bits: nearly so
  int orientation = 1;  ///< as boxes that say how to turn the picture
  Bytes icc, exif;      ///< Exif without the name of a segment
  int primaries = 0;    ///< of an nclx box by ITU-T H.273; 0: 1
  int pages = 1;
};
/// RGB or RGBA of 8, 10 or 12 bits. The library's writer of HEVC or AV1 must be there.
void write_heif(const std::filesystem::path &file, const Raster &picture, const HeifKind &kind = {});

} // namespace made
