// One page or spread of the book, drawn at a readable scale: its pictures, texts, edges and crop marks.
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

/// How large a page is drawn so that it, its bleed and its crop marks fit the drawing's room; never above
/// true size.
double scale_factor(const PageSpace &space);

/// Where a page of that size is drawn on the sheet.
Scale scale_on_sheet(const PageSpace &space);

/// The box on the sheet that the drawing and its crop marks take up.
Rect drawing_box(const PageSpace &space, const Scale &scale);

/// Which image of the document shows each picture; none: nothing to show.
using ImageOf = std::vector<std::optional<std::size_t>>;

/// `first` is the index into Evidence::frames of the page's first frame.
void draw_book_page(Canvas &canvas, const Checked &checked, const ImageOf &images, std::size_t page,
                    std::size_t first, const Scale &scale);

} // namespace stoneproof::layout
