// Pictures that a PDF holds in JPEG 2000 or JBIG2, decoded to plain samples (ISO 32000-1, 7.4.7 and 7.4.9).
#pragma once

#include "engine/units/geometry.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace stoneproof::finished {

/// Rows of samples with eight bits, pixel by pixel; or of one bit a pixel, each row from a byte of its own.
struct DecodedPicture {
  PixelSize size;
  int channels = 1;
  int bits = 8;
  std::string rows;
};

/// Of JPEG 2000 (ISO/IEC 15444-1), a whole JP2 file or a bare code stream; at most four channels are kept,
/// none that says that it is opacity. None: broken, or more than so many pixels.
std::optional<DecodedPicture> decode_jpeg2000(std::string_view data, std::int64_t most_pixels);

/// Of JBIG2 (ITU-T T.88) as a PDF embeds it; `globals` may be empty. 1 is black. None: broken.
std::optional<DecodedPicture> decode_jbig2(std::string_view data, std::string_view globals);

} // namespace stoneproof::finished
