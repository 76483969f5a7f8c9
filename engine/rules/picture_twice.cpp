// One picture stands in more than one frame. The only way in is picture_twice_rule; tested by
// tests/rules/picture-twice.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  std::vector<std::vector<const PlacedFrame *>> uses(evidence.book.pictures.size());
  for (const PlacedFrame &placed : evidence.frames)
    if (placed.picture) uses[*placed.picture].push_back(&placed);
  for (const auto &frames : uses) {
    if (frames.size() < 2) continue;
    Finding finding = about_frame(Grade::query, evidence, *frames[1]);
    finding.measured = Count{frames.size()};
    finding.wanted = Count{1};
    for (const PlacedFrame *placed : frames) finding.also_on.push_back(placed->page);
    findings.push_back(std::move(finding));
  }
}

} // namespace

extern const Rule picture_twice_rule = {
    "picture-twice",
    Grade::query,
    "Same picture is placed more than once",
    "Readers notice, and most often a second picture was meant: the wrong file was linked.",
    "Frames that name the same picture of the description.",
    "Look whether both are meant. If not, put the right picture into one of the frames.",
    check,
};

} // namespace stoneproof
