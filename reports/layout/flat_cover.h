// The flat sheet of a cover, drawn to scale with its measures.
#pragma once

#include "engine/rules/evidence.h"
#include "reports/layout/canvas.h"

namespace stoneproof::layout {

/// Draws the reckoned cover as large as it fits into `room` together with its measures.
void draw_flat_cover(Canvas &canvas, const Evidence &evidence, const CoverSheet &cover, const Rect &room);

} // namespace stoneproof::layout
