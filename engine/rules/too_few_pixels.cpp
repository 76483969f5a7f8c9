// The printed size asks for more pixels than the frame shows. The only way in is too_few_pixels_rule; tested
// by tests/rules/too-few-pixels.
#include "engine/rules/about.h"
#include "engine/rules/shortfall.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_laid_frame(evidence, [&](const PlacedFrame &placed) {
    // What the export threw away is another rule's: reduced-in-export.
    const auto grade =
        shortfall(evidence, placed, placed.laid->effective() * gain_of_master(evidence, placed));
    if (!grade || original_lost(evidence, placed)) return;
    findings.push_back(about_shortfall(*grade, evidence, placed));
  });
}

} // namespace

extern const Rule too_few_pixels_rule = {
    "too-few-pixels",
    Grade::hold,
    "Too few pixels for the printed size",
    "Below the wanted density fine detail softens in print; below the least density edges turn to steps and "
    "faces to mush. A screen shows neither, since it needs a third of the pixels.",
    "Effective density = picture pixels / printed inches after crop and scale, per axis; the smaller axis "
    "counts, less the press sheet’s tolerance. Wanted and least densities are the press sheet’s (common "
    "practice: 300 ppi at the printed size). The setting for a rescan = wanted density × placed size / (size "
    "of the original × share of it that is shown), the larger axis, rounded up to a usual scanner step. Of a "
    "finished PDF the pixels of the file that its picture was made from count, where these are more.",
    "Scan the original again at the setting given, or print the picture no larger than the size given, or "
    "show more of the picture.",
    check,
};

} // namespace stoneproof
