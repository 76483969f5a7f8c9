// How the pages of a book are gathered for folding, and which blanks that needs. Pages are counted from 1 in
// the order of the block.
#pragma once

#include "engine/book/book.h"

#include <cstddef>
#include <vector>

namespace stoneproof {

/// A folded sheet, or the smaller one at the end.
struct Signature {
  std::size_t first = 1, pages = 0; ///< of the block
  std::size_t blanks = 0;           ///< of its last pages

  std::size_t last() const { return first + pages - 1; }
};

struct SignaturePlan {
  std::size_t pages = 0;  ///< as they are printed, blanks not counted
  std::size_t blanks = 0; ///< all at the end
  std::vector<Signature> signatures;

  std::size_t total() const { return pages + blanks; }
};

/// Blanks that fill `pages` up to a multiple: fewer than `multiple`. `multiple` is at least 1.
std::size_t blanks_to_multiple(std::size_t pages, std::size_t multiple);

/// Whole signatures of `signature` pages, then, for what is left, the fewest pages that are a multiple of
/// `multiple` and of 2: they fold as one smaller sheet, or several. Fewest blanks: less than the larger of
/// `multiple` and 2. `signature` and `multiple` are at least 1; the last page of a block is even, since a
/// leaf has two. Sizes of signatures: GPO Style Manual (2008) 1.15: 8, 12, 16, 24 or 32 pages, and no more
/// than two blanks at the end; New Hart's Rules 1.8: 4, 8, 16, 32 or 64.
SignaturePlan signature_plan(std::size_t pages, std::size_t signature, std::size_t multiple);

/// Blanks at the end beyond which the GPO Style Manual (1.15) advises against a plan.
inline constexpr std::size_t most_blanks = 2;

/// Whether so many pages fold as one sheet of the sizes that those manuals name: 4, 8, 12, 16, 24 or 32.
bool is_usual_signature(std::size_t pages);

/// Pages at the end of the block that are described as blank.
std::size_t blanks_described_at_end(const Book &book);

} // namespace stoneproof
