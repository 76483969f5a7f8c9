// A text cannot fit its block even by a lean estimate. The only way in is overfull_text_rule; tested by
// tests/rules/overfull-text, the estimate in tests/engine/rules/lean_type.test.cpp.
#include "engine/rules/about.h"
#include "engine/rules/edges.h"
#include "engine/rules/lean_type.h"

namespace stoneproof {

namespace {

struct Need {
  Length need, room; ///< across the lines

  bool fits() const { return need <= room + layout_rounding; }
};

/// The larger room of the two ways that a text may run: a block that is higher than wide may hold lines that
/// run up or down it, as spines, credits beside pictures and vertical scripts do.
Need need_of(const TextBlock &text) {
  const auto &rect = text.rect;
  const Need level = {lean_height(text, rect.width), rect.height};
  if (rect.height <= rect.width || level.fits()) return level;
  const Need upright = {lean_height(text, rect.height), rect.width};
  return upright.fits() || text.kind == TextKind::spine ? upright : level;
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_text(evidence, [&](std::size_t page, std::size_t index, const TextBlock &text) {
    // A finished PDF has no blocks to overflow: what it shows is what fits.
    if (evidence.book.print_file || text.text.empty() || text.type_size <= Length{}) return;
    const Need need = need_of(text);
    if (need.fits()) return;
    findings.push_back(about_text(Grade::query, evidence, page, index));
    findings.back().measured = need.need;
    findings.back().wanted = need.room;
  });
}

} // namespace

extern const Rule overfull_text_rule = {
    "overfull-text",
    Grade::query,
    "Text can hardly fit its block",
    "What does not fit is left out of the page without a word, most often the last line.",
    "An estimate, since the typeface is not known: characters as narrow as in the narrowest of 20 faces "
    "that were measured, Open Sans Condensed Light Italic, in parts of the type size: space 0.17, thin "
    "letters 0.2, letters 0.36, wide letters 0.53, on the mean 0.295 (ordinary book faces: 0.41 to 0.44); "
    "Chinese, Japanese and Korean characters 0.9. Lines are filled to the last letter and stand 0.9 of "
    "the type size apart, the first one is 0.6 high. Even so the text needs more height than the block "
    "has. A block that is higher than wide may hold lines that run up or down.",
    "Look at the end of the text in the layout program. Make the block larger, the type smaller or the "
    "text shorter.",
    check,
};

} // namespace stoneproof
