// A picture is listed and no frame shows it. The only way in is unused_picture_rule; tested by
// tests/rules/unused-picture.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  std::vector<bool> used(evidence.book.pictures.size());
  for (const PlacedFrame &placed : evidence.frames)
    if (placed.picture) used[*placed.picture] = true;
  for (std::size_t picture = 0; picture < used.size(); ++picture)
    if (!used[picture]) findings.push_back(about_picture(Grade::note, evidence, picture));
}

} // namespace

extern const Rule unused_picture_rule = {
    "unused-picture",
    Grade::note,
    "Picture is listed and not used",
    "A contributor may look for it in the book in vain.",
    "Pictures of the description that no frame names.",
    "Place the picture, or take it off the list.",
    check,
};

} // namespace stoneproof
