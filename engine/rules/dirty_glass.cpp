// Dirt on a scanner's glass shows in its scans. The only way in is dirty_glass_rule; tested by
// tests/rules/dirty-glass.
#include "engine/rules/about.h"

#include <algorithm>

namespace stoneproof {

namespace {

/// Frames that show a picture on which sure dirt was found, in book order.
std::vector<const PlacedFrame *> frames_with_dirt(const Evidence &evidence, const Glass &glass) {
  std::vector<bool> dirty(evidence.pictures.size());
  for (const GlassSpot &spot : glass.spots)
    if (spot.certainty == Certainty::firm)
      for (const std::size_t carrier : spot.carriers) dirty[carrier] = true;
  std::vector<const PlacedFrame *> frames;
  for (const PlacedFrame &placed : evidence.frames)
    if (placed.picture && dirty[*placed.picture]) frames.push_back(&placed);
  return frames;
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  for (std::size_t i = 0; i < evidence.glasses.size(); ++i) {
    const Glass &glass = evidence.glasses[i];
    const auto frames = frames_with_dirt(evidence, glass);
    if (frames.empty()) continue;
    Finding finding = about_frame(Grade::query, evidence, *frames.front());
    finding.glass = i;
    const auto sure = std::count_if(glass.spots.begin(), glass.spots.end(),
                                    [](const GlassSpot &spot) { return spot.certainty == Certainty::firm; });
    finding.measured = Count{static_cast<std::size_t>(sure)};
    for (const PlacedFrame *placed : frames) finding.same_picture.push_back({placed->page, placed->frame});
    findings.push_back(std::move(finding));
  }
}

} // namespace

extern const Rule dirty_glass_rule = {
    "dirty-glass",
    Grade::query,
    "Dirt on the scanner’s glass",
    "A speck or a hair on the glass stands in the same place in every scan, and prints in every picture. "
    "Once the "
    "glass is clean it is gone from all of them.",
    "Small marks that stand out from their surroundings are kept of every scan. In scans of one size from "
    "one "
    "scanner (by the device that the files name, else by contributor) that show different subjects, marks "
    "that "
    "stay in one place in more scans than chance allows are dirt; so are thin lines along the whole scan. "
    "Said only "
    "of five subjects and more. Not found: what a scan program retouched, and scans that were cropped one by "
    "one.",
    "Clean the glass and the lid with a soft dry cloth, look at the named places, and scan these pictures "
    "again. "
    "Single specks in a scan that cannot be made again can be retouched.",
    check,
    true,
};

} // namespace stoneproof
