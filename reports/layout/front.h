// The first sheet of the proof: the verdict, the few things that matter, what follows, and room to sign.
#pragma once

#include "reports/content/proof_content.h"
#include "reports/layout/canvas.h"

#include <cstddef>
#include <map>
#include <string>
#include <vector>

namespace stoneproof::layout {

/// A part of the proof, by its first sheet.
struct Section {
  std::string title;
  std::size_t sheet; ///< index into Document::pages
};

/// The sheet that explains each mark, by index into ProofContent::marks.
using SheetOfMark = std::map<std::size_t, std::size_t>;

/// Always one sheet: what is too long for it is cut short.
DocumentPage lay_out_front(const content::ProofContent &content, const std::vector<Section> &sections,
                           const SheetOfMark &sheet_of, const Typesetter &type);

} // namespace stoneproof::layout
