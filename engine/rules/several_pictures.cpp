// A file that holds more than one picture. The only way in is several_pictures_rule; tested by
// tests/rules/several-pictures.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_picture_shown(evidence, [&](const PlacedFrame &placed) {
    const int pages = evidence.pictures[*placed.picture].facts->pages;
    if (pages < 2) return;
    Finding finding = about_frame(Grade::query, evidence, placed);
    finding.measured = Count{static_cast<std::size_t>(pages)};
    finding.wanted = Count{1};
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule several_pictures_rule = {
    "several-pictures",
    Grade::query,
    "File holds more than one picture",
    "A scanner that is fed a pile writes all of it into one file. Programs show the first picture and say"
    " nothing of the others.",
    "The count of pictures in the file, as its own directory tells. The first one is shown and measured.",
    "Look whether the first picture is the one that is meant. If not, have the right one saved as a file "
    "of its own.",
    check,
};

} // namespace stoneproof
