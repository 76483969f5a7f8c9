// A picture has pixels enough, but its detail is that of a much coarser one. The only way in is
// soft_detail_rule; tested by tests/rules/soft-detail.
#include "engine/rules/detail.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    const Upsampling &found = shown.detail.upsampling;
    if (!found.detail.known || found.certainty == Certainty::cannot_tell ||
        found.certainty == Certainty::firm)
      return;
    if (evidence.use_of(*placed.picture) != Use::photo) return;
    const DensityBar &bar = bar_of(evidence, placed);
    if (evidence.press.falls_short(placed.laid->effective(), bar.least)) return; // too few pixels already
    const Density detail = true_density(placed, shown);
    if (!evidence.press.falls_short(detail * DetailLimit::most, bar.least)) return;
    Finding finding = about_frame(Grade::query, evidence, placed);
    finding.measured = detail;
    finding.wanted = bar.least;
    finding.rescue.rescan = rescan_of(evidence, placed);
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule soft_detail_rule = {
    "soft-detail",
    Grade::query,
    "Holds less detail than pixels",
    "A picture out of focus, shaken, scanned through glass or enlarged has many pixels and little in them. "
    "It prints "
    "soft, however many there are.",
    "Where the spectrum of the most detailed parts of what is shown ends: detail for so many ppi = effective "
    "density "
    "× that frequency / half a cycle a pixel, per axis, the smaller one counting. An estimate: nine times in "
    "ten the "
    "truth lies between 0.68 and 1.46 times it (measured on known blurs and enlargements). Asked only where "
    "even 1.46 "
    "times it falls short of the least density of the press sheet. Nothing is said of line art, documents "
    "and "
    "clippings, of what is too small to judge, or of a flat sky.",
    "Look at it at its printed size. If it should be sharp, ask whether the original is; if so, have it "
    "scanned again "
    "without glass and dust cover between, or print it smaller.",
    check,
    true,
};

} // namespace stoneproof
