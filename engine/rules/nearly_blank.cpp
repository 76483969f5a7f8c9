// A picture with next to nothing on it. The only way in is nearly_blank_rule; tested by
// tests/rules/nearly-blank.
#include "engine/rules/about.h"
#include "engine/rules/tones.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    if (!is_nearly_blank(shown.tone)) return;
    findings.push_back(about_share(Grade::query, evidence, placed, shown.tone.range, blank_range));
  });
}

} // namespace

extern const Rule nearly_blank_rule = {
    "nearly-blank",
    Grade::query,
    "Picture is nearly blank",
    "The wrong side of a print, an empty scanner glass or a page that stuck together: what is shown holds"
    " one tone and little else.",
    "From the 0.5th to the 99.5th percentile of all samples of the shown part, as a share of the whole "
    "range: below 8 % (our own choice).",
    "Look whether the right file and the right part of it are shown. If the original was scanned upside "
    "down, scan it again.",
    check,
    true,
};

} // namespace stoneproof
