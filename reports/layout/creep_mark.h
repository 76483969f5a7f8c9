// How the creep of a stapled book moves a page, drawn over its head.
#pragma once

#include "engine/rules/evidence.h"
#include "reports/layout/drawing.h"

#include <cstddef>

namespace stoneproof::layout {

/// For each of the surface's pages that moves: an arrow in the direction in which its content moves, with how
/// far, and the line along which the knife then falls. `block_page` is the surface's first page, counted from
/// 1 in the order of the block. Nothing where nothing moves.
void draw_creep(Canvas &canvas, const Evidence &evidence, std::size_t page, std::size_t block_page,
                const Scale &scale);

} // namespace stoneproof::layout
