// A frame shows the bed of the scanner, or the edge of the print, beside the picture. The only way in is
// bed_showing_rule; tested by tests/rules/bed-showing.
#include "engine/rules/bed.h"

namespace stoneproof {

namespace {

/// Less is no strip to the eye, and no more than the measure may be off: a pixel of a copy of 900.
constexpr Length least = Length::of_mm(0.5);

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_laid_frame(evidence, [&](const PlacedFrame &placed) {
    const auto strips = bed_strips(evidence, placed);
    if (!strips || strips->widest() < least) return;
    const bool white = evidence.pictures[*placed.picture].bed->white;
    if (white && evidence.use_of(*placed.picture) != Use::photo) return; // paper has white margins

    Finding finding = about_frame(white ? Grade::note : Grade::query, evidence, placed);
    finding.measured = strips->widest();
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule bed_showing_rule = {
    "bed-showing",
    Grade::query,
    "Scanner bed shows beside the picture",
    "A strip of the scanner’s lid or glass that was left round a scan prints as a black or white bar that "
    "belongs to nobody’s picture.",
    "In a small copy of the picture an even black or white border is told from the rest, which must fill an "
    "upright or turned rectangle with at least two edges clear of the picture’s. The widest strip of it "
    "inside "
    "the frame is told, from 0.5 mm on the page (our own choice). A white border may be the print’s own "
    "white "
    "edge, which cannot be told from the lid, and is only a note.",
    "Show a part of the picture that ends inside the strip, or cut it off in the picture. If the white edge "
    "is "
    "the print’s own and wanted, leave it.",
    check,
    true,
};

} // namespace stoneproof
