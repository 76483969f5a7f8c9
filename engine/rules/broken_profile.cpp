// An embedded colour profile that cannot be read. The only way in is broken_profile_rule; tested by
// tests/rules/broken-profile.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_picture_shown(evidence, [&](const PlacedFrame &placed) {
    const auto &profile = evidence.pictures[*placed.picture].facts->profile;
    if (profile && profile->broken) findings.push_back(about_frame(Grade::query, evidence, placed));
  });
}

} // namespace

extern const Rule broken_profile_rule = {
    "broken-profile",
    Grade::query,
    "Colour profile is broken",
    "Nobody can say what the numbers in the file stand for. One program takes them for one thing, the "
    "next for another, and the printer’s may stop at it.",
    "The embedded ICC profile, read with the library lcms2: it cannot be opened, or lacks the tables that"
    " a conversion needs (ICC.1).",
    "Save the picture again with a sound profile: assign sRGB if it looks right that way on a screen, or "
    "ask whoever made the file for its profile.",
    check,
};

} // namespace stoneproof
