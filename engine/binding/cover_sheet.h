// The full sheet that covers a book, laid flat.
#pragma once

#include "engine/binding/spine.h"

#include <optional>

namespace stoneproof {

/// Measures of a cover, from what it is made of.
struct CoverSheet {
  Banded spine;
  Length panel; ///< width of front or back as it is seen: the trim, or a board with its hinge
  Length board; ///< case: width of a board; else zero
  Size visible; ///< the flat cover as it is seen: two panels, the spine, flaps
  Edges past;   ///< what is printed beyond that on every side: bleed, or the turn-in of a case
  Size sheet;   ///< with that
};

/// Width of a case: 2 turn-in + 2 boards + 2 hinges + spine; height: 2 turn-in + trim height + 2 squares.
Size case_sheet(Length board, Length hinge, Length spine, Length trim_height, Length square, Length turn_in);

/// A board reaches from its hinge to the square beyond the block's front edge. The hinge is measured on the
/// flat cover; when the case closes, the turn round the edge of the spine piece takes as much of it as a
/// board is thick: board = trim width + square - (hinge - board thickness). Our own geometry; a binder's own
/// figure (Binding::board_width) goes before it.
Length board_width(const Book &book);

/// Whether the cover goes round the back in one piece: not of a spiral, whose wire parts front and back, nor
/// of a stapled book, which has only a fold there.
bool has_back(BindingKind kind);

/// None where the back is wanted and not known. A cover without a back has a spine of nothing. `bleed` is the
/// larger of the book's and the press sheet's.
std::optional<CoverSheet> cover_sheet(const Book &book, const std::optional<Spine> &spine,
                                      const Edges &bleed);

} // namespace stoneproof
