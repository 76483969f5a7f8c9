// Light parts of a photo that hold no tone any more. The only way in is clipped_highlights_rule; tested by
// tests/rules/clipped-highlights.
#include "engine/rules/about.h"
#include "engine/rules/tones.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    if (evidence.use_of(*placed.picture) != Use::photo || is_nearly_blank(shown.tone)) return;
    if (shown.tone.white <= evidence.press.tone.clipped) return;
    findings.push_back(
        about_share(Grade::query, evidence, placed, shown.tone.white, evidence.press.tone.clipped));
  });
}

} // namespace

extern const Rule clipped_highlights_rule = {
    "clipped-highlights",
    Grade::query,
    "Light parts are burnt out",
    "Where every colour stands at its brightest no ink is laid: a white dress or a sky prints as a hole "
    "in the paper, with a hard edge round it.",
    "The share of the shown part whose samples lie above 250 of 255, in the channel that has the fewest "
    "of them; deeper samples by the same part of their range. 250 is the upper bound that FADGI, "
    "Technical Guidelines for Digitizing Cultural Heritage Materials (2016), gives for 8-bit negatives. "
    "Photos only. The share that is allowed is the press sheet’s (our own caution: 5 %).",
    "Scan the original again with automatic correction off, or darker, so that the lightest part stays "
    "below 250. If it is bare paper on the original too, nothing is lost: say so and leave it.",
    check,
    true,
};

} // namespace stoneproof
