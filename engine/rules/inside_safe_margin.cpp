// A frame or a text block enters the safe margin. The only way in is inside_safe_margin_rule; tested by
// tests/rules/inside-safe-margin.
#include "engine/rules/about.h"
#include "engine/rules/edges.h"

namespace stoneproof {

namespace {

/// The sides where a box comes nearer to the trim than the safe margin, and not nearer than `from`.
/// Leaves the finding without sides where there are none.
void measure_margin(Finding &finding, const Rect &box, const PageSpace &space, Length from) {
  const Reach reach = reach_past(box, space.trim);
  Length worst_gap;
  for (const PageSide side : page_sides) {
    const Length distance = -reach.at(side), wanted = space.margin_wanted.at(side);
    if (distance < from || distance >= wanted - rounding) continue;
    finding.sides.push_back(side);
    if (wanted - distance <= worst_gap) continue;
    worst_gap = wanted - distance;
    finding.measured = distance;
    finding.wanted = wanted;
  }
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const Length cut = evidence.press.cut_tolerance;
  for (const PlacedFrame &placed : evidence.frames) {
    Finding finding = about_frame(Grade::query, evidence, placed);
    measure_margin(finding, placed.box, evidence.space_of(placed), cut + Length::of_ticks(1));
    if (!finding.sides.empty()) findings.push_back(std::move(finding));
  }
  each_text(evidence, [&](std::size_t page, std::size_t index, const TextBlock &text) {
    const PageSpace &space = evidence.spaces[page];
    if (passes_trim(text.rect, space)) return;
    Finding finding = about_text(Grade::query, evidence, page, index);
    measure_margin(finding, text.rect, space, {});
    if (finding.sides.empty()) return;
    if (std::get<Length>(finding.measured) <= cut) finding.grade = Grade::hold;
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule inside_safe_margin_rule = {
    "inside-safe-margin",
    Grade::hold,
    "Enters the safe margin",
    "The cut and the fold wander. What stands too near to the edge looks crooked when the page is cut, and a "
    "word may be cut off.",
    "Distance from the frame or the text block to the trim, against the larger of the book's and the press "
    "sheet's safe margin (common practice: 3 to 6 mm). Text within the cut tolerance of the trim is a hold; "
    "all else is a query. A frame that reaches the trim, or nearly, is left to short-bleed and near-trim.",
    "Move it in behind the safe margin, or, if it is a picture that may be cut, pull it out to the bleed "
    "edge.",
    check,
};

} // namespace stoneproof
