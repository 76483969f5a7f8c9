// The printed size asks for more pixels than the frame shows. The only way in is too_few_pixels_rule; tested
// by tests/rules/too-few-pixels.
#include "engine/rules/about.h"
#include "engine/rules/shortfall.h"

namespace stoneproof {

namespace {

/// The file that the picture was made from has pixels enough: the rule reduced-in-export speaks of it.
bool master_suffices(const Evidence &evidence, const PlacedFrame &placed) {
  const Master *master = evidence.master_of(*placed.picture);
  const Density wanted = bar_of(evidence, placed).wanted;
  return master && !evidence.press.falls_short(placed.laid->effective() * master->finer, wanted);
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_laid_frame(evidence, [&](const PlacedFrame &placed) {
    const auto grade = pixel_shortfall(evidence, placed);
    if (!grade || original_lost(evidence, placed) || master_suffices(evidence, placed)) return;
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
    "of the original × share of it that is shown), the larger axis, rounded up to a usual scanner step.",
    "Scan the original again at the setting given, or print the picture no larger than the size given, or "
    "show more of the picture.",
    check,
};

} // namespace stoneproof
