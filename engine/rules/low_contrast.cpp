// A photo whose tones use little of the range. The only way in is low_contrast_rule; tested by
// tests/rules/low-contrast.
#include "engine/rules/about.h"
#include "engine/rules/tones.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    if (evidence.use_of(*placed.picture) != Use::photo || is_nearly_blank(shown.tone)) return;
    if (shown.tone.range >= evidence.press.tone.range) return;
    findings.push_back(
        about_share(Grade::query, evidence, placed, shown.tone.range, evidence.press.tone.range));
  });
}

} // namespace

extern const Rule low_contrast_rule = {
    "low-contrast",
    Grade::query,
    "Picture is flat",
    "A picture without dark and without light looks like fog in print, since paper shows less contrast "
    "than a screen. When it is stretched afterwards, its few steps show as bands in skies and faces.",
    "From the 0.5th to the 99.5th percentile of all samples of the shown part, as a share of the whole "
    "range. Photos only. The share that is wanted is the press sheet’s (our own caution: 40 %).",
    "Scan the original again with 16 bits a channel, and set black and white to its darkest and lightest "
    "part. If the original is faded, that is where the scanner’s software helps most.",
    check,
    true,
};

} // namespace stoneproof
