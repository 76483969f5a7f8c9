// The cover was laid out larger or smaller than the book needs. The only way in is cover_size_off_rule;
// tested by tests/rules/cover-size-off.
#include "engine/rules/laid_cover.h"

namespace stoneproof {

namespace {

/// The cover as it should be; where no paper is told, with the spine that was laid out.
CoverSheet wanted_cover(const Evidence &evidence) {
  if (evidence.bound.cover) return *evidence.bound.cover;
  Spine as_laid;
  as_laid.width.length = evidence.book.cover->spine;
  return *cover_sheet(evidence.book, as_laid, larger(evidence.book.bleed, evidence.press.bleed));
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  if (!evidence.book.cover) return;
  const Cover &laid = *evidence.book.cover;
  const CoverSheet wanted = wanted_cover(evidence);
  const Length cut = std::max(evidence.press.cut_tolerance, layout_rounding);
  const Length width = apart(laid.size.width, wanted.visible.width);
  const Length height = apart(laid.size.height, wanted.visible.height);
  // What the spine alone accounts for is told by spine-off.
  const Length panels = apart(laid.size.width - laid.spine, wanted.visible.width - wanted.spine.length);
  const bool spiral = evidence.book.binding.kind == BindingKind::spiral;
  const bool wide = width > wanted.spine.tolerance + cut && (spiral || panels > cut);
  if (!wide && height <= cut) return;
  Finding finding = about_cover(Grade::hold, evidence);
  finding.measured = wide && width >= height ? laid.size.width : laid.size.height;
  finding.wanted = wide && width >= height ? wanted.visible.width : wanted.visible.height;
  findings.push_back(std::move(finding));
}

} // namespace

extern const Rule cover_size_off_rule = {
    "cover-size-off",
    Grade::hold,
    "Cover does not fit the book",
    "A cover that is too small leaves the block bare at an edge. One that is too large moves the front and "
    "the back, and what was in the middle of them is not.",
    "The size of the flat cover as it is seen, without bleed or turn-in, against the reckoned one. A paper "
    "cover: 2 × trim width + spine + 2 × flap, and the trim height. A case: 2 × (board + hinge) + spine, and "
    "trim height + 2 × square; a board that is not told is trim width + square − (hinge − thickness of "
    "a board), our own geometry. The width may differ by the spine’s tolerance and the press sheet’s cut "
    "tolerance, the height by the cut tolerance (common practice: about 1 mm). A difference that the spine "
    "alone accounts for is left to spine-off.",
    "Lay the cover out anew in the reckoned size, or write the binder’s own measures into the description.",
    check,
};

} // namespace stoneproof
