// The table of all that was found, most grave first, and of what was mended since the last round.
#pragma once

#include "reports/content/proof_content.h"
#include "reports/layout/canvas.h"

#include <cstddef>
#include <vector>

namespace stoneproof::layout {

/// A row of the table on its sheet, so that links can be set once the pages of the drawings are known.
struct RowPlace {
  std::size_t mark;  ///< index into ProofContent::marks
  std::size_t sheet; ///< index into FindingsTable::sheets
  Rect area;
};

struct FindingsTable {
  std::vector<DocumentPage> sheets; ///< none: nothing was found
  std::vector<RowPlace> rows;
};

FindingsTable lay_out_findings(const content::ProofContent &content, const Typesetter &type);

/// What the last round found and this one does not; none: nothing was mended, or there is no last round.
std::vector<DocumentPage> lay_out_mended(const content::ProofContent &content, const Typesetter &type);

} // namespace stoneproof::layout
