// The mark of a strong correction made in 8 bits. The only way in is combed_tones_rule; tested by
// tests/rules/combed-tones.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

constexpr double combed = 0.05;

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    if (evidence.use_of(*placed.picture) != Use::photo || shown.tone.comb < combed) return;
    findings.push_back(about_share(Grade::note, evidence, placed, shown.tone.comb, combed));
  });
}

} // namespace

extern const Rule combed_tones_rule = {
    "combed-tones",
    Grade::note,
    "Tones were stretched afterwards",
    "A strong correction of a picture in 8 bits leaves steps without any tone between. In smooth skies "
    "and faces they may show as bands, and every further correction makes them wider.",
    "The share of the 256 values, between the 0.5th and the 99.5th percentile of the shown part, that "
    "hardly occur, up to seven in a row, although both neighbours do, in the channel that has the most of "
    "them: 5 % or more. "
    "Photos of 8 bits only. The bound was set on half of a set of photographs and held on the other half,"
    " where no picture as taken reached it. Saving as JPEG or enlarging fills the gaps, so that a "
    "picture without them may still have been corrected.",
    "If bands show in the printed proof, ask for the scan before it was corrected, or for a new scan with"
    " 16 bits a channel. Make no further correction of this file.",
    check,
    true,
};

} // namespace stoneproof
