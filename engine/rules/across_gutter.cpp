// A frame or a text block runs across the gutter without being meant to. The only way in is
// across_gutter_rule; tested by tests/rules/across-gutter.
#include "engine/rules/about.h"
#include "engine/rules/gutter.h"

namespace stoneproof {

namespace {

/// How far a box runs over the fold of a spread (the shorter part), or past the inner trim edge of a single
/// page; a cover has no such edge.
Length run_over(const Rect &box, const PageSpace &space) {
  if (space.fold) return std::min(*space.fold - box.left(), box.right() - *space.fold);
  return space.bound ? reach_past(box, space.trim).at(*space.bound) : -layout_rounding;
}

/// A picture may run into the inner bleed of a single page; a text may not.
Length bleed_at_binding(const PageSpace &space) {
  return space.bound ? space.bleed_wanted.at(*space.bound) : Length{};
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  for (const PlacedFrame &placed : evidence.frames) {
    const PageSpace &space = evidence.space_of(placed);
    const Rect &box = printed_box(evidence, placed);
    const Length over = run_over(box, space);
    if (over <= bleed_at_binding(space) + layout_rounding || evidence.frame_of(placed).across_gutter)
      continue;
    if (off_page(box, space)) continue;
    findings.push_back(about_frame(Grade::query, evidence, placed));
    findings.back().measured = over;
    findings.back().wanted = Length{};
  }
  each_text(evidence, [&](std::size_t page, std::size_t index, const TextBlock &text) {
    const PageSpace &space = evidence.spaces[page];
    const Length over = run_over(text.rect, space);
    if (over <= layout_rounding || off_page(text.rect, space) || swallowed(text.rect, space)) return;
    findings.push_back(about_text(Grade::query, evidence, page, index));
    findings.back().measured = over;
    findings.back().wanted = Length{};
  });
}

} // namespace

extern const Rule across_gutter_rule = {
    "across-gutter",
    Grade::query,
    "Runs across the gutter",
    "The binding swallows a strip on either side of the fold, and the two halves may not meet. What crosses "
    "it by accident loses a face, a word or a straight line.",
    "How far the frame or text block passes the fold of a spread, or the inner trim edge of a single page. A "
    "frame that is described as meant to cross, or that ends within the inner bleed of a single page, is "
    "left alone. Text that the binding swallows is left to lost-in-gutter.",
    "Move it to one page. A picture frame on a spread may cross if the description says that it is meant to "
    "(across-gutter).",
    check,
};

} // namespace stoneproof
