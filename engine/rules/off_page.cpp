// A frame lies wholly off the page, or a text block leaves it. The only way in is off_page_rule; tested by
// tests/rules/off-page.
#include "engine/rules/about.h"
#include "engine/rules/edges.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  for (const PlacedFrame &placed : evidence.frames)
    if (off_page(printed_box(evidence, placed), evidence.space_of(placed)))
      findings.push_back(about_frame(Grade::hold, evidence, placed));
  each_text(evidence, [&](std::size_t page, std::size_t index, const TextBlock &text) {
    if (!passes_trim(text.rect, evidence.spaces[page])) return;
    Finding finding = about_text(Grade::hold, evidence, page, index);
    const Reach reach = reach_past(text.rect, evidence.spaces[page].trim);
    finding.measured = std::max({reach.top, reach.bottom, reach.left, reach.right});
    finding.wanted = Length{};
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule off_page_rule = {
    "off-page",
    Grade::hold,
    "Lies off the page",
    "What lies beyond the trim is cut off. A frame out there was most likely pushed aside and forgotten; a "
    "text there loses words.",
    "Whether any part of the frame lies inside the trim; how far a text block passes the trim.",
    "Move it onto the page, or take it out of the layout.",
    check,
};

} // namespace stoneproof
