// A frame names a picture whose file is not there. The only way in is missing_picture_rule; tested by
// tests/rules/missing-picture.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  for (const PlacedFrame &placed : evidence.frames) {
    if (!placed.picture || !evidence.pictures[*placed.picture].missing) continue;
    findings.push_back(about_frame(Grade::hold, evidence, placed));
    findings.back().fault = evidence.pictures[*placed.picture].fault;
  }
}

} // namespace

extern const Rule missing_picture_rule = {
    "missing-picture",
    Grade::hold,
    "Picture file is missing",
    "The printer would get an empty frame, or the layout program’s coarse stand-in for the picture.",
    "The file that the description names, looked for in the folder of the description.",
    "Ask the contributor for the file, or correct its name in the description.",
    check,
};

} // namespace stoneproof
