// No file on disk was found for a picture of the finished PDF. The only way in is no_master_rule; tested by
// tests/rules/no-master.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  if (evidence.masters.empty()) return;
  each_picture_shown(evidence, [&](const PlacedFrame &placed) {
    if (evidence.master_of(*placed.picture)) return;
    findings.push_back(about_frame(Grade::note, evidence, placed));
  });
}

} // namespace

extern const Rule no_master_rule = {
    "no-master",
    Grade::note,
    "No file was found behind the picture",
    "Whether a better file exists, nobody can say from the PDF alone.",
    "Pictures for which no file of the folder that was named shows the same. Found are other sizes, "
    "qualities and tones, turned or mirrored, and crops down to a quarter of the sides; pictures with hardly "
    "any "
    "shapes are not.",
    "Put the file into the folder, or look for it by hand.",
    check,
    true,
    true,
};

} // namespace stoneproof
