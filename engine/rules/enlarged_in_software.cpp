// A picture was given more pixels by software, which add no detail. The only way in is
// enlarged_in_software_rule; tested by tests/rules/enlarged-in-software.
#include "engine/rules/detail.h"

namespace stoneproof {

namespace {

/// What is proven is as grave as the density before the enlargement.
Grade grade_of(const Upsampling &found, const PressSheet &press, Density before, const DensityBar &bar) {
  if (!press.falls_short(before, bar.wanted)) return Grade::note;
  return found.factor_sure && press.falls_short(before, bar.least) ? Grade::hold : Grade::query;
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    const Upsampling &found = shown.detail.upsampling;
    if (found.certainty != Certainty::firm || !found.factor) return;
    if (!has_continuous_tone(evidence, placed)) return;
    const Density before = placed.laid->effective() * (1 / *found.factor);
    const DensityBar &bar = bar_of(evidence, placed);
    Finding finding = about_frame(grade_of(found, evidence.press, before, bar), evidence, placed);
    finding.measured = before;
    finding.wanted = bar.wanted;
    finding.rescue.rescan = rescan_of(evidence, placed);
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule enlarged_in_software_rule = {
    "enlarged-in-software",
    Grade::hold,
    "Was enlarged in software",
    "Software that enlarges a picture makes up the pixels in between. The count passes every check, and the "
    "print is as soft as it would have been without them.",
    "The trace of the enlargement in the spectrum of the most detailed parts of what is shown: mirrored "
    "frequencies "
    "round half of 1/factor run in step (after Gallagher, 2005, and others). "
    "Density before = effective density / factor. Said only when the trace is proof; weaker signs "
    "are in the record. Where the end of detail does not agree with the factor, it is given as “at least "
    "about”. Only a hint: what the blocks of a JPEG leave that was reduced, patterns with other lines beside "
    "the "
    "trace, drawings whose rows are all one. Not "
    "found: "
    "pictures turned by a few degrees, or given grain afterwards. Line art is left out.",
    "Ask for the file as it was before it was enlarged: it holds the same detail in fewer pixels. If that is "
    "too "
    "little, scan the original again.",
    check,
    true,
};

} // namespace stoneproof
