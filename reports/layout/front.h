// The front of the proof: the verdict, the counts, and the table of what must be done.
#pragma once

#include "reports/content/proof_content.h"
#include "reports/layout/canvas.h"

#include <cstddef>
#include <vector>

namespace stoneproof::layout {

/// A row of the table on its sheet, so that links can be set once the pages of the drawings are known.
struct RowPlace {
  std::size_t mark;  ///< index into ProofContent::marks
  std::size_t sheet; ///< index into Front::sheets
  Rect area;
};

struct Front {
  std::vector<DocumentPage> sheets;
  std::vector<RowPlace> rows;
};

/// As many sheets as the table needs, at least one.
Front lay_out_front(const content::ProofContent &content, const Typesetter &type);

} // namespace stoneproof::layout
