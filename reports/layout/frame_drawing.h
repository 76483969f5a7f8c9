// What one frame shows, drawn at any scale.
#pragma once

#include "engine/run/run.h"
#include "reports/layout/canvas.h"

#include <optional>
#include <vector>

namespace stoneproof::layout {

/// From the coordinates of a book page to those of the sheet.
struct Scale {
  double factor = 1;
  Point origin; ///< where the trim's top left corner lies on the sheet
  Point operator()(const Point &p) const { return {origin.x + p.x * factor, origin.y + p.y * factor}; }
  Rect operator()(const Rect &r) const {
    const Point corner = (*this)(Point{r.x, r.y});
    return {corner.x, corner.y, r.width * factor, r.height * factor};
  }
};

/// Which image of the document shows each picture; none: nothing to show.
using ImageOf = std::vector<std::optional<std::size_t>>;

/// The picture in its frame, cut at `room`, which is in the coordinates of the page; or a crossed box where
/// it has nothing to show.
void draw_frame(Canvas &canvas, const Checked &checked, const ImageOf &images, const PlacedFrame &placed,
                const Rect &room, const Scale &scale);

} // namespace stoneproof::layout
