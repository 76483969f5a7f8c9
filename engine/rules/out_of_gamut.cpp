// Colours that the press cannot print. The only way in is out_of_gamut_rule; tested by tests/rules/out-of-
// gamut.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    const auto &profile = evidence.press.profile;
    if (!profile || !shown.ink || !shown.ink->out_of_gamut) return;
    if (*shown.ink->out_of_gamut <= profile->share) return;
    findings.push_back(about_share(Grade::query, evidence, placed, *shown.ink->out_of_gamut, profile->share));
  });
}

} // namespace

extern const Rule out_of_gamut_rule = {
    "out-of-gamut",
    Grade::query,
    "Colours that the press cannot print",
    "Strong blues, greens and oranges of a screen are beyond ink on paper. They come out duller, and "
    "shades that differ on the screen become one.",
    "The share of the shown part whose colour, converted to the press profile and back (relative "
    "colorimetric with black point compensation), comes out further off than the press sheet’s limit: "
    "CIEDE2000 (Sharma, Wu, Dalal 2005). Colours are taken in steps of 4 of 255, and large pictures at "
    "every second, third or further pixel. Asked only where the press sheet names a profile.",
    "Look at the proof in print before you sign it. If the colours matter, ask the printer for a proof on"
    " the paper itself, or soften the strongest colours in a copy.",
    check,
    true,
};

} // namespace stoneproof
