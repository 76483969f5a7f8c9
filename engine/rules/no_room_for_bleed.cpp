// Something other than a picture reaches the trim, and the sheet ends there. The only way in is
// no_room_for_bleed_rule; tested by tests/rules/no-room-for-bleed.
#include "engine/rules/about.h"
#include "engine/rules/edges.h"
#include "engine/rules/print_page.h"

#include <algorithm>

namespace stoneproof {

namespace {

/// How far the sheet goes on beyond the trim at a side, and how far what is painted reaches there.
struct Reach {
  Length sheet, painted;
};

Reach reach_of(PageSide side, const Rect &trim, const Rect &sheet, const Rect &painted) {
  switch (side) {
  case PageSide::top: return {trim.top() - sheet.top(), trim.top() - painted.top()};
  case PageSide::bottom: return {sheet.bottom() - trim.bottom(), painted.bottom() - trim.bottom()};
  case PageSide::left: return {trim.left() - sheet.left(), trim.left() - painted.left()};
  default: return {sheet.right() - trim.right(), painted.right() - trim.right()};
  }
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_print_page(evidence, [&](std::size_t page, const PrintPage &print) {
    if (!print.painted) return;
    const PageSpace &space = evidence.spaces[page];
    Finding finding = about_print_page(Grade::hold, evidence, page);
    std::optional<Length> least;
    for (const PageSide side : page_sides) {
      const Reach reach = reach_of(side, space.trim, print.boxes.media, *print.painted);
      const Length wanted = space.bleed_wanted.at(side);
      if (reach.painted < -layout_rounding || reach.painted >= wanted - layout_rounding) continue;
      if (reach.sheet >= wanted - layout_rounding || wanted <= Length{}) continue;
      finding.sides.push_back(side);
      if (least && *least <= reach.sheet) continue;
      least = reach.sheet;
      finding.measured = std::max(reach.sheet, Length{});
      finding.wanted = wanted;
    }
    if (!finding.sides.empty()) findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule no_room_for_bleed_rule = {
    "no-room-for-bleed",
    Grade::hold,
    "Sheet ends where bleed should be",
    "A colour or a line that runs to the edge must be printed beyond it, since no knife cuts twice in the "
    "same place. Where the sheet of the PDF ends at the trim, nothing can be.",
    "At each side that something painted, other than pictures, reaches: how far the MediaBox goes on beyond "
    "the trim, against the larger of the book’s and the press sheet’s bleed. Paint in white does not count.",
    "Export the PDF with bleed, and pull what reaches the edge out to the bleed edge.",
    check,
    false,
    true,
};

} // namespace stoneproof
