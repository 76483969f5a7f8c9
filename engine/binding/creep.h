// Creep: in a stapled book every sheet lies round the thickness of those inside it, so that inner pages stand
// out at the front, where the knife cuts them shorter.
#pragma once

#include "engine/units/length.h"

#include <cstddef>
#include <optional>

namespace stoneproof {

/// Sheets of a stapled block of so many pages; a sheet holds four.
std::size_t sheets_of(std::size_t pages);

/// Which sheet page `page` (from 1, in the order of the block) lies on, 0 being the outermost, in a block of
/// `pages`, which is a multiple of four and no less than `page`.
std::size_t sheet_of(std::size_t page, std::size_t pages);

/// How far a page's content comes nearer to the front edge: sheet x thickness of a leaf, none on the
/// outermost. Common practice; some printers reckon one sheet more.
Length creep_of(std::size_t page, std::size_t pages, Length leaf);

} // namespace stoneproof
