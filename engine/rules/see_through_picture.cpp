// A picture with transparent parts. The only way in is see_through_picture_rule; tested by
// tests/rules/see-through-picture.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_picture_shown(evidence, [&](const PlacedFrame &placed) {
    if (evidence.pictures[*placed.picture].facts->alpha)
      findings.push_back(about_frame(Grade::note, evidence, placed));
  });
}

} // namespace

extern const Rule see_through_picture_rule = {
    "see-through-picture",
    Grade::note,
    "Picture may be see-through",
    "What lies behind a see-through part shows in print, or turns white or black when the printer’s "
    "program flattens it. Scans of originals have no such parts: most often a program added them unasked.",
    "The file says that it holds opacity: an alpha channel, or a colour that counts as transparent. "
    "Whether any pixel is see-through is not asked; here white paper is taken to lie behind.",
    "If nothing is meant to show through, save the picture again without transparency.",
    check,
};

} // namespace stoneproof
