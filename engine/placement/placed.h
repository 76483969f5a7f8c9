// Every frame of the book on its page, turned, with what it shows: what the rules and the proof read.
#pragma once

#include "engine/placement/fit.h"
#include "engine/placement/page_space.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace stoneproof {

/// The corners of `rect` after a clockwise turn about `centre`.
Corners turned(const Rect &rect, Turn turn, Point centre);

/// A frame on its page. The picture part is there when the frame names a picture whose size is known.
struct PlacedFrame {
  std::size_t page = 0;               ///< index into Book::pages
  std::size_t frame = 0;              ///< index into that page's frames
  std::optional<std::size_t> picture; ///< index into Book::pictures
  Corners corners;                    ///< of the frame, turned
  Rect box;                           ///< round the corners

  std::optional<Laid> laid; ///< how the picture sits; none: no picture, or its size is unknown
  Corners
      picture_corners; ///< where the whole picture's top left, top right, bottom right, bottom left pixels go
  std::optional<Rect> picture_box; ///< round the part that shows
  double cut_share = 0;            ///< share of the picture's area that the frame cuts away
  double uncovered_share = 0;      ///< share of the frame's area where no picture lies
};

/// Places one frame. `size` is the picture's pixel size as it is seen; none where it is unknown.
PlacedFrame place_frame(const Frame &frame, std::optional<PixelSize> size);

/// The box on the page round a part of the frame's picture, which has `size` and must be laid.
Rect place_of(const PlacedFrame &placed, const PixelRect &part, PixelSize size);

/// Places every frame in book order. `sizes` holds one entry for each of Book::pictures.
std::vector<PlacedFrame> place_frames(const Book &book, std::span<const std::optional<PixelSize>> sizes);

} // namespace stoneproof
