// The original lay askew on the scanner. The only way in is tilted_original_rule; tested by
// tests/rules/tilted-original.
#include "engine/rules/about.h"

#include <cmath>

namespace stoneproof {

namespace {

/// Our own choice: from one degree on most people see that a horizon hangs.
constexpr double least = 0.5, seen = 1;

/// A frame turned by anything but quarters is meant to hang, or mends the tilt.
bool upright(const Frame &frame) { return std::fmod(frame.turn.degrees, 90.0) == 0; }

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_laid_frame(evidence, [&](const PlacedFrame &placed) {
    const auto &bed = evidence.pictures[*placed.picture].bed;
    if (!bed || bed->certainty != Certainty::firm || !bed->tilt || !upright(evidence.frame_of(placed)))
      return;
    const double tilt = std::abs(*bed->tilt);
    if (tilt < least) return;
    Finding finding = about_frame(tilt < seen ? Grade::note : Grade::query, evidence, placed);
    finding.measured = Angle{*bed->tilt};
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule tilted_original_rule = {
    "tilted-original",
    Grade::query,
    "Original lay askew on the scanner",
    "Readers see a horizon or a wall that hangs, and the picture’s own edges run into the frame’s at a "
    "slant.",
    "The angle of the edges of the original against the border of scanner bed round it, in a small copy of "
    "the "
    "picture; at least two edges must agree within 0.6 degrees. A note from 0.5 degrees, a query from 1 "
    "(our own choice). Not said of frames that are turned themselves.",
    "Turn the picture by that angle in an image editor from the file as scanned, and save it as TIFF; or lay "
    "the original straight against the edge of the glass and scan it again.",
    check,
    true,
};

} // namespace stoneproof
