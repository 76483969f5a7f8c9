// A picture was scanned from something printed, and its dots show. The only way in is printed_screen_rule;
// tested by tests/rules/printed-screen.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    const PrintedScreen &found = shown.detail.printed;
    if (found.certainty != Certainty::firm || evidence.use_of(*placed.picture) == Use::line_art) return;
    Finding finding = about_frame(Grade::query, evidence, placed);
    if (found.ruling_sure) finding.measured = Ruling{found.ruling * placed.laid->effective().ppi()};
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule printed_screen_rule = {
    "printed-screen",
    Grade::query,
    "Was scanned from print",
    "A printed picture is a lattice of dots. Printed again, they meet the dots of the new press, and the two "
    "make a pattern of patches or waves (moiré) that no screen shows beforehand.",
    "The spectrum of the most detailed parts of what is shown has two lines of one frequency at right angles "
    "to each other, in the same place in every part: a lattice of dots. The ruling is their frequency times "
    "the effective density. Said only when it is proof; cloth, fences and tiles do not stay in place. Not "
    "found "
    "where the dots were already blurred away, and for a screen along the rows. No ruling is named above "
    "0.45 of the pixels an inch, as a finer screen may look so.",
    "Scan it again at 600 ppi or more with the scan program’s descreening on, which takes the dots out "
    "before "
    "the picture is made smaller. A photographic print of the same picture has no dots: ask for one. Let the "
    "printer decide in case of doubt.",
    check,
    true,
};

} // namespace stoneproof
