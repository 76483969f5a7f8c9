// A small copy of a picture, made for the proof: decoded in rows, averaged down, never held whole.
#pragma once

#include "engine/outcome.h"
#include "engine/picture/facts.h"

#include <cstdint>
#include <filesystem>
#include <vector>

namespace stoneproof {

/// 8-bit RGB rows, top to bottom, as the picture is seen (orientation applied), showing `part` of it.
struct Preview {
  PixelRect part; ///< the part of the full picture that the preview covers, in whole pixels
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgb; ///< width * height * 3 bytes
};

struct PreviewOrder {
  PixelRect part; ///< wanted part of the picture as it is seen; widened to whole pixels, cut to the picture
  int width = 0,
      height = 0; ///< wanted size of that part in preview pixels; never enlarged beyond the picture's own
};

/// Decodes the part asked for. Memory is bounded by the picture's width, the preview's size and `limits`.
/// A JPEG is decoded at the smallest eighth that is still no smaller than the order. CMYK and Lab become RGB
/// by a plain conversion, good enough to recognise a picture by. Faults: as read_facts, and damage met while
/// decoding; damage that leaves a picture to look at (a cut-off JPEG) is a Fault too: nobody should print it.
Outcome<Preview> read_preview(const std::filesystem::path &file, const Facts &facts,
                              const PreviewOrder &order, const PictureLimits &limits = {});

} // namespace stoneproof
