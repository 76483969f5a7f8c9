// A frame reaches the trim and it, or its picture, stops short of the bleed edge. The only way in is
// short_bleed_rule; tested by tests/rules/short-bleed.
#include "engine/rules/about.h"
#include "engine/rules/edges.h"

namespace stoneproof {

namespace {

/// How far the print of a frame passes the trim at a side: the frame's edge, or the picture's where that ends
/// sooner.
Length printed_reach(const PlacedFrame &placed, const PageSpace &space, PageSide side) {
  const Length frame = reach_past(placed.box, space.trim).at(side);
  if (!placed.picture_box) return frame;
  return std::min(frame, reach_past(*placed.picture_box, space.trim).at(side));
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  for (const PlacedFrame &placed : evidence.frames) {
    const PageSpace &space = evidence.space_of(placed);
    if (off_page(placed.box, space)) continue;
    Finding finding = about_frame(Grade::hold, evidence, placed);
    Length worst_gap;
    for (const PageSide side : page_sides) {
      const Length wanted = space.bleed_wanted.at(side);
      if (reach_past(placed.box, space.trim).at(side) < -rounding) continue;
      const Length reach = printed_reach(placed, space, side);
      if (reach >= wanted - rounding) continue;
      finding.sides.push_back(side);
      if (wanted - reach <= worst_gap) continue;
      worst_gap = wanted - reach;
      finding.measured = reach;
      finding.wanted = wanted;
    }
    if (!finding.sides.empty()) findings.push_back(std::move(finding));
  }
}

} // namespace

extern const Rule short_bleed_rule = {
    "short-bleed",
    Grade::hold,
    "Bleed is too short",
    "The knife never cuts twice in the same place. Where the print stops at the trim, a white thread shows "
    "along the edge of some copies.",
    "How far the frame, and the picture in it, pass the trim at each side that the frame reaches, against "
    "the larger of the book's and the press sheet's bleed (common practice: 3 mm or 1/8 in). A turned frame "
    "is measured by the upright box round it.",
    "Pull the frame, and the picture in it, out to the bleed edge.",
    check,
};

} // namespace stoneproof
