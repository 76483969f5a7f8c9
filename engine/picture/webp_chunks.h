// The chunks of a WebP file, found without decoding (WebP container specification, RFC 9649, section 2).
#pragma once

#include "engine/picture/picture_file.h"
#include "engine/units/geometry.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace stoneproof {

/// A stretch of bytes of the file.
struct WebpSpan {
  std::uint64_t offset = 0, bytes = 0;
};

struct WebpChunks {
  PixelSize canvas;                                 ///< the size of the whole picture
  std::int64_t x = 0, y = 0, width = 0, height = 0; ///< where the first picture lies on the canvas
  WebpSpan data; ///< of the first picture: ALPH, VP8 and VP8L with their headers
  bool lossless = false;
  bool alpha = false; ///< of the first picture itself
  bool animated = false;
  int pages = 1;      ///< pictures in the file
  WebpSpan icc, exif; ///< without their headers; no bytes: there is none

  bool covers_canvas() const { return width == canvas.width && height == canvas.height; }
};

/// Walks the file's chunks. Where that fails, `error` says why.
struct WebpWalk {
  std::optional<WebpChunks> chunks;
  std::string error;
};
WebpWalk read_webp_chunks(const PictureFile &file);

/// The bytes of a span, cut at the end of the file; empty where it is longer than `most`.
std::vector<std::uint8_t> webp_bytes(const PictureFile &file, WebpSpan span, std::uint64_t most);

/// More than any profile or Exif segment in use takes.
inline constexpr std::uint64_t most_webp_extra = 16'000'000;

} // namespace stoneproof
