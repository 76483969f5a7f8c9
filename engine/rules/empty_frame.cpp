// A frame names no picture. The only way in is empty_frame_rule; tested by tests/rules/empty-frame.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  for (const PlacedFrame &placed : evidence.frames)
    if (!placed.picture) findings.push_back(about_frame(Grade::hold, evidence, placed));
}

} // namespace

extern const Rule empty_frame_rule = {
    "empty-frame",
    Grade::hold,
    "Frame has no picture",
    "The page would be printed with a hole in it.",
    "Frames of the description that name no picture.",
    "Put a picture into the frame, or take the frame out.",
    check,
};

} // namespace stoneproof
