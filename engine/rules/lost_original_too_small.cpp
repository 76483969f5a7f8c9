// Too few pixels, and the original is lost, so that no rescan can help. The only way in is
// lost_original_too_small_rule; tested by tests/rules/lost-original-too-small.
#include "engine/rules/about.h"
#include "engine/rules/shortfall.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_laid_frame(evidence, [&](const PlacedFrame &placed) {
    const auto grade =
        shortfall(evidence, placed, placed.laid->effective() * gain_of_master(evidence, placed));
    if (!grade || !original_lost(evidence, placed)) return;
    findings.push_back(about_shortfall(*grade, evidence, placed));
    findings.back().rescue.rescan.reset();
  });
}

} // namespace

extern const Rule lost_original_too_small_rule = {
    "lost-original-too-small",
    Grade::hold,
    "Too few pixels, and the original is lost",
    "The file at hand is all there is. Printed too large it looks soft or stepped; printed at the size that "
    "it is good for it looks right.",
    "As for too-few-pixels: picture pixels / printed inches, the smaller axis. The description says that the "
    "original is lost.",
    "Print the picture no larger than the size given, or show more of it. Ask once more whether somebody has "
    "a larger file or another print.",
    check,
};

} // namespace stoneproof
