// How thick the block is, and how wide the back of the book becomes.
#pragma once

#include "engine/binding/leaf_thickness.h"
#include "engine/press/press_sheet.h"

#include <cstddef>
#include <optional>

namespace stoneproof {

/// A length that may come out larger or smaller by `tolerance`.
struct Banded {
  Length length, tolerance;
  Length least() const { return length - tolerance; }
  Length most() const { return length + tolerance; }
};

/// What a spine was computed from, so that every figure can be shown.
struct Spine {
  std::size_t pages = 0; ///< of the block, blanks for folding included
  LeafThickness leaf;    ///< of the block's paper
  Banded block;          ///< leaves x leaf; tolerance: leaves x that of one leaf
  Length cover_leaf;     ///< perfect: thickness of the cover's paper, twice in the width; zero: not told
  Length endpapers;      ///< case: four leaves of endpaper, two at either end
  Length boards, lining; ///< case: two boards, and what linings add
  Banded width;          ///< of the spine, from fold to fold
};

/// Of a block of so many pages. A leaf is two pages. Formula, after the textbooks (spine = pages / 2 x
/// thickness of a leaf), by binding:
///   saddle             no spine: none
///   spiral, layflat    the block; of a spiral no more than what its wire must hold
///   perfect            the block and the cover's paper on either side
///   case               the block, its endpapers, the lining, and a board on either side: the spine piece is
///                      as wide as the closed book is thick (common practice: block and one or two boards)
/// None where the paper of the block is not told.
std::optional<Spine> spine_of(const Book &book, std::size_t pages, const SpineBar &bar);

} // namespace stoneproof
