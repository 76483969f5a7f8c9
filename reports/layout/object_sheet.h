// The sheets at the end of the proof that show the book as an object: what was reckoned, its signatures, its
// creep, and the cover laid flat with its measures.
#pragma once

#include "engine/rules/evidence.h"
#include "reports/content/object_words.h"
#include "reports/layout/canvas.h"

#include <vector>

namespace stoneproof::layout {

/// At least one sheet.
std::vector<DocumentPage> lay_out_object(const content::ObjectWords &words, const Evidence &evidence,
                                         const Typesetter &type);

} // namespace stoneproof::layout
