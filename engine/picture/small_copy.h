// A preview in the form in which a document keeps it: a small JPEG file in memory.
#pragma once

#include "engine/picture/preview.h"

namespace stoneproof {

struct SmallCopy {
  PixelRect part; ///< of the full picture as it is seen, in whole pixels
  int width = 0, height = 0;
  std::vector<std::uint8_t> jpeg; ///< a whole baseline JPEG file, 8-bit RGB
};

/// Compresses a preview at a fixed quality. `file` is where a Fault says it comes from: a side of more than
/// 65,500 pixels, the most that JPEG can say.
Outcome<SmallCopy> compress(const Preview &preview, const std::filesystem::path &file);

/// Decodes as read_preview does and compresses the result. Faults: as both.
Outcome<SmallCopy> read_small_copy(const std::filesystem::path &file, const Facts &facts,
                                   const PreviewOrder &order, const PictureLimits &limits = {});

} // namespace stoneproof
