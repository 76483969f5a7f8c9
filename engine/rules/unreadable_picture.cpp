// A frame names a picture file that is there and cannot be read. The only way in is unreadable_picture_rule;
// tested by tests/rules/unreadable-picture.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  for (const PlacedFrame &placed : evidence.frames) {
    if (!placed.picture) continue;
    const PictureState &state = evidence.pictures[*placed.picture];
    if (state.missing || !state.fault) continue;
    findings.push_back(about_frame(Grade::hold, evidence, placed));
    findings.back().fault = state.fault;
  }
}

} // namespace

extern const Rule unreadable_picture_rule = {
    "unreadable-picture",
    Grade::hold,
    "Picture file cannot be read",
    "A file that is damaged or of an unknown kind prints as a gap, as stripes or not at all, and a screen "
    "may still show an old thumbnail of it.",
    "The file’s signature and header are read and its pixels decoded; the first damage met is told.",
    "Ask the contributor to send the file again, as a TIFF or a JPEG of the best quality.",
    check,
};

} // namespace stoneproof
