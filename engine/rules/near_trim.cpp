// A frame ends so near to the trim that the cut may go either way. The only way in is near_trim_rule; tested
// by tests/rules/near-trim.
#include "engine/rules/about.h"
#include "engine/rules/edges.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  for (const PlacedFrame &placed : evidence.frames) {
    const PageSpace &space = evidence.space_of(placed);
    const Rect &box = printed_box(evidence, placed);
    if (off_page(box, space)) continue;
    Finding finding = about_frame(Grade::query, evidence, placed);
    const Reach reach = reach_past(box, space.trim);
    for (const PageSide side : page_sides) {
      const Length distance = -reach.at(side);
      if (side == space.bound || distance <= layout_rounding || distance > evidence.press.cut_tolerance)
        continue;
      if (finding.sides.empty() || distance < std::get<Length>(finding.measured)) finding.measured = distance;
      finding.sides.push_back(side);
    }
    if (finding.sides.empty()) continue;
    finding.wanted = evidence.press.cut_tolerance;
    findings.push_back(std::move(finding));
  }
}

} // namespace

extern const Rule near_trim_rule = {
    "near-trim",
    Grade::query,
    "Frame ends a hair’s breadth from the trim",
    "The cut may wander by the cut tolerance: some copies show a thin white strip, others none, and both "
    "look like a mistake.",
    "Distance from the frame to the trim, against the press sheet’s cut tolerance (common practice: about 1 "
    "mm). The side at the binding is left out: it is not cut there.",
    "Pull the frame out to the bleed edge, or move it in to the safe margin.",
    check,
};

} // namespace stoneproof
