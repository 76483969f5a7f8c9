// Reduced copies that a TIFF holds beside its picture (tag 254, bit 0), for who wants fewer pixels.
#pragma once

#include "engine/picture/rows.h"
#include "engine/picture/tiff_session.h"

#include <cstdint>
#include <optional>

namespace stoneproof {

struct TiffReduced {
  std::uint64_t directory = 0; ///< its place in the file
  double scale = 1;            ///< its pixels for one of the picture's
  PixelSize full, size;        ///< of the picture; of the copy

  /// The same part of the copy, in its own pixels.
  RowOrder order(const RowOrder &of_picture) const;
};

/// The smallest reduced copy of the session's picture that still has as many pixels as the order asks for, in
/// the chain of directories or below the picture's own (tag 330); none: there is none, or every pixel is
/// wanted. A copy has the picture's shape, to a pixel, its colour model and its orientation.
std::optional<TiffReduced> find_reduced(const PictureFile &file, const TiffSession &session,
                                        const RowOrder &order, const PictureLimits &limits);

} // namespace stoneproof
