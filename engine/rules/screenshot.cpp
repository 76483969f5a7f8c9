// A photo looks like a copy of what a screen showed. The only way in is screenshot_rule; tested by
// tests/rules/screenshot.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    if (shown.detail.screenshot.certainty != Certainty::firm) return;
    if (evidence.use_of(*placed.picture) != Use::photo) return;
    findings.push_back(about_frame(Grade::query, evidence, placed));
  });
}

} // namespace

extern const Rule screenshot_rule = {
    "screenshot",
    Grade::query,
    "Looks like a copy of the screen",
    "A screenshot holds no more than the few pixels of the screen, whatever the picture that was on it had.",
    "Where what is shown has most detail, at least 0.6 of the pixels equal their neighbours exactly, eight "
    "levels "
    "hold at least 0.75 of them, and the others step by 48 levels and more at once: windows, letters and "
    "flat "
    "colours that a program drew. Common practice, with bounds of our own. A drawing in flat colours looks "
    "the same.",
    "Ask for the picture’s own file instead of a copy of the screen. If it is a drawing, leave it as it is; "
    "a "
    "description can call it line art.",
    check,
    true,
};

} // namespace stoneproof
