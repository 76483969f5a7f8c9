// All pages of the book at a glance: each small, with its state in words and in the line under it.
#pragma once

#include "reports/content/proof_content.h"
#include "reports/layout/frame_drawing.h"

#include <cstddef>
#include <vector>

namespace stoneproof::layout {

/// Where a page stands in the index.
struct IndexPlace {
  std::size_t surface; ///< index into ProofContent::surfaces
  std::size_t sheet;   ///< index into PageIndex::sheets
  Rect area;
};

struct PageIndex {
  std::vector<DocumentPage> sheets;
  std::vector<IndexPlace> places; ///< one for each surface
};

/// Facing pages stand side by side, as in the open book.
PageIndex lay_out_index(const content::ProofContent &content, const Checked &checked, const ImageOf &images,
                        const Typesetter &type);

} // namespace stoneproof::layout
