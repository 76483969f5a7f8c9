// Something other than a picture reaches the trim, and ends there, or the sheet does. The only way in is
// no_room_for_bleed_rule; tested by tests/rules/no-room-for-bleed.
#include "engine/rules/about.h"
#include "engine/rules/edges.h"
#include "engine/rules/print_page.h"

#include <algorithm>

namespace stoneproof {

namespace {

/// Paint that ends as near to the trim as this ends at it: half a millimetre, less than a knife keeps (our
/// own choice).
constexpr Length at_the_trim = Length::of_ticks(Length::ticks_per_mm / 2);

/// Adds a side; the figures are those of the side that has least.
void add(Finding &finding, PageSide side, Length measured, Length wanted) {
  finding.sides.push_back(side);
  const auto *least = std::get_if<Length>(&finding.measured);
  if (least && *least <= measured) return;
  finding.measured = std::max(measured, Length{});
  finding.wanted = wanted;
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_print_page(evidence, [&](std::size_t page, const PrintPage &print) {
    if (!print.painted) return;
    const PageSpace &space = evidence.spaces[page];
    const Reach painted = reach_past(*print.painted, space.trim);
    Finding sheet_ends = about_print_page(Grade::hold, evidence, page), paint_ends = sheet_ends;
    for (const PageSide side : page_sides) {
      const Length wanted = space.bleed_wanted.at(side), reach = painted.at(side);
      if (wanted <= Length{} || reach >= wanted - layout_rounding) continue;
      if (sheet_lacks_bleed(space, print, side)) {
        if (reach >= -layout_rounding)
          add(sheet_ends, side, reach_past(print.boxes.media, space.trim).at(side), wanted);
      } else if (reach >= -at_the_trim && reach <= at_the_trim) {
        add(paint_ends, side, reach, wanted);
      }
    }
    for (Finding *finding : {&sheet_ends, &paint_ends})
      if (!finding->sides.empty()) findings.push_back(std::move(*finding));
  });
}

} // namespace

extern const Rule no_room_for_bleed_rule = {
    "no-room-for-bleed",
    Grade::hold,
    "Paint ends where bleed should be",
    "A colour or a line that runs to the edge must be printed beyond it, since no knife cuts twice in the "
    "same place: where it ends at the trim, a white thread shows along the edge of some copies. Where the "
    "sheet of the PDF ends at the trim, nothing can be printed beyond it.",
    "At each side that something painted, other than pictures, reaches: how far the MediaBox goes on beyond "
    "the trim, and where that is far enough whether the paint ends within 0.5 mm of the trim (our own "
    "choice), against the larger of the book’s and the press sheet’s bleed. White paint and what lies wholly "
    "outside the trim do not count. One box round all that is painted on a page is looked at: where one "
    "thing passes the edge, another that ends there is not seen, and a point that touches the edge counts as "
    "much as a side that runs along it.",
    "Pull what reaches the edge out to the bleed edge, and export the PDF with its bleed.",
    check,
    false,
    true,
};

} // namespace stoneproof
