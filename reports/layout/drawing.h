// One page or spread of the book, drawn at a readable scale: its pictures, texts, edges and crop marks.
#pragma once

#include "reports/layout/frame_drawing.h"
#include "reports/layout/leaders.h"

namespace stoneproof::layout {

/// How large a page is drawn so that it, its bleed and its crop marks fit the drawing's room; never above
/// true size.
double scale_factor(const PageSpace &space);

/// Where a page of that size is drawn on the sheet.
Scale scale_on_sheet(const PageSpace &space);

/// The box on the sheet that the drawing and its crop marks take up.
Rect drawing_box(const PageSpace &space, const Scale &scale);

/// `first` is the index into Evidence::frames of the page's first frame. `own_page`: the page of the finished
/// PDF itself lies over its pictures, in place of its texts.
void draw_book_page(Canvas &canvas, const Checked &checked, const ImageOf &images, std::size_t page,
                    std::size_t first, const Scale &scale, bool own_page = false);

/// Where the drawing of that page has pictures and texts.
LeaderRoom leader_room(const Evidence &evidence, std::size_t page, std::size_t first, const Scale &scale);

} // namespace stoneproof::layout
