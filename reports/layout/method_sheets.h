// The last sheets of the proof: the press sheet that was used, and how the book was checked.
#pragma once

#include "reports/content/proof_content.h"
#include "reports/layout/canvas.h"

#include <vector>

namespace stoneproof::layout {

/// What the printer asks, on one sheet.
std::vector<DocumentPage> lay_out_press(const content::ProofContent &content, const Typesetter &type);

/// The method, its limits, and the rules that found something. At least one sheet.
std::vector<DocumentPage> lay_out_method(const content::MethodWords &method, const Typesetter &type);

} // namespace stoneproof::layout
