// Part of a frame shows no picture though it is meant to be filled. The only way in is uncovered_frame_rule;
// tested by tests/rules/uncovered-frame.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_laid_frame(evidence, [&](const PlacedFrame &placed) {
    const bool meant = std::holds_alternative<Inside>(evidence.frame_of(placed).fit);
    if (meant || placed.uncovered_share <= 0) return;
    findings.push_back(about_frame(Grade::hold, evidence, placed));
    findings.back().measured = Share{placed.uncovered_share};
    findings.back().wanted = Share{0};
  });
}

} // namespace

extern const Rule uncovered_frame_rule = {
    "uncovered-frame",
    Grade::hold,
    "Frame is not covered by its picture",
    "A white gap shows inside the frame.",
    "1 - area of the picture inside the frame / area of the frame. A picture that is set to lie inside its "
    "frame is left alone.",
    "Enlarge or move the picture until it covers the frame, or make the frame smaller.",
    check,
};

} // namespace stoneproof
