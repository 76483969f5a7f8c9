// A picture goes over two facing pages, and its halves do not continue each other. The only way in is
// halves_apart_rule; tested by tests/rules/halves-apart.
#include "engine/rules/about.h"
#include "engine/rules/facing_halves.h"

namespace stoneproof {

namespace {

Length absolute(Length length) { return length < Length{} ? -length : length; }

/// How far the right half lies from a place where the two continue: anywhere from side by side to apart by
/// what the binding swallows of both.
Length gap(Length away, Length swallowed) {
  if (away < Length{}) return away;
  return away > swallowed ? away - swallowed : Length{};
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const Length tolerance = std::max(evidence.press.fold_tolerance, layout_rounding);
  for (const FacingHalves &halves : facing_halves(evidence)) {
    const PlacedFrame &left = evidence.frames[halves.left], &right = evidence.frames[halves.right];
    const HalvesMeet meet = how_they_meet(evidence, halves);
    const Length apart = gap(meet.away, evidence.book.binding.gutter_loss * 2);
    Finding finding = about_frame(Grade::query, evidence, right);
    finding.wanted = tolerance;
    if (meet.scale > evidence.press.stretch_tolerance) {
      finding.measured = Share{meet.scale};
      finding.wanted = Share{evidence.press.stretch_tolerance};
    } else if (absolute(meet.lower) > tolerance && absolute(meet.lower) >= absolute(apart)) {
      finding.measured = absolute(meet.lower);
      finding.sides = {meet.lower > Length{} ? PageSide::bottom : PageSide::top};
    } else if (absolute(apart) > tolerance) {
      finding.measured = absolute(apart);
      finding.sides = {apart > Length{} ? PageSide::right : PageSide::left};
    } else {
      continue;
    }
    finding.same_picture = {{left.page, left.frame}, {right.page, right.frame}};
    findings.push_back(std::move(finding));
  }
}

} // namespace

extern const Rule halves_apart_rule = {
    "halves-apart",
    Grade::query,
    "Halves of a picture do not meet",
    "A picture over two pages is seen as one. A step at the fold, or a strip that is shown twice or "
    "nowhere, breaks every line that crosses it.",
    "Frames on facing single pages that show the same picture and both reach the inner edge. The halves are "
    "to have the same scale within the press sheet’s stretch tolerance, and the same height within its fold "
    "tolerance (common practice: about 1 mm). Along the page the right half is to begin where the left one "
    "ends, or up to 2 × gutter loss before that, so that what the binding swallows is shown on both pages, "
    "each within the fold tolerance.",
    "Give both frames the same height and scale, and let the crop of the right one begin where that of the "
    "left one ends. Safer still: describe the two pages as one spread with one frame.",
    check,
};

} // namespace stoneproof
