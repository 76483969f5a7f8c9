// Dark parts of a photo that hold no tone any more. The only way in is clipped_shadows_rule; tested by
// tests/rules/clipped-shadows.
#include "engine/rules/about.h"
#include "engine/rules/tones.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    if (evidence.use_of(*placed.picture) != Use::photo || is_nearly_blank(shown.tone)) return;
    if (shown.tone.black <= evidence.press.tone.clipped) return;
    findings.push_back(
        about_share(Grade::query, evidence, placed, shown.tone.black, evidence.press.tone.clipped));
  });
}

} // namespace

extern const Rule clipped_shadows_rule = {
    "clipped-shadows",
    Grade::query,
    "Dark parts are one black",
    "Where every colour stands at its darkest all detail is gone: hair, a dark coat or a room behind "
    "people prints as one black patch.",
    "The share of the shown part whose samples lie below 5 of 255, in the channel that has the fewest of "
    "them; deeper samples by the same part of their range. 5 is the lower bound that FADGI, Technical "
    "Guidelines for Digitizing Cultural Heritage Materials (2016), gives for 8-bit negatives. Photos "
    "only. The share that is allowed is the press sheet’s (our own caution: 5 %).",
    "Scan the original again with automatic correction off, or lighter, so that the darkest part stays "
    "above 5. If it is one black on the original too, nothing is lost: say so and leave it.",
    check,
    true,
};

} // namespace stoneproof
