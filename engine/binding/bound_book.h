// The book as an object: everything that follows from its pages, paper and binding, with what it was computed
// from.
#pragma once

#include "engine/binding/cover_sheet.h"
#include "engine/binding/creep.h"
#include "engine/binding/signatures.h"

#include <optional>

namespace stoneproof {

struct BoundBook {
  std::size_t signature = 1, multiple = 1; ///< pages, as the plan was made with
  SignaturePlan plan;
  std::optional<Spine> spine;      ///< none: saddle stitched, or no paper is told
  std::optional<CoverSheet> cover; ///< none: nothing tells the spine
  std::optional<Length> leaf;      ///< of the block's paper; none: not told

  /// How far the content of a page comes nearer to the front edge, or, where the printer moves it against
  /// that, nearer to the binding. Zero but in a stapled book whose paper is told. `page` as in creep.h.
  Length creep(std::size_t page) const;
  bool creeps = false; ///< stapled, and the paper is told
};

/// A stapled book folds by four whatever the press sheet says; its plan is one signature of all its sheets.
/// Of others the plan lists signatures only where the description tells how many pages one has.
BoundBook bind(const Book &book, const PressSheet &press);

} // namespace stoneproof
