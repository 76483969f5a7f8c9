// A gray picture that is stored as RGB. The only way in is gray_as_colour_rule; tested by
// tests/rules/gray-as-colour.
#include "engine/rules/about.h"
#include "engine/rules/tones.h"

#include <set>

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  std::set<std::size_t> told;
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    if (!evidence.pictures[*placed.picture].neutral.value_or(false) || is_nearly_blank(shown.tone)) return;
    if (told.insert(*placed.picture).second) findings.push_back(about_frame(Grade::note, evidence, placed));
  });
}

} // namespace

extern const Rule gray_as_colour_rule = {
    "gray-as-colour",
    Grade::note,
    "Gray picture is stored in colour",
    "Printed with four inks, a gray picture may take on a tinge, and a different one on each sheet. "
    "Printed with black alone it stays gray.",
    "Pixels whose channels differ by more than 8 of 255 (our own choice: more than the noise of a scanner"
    " or a JPEG): at most one in a thousand of the whole picture.",
    "Convert a copy to gray if black ink alone is wanted. If the warm tone of the old print should show, "
    "ask for a scan in colour.",
    check,
    true,
};

} // namespace stoneproof
