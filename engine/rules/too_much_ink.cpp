// More ink than paper takes. The only way in is too_much_ink_rule; tested by tests/rules/too-much-ink.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    if (!shown.ink || shown.ink->most <= evidence.press.ink.most) return;
    const bool as_is = evidence.pictures[*placed.picture].facts->colour == ColourModel::cmyk;
    Finding finding = about_share(as_is ? Grade::hold : Grade::query, evidence, placed, shown.ink->most,
                                  evidence.press.ink.most);
    if (shown.ink_place) finding.area = shared_part(*shown.ink_place, placed.box).value_or(placed.box);
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule too_much_ink_rule = {
    "too-much-ink",
    Grade::hold,
    "Too much ink",
    "More ink than the paper takes does not dry: it smears on the next sheet, sticks pages together and "
    "shows through.",
    "Total area coverage = cyan + magenta + yellow + black, from the pixels of a CMYK picture as they "
    "are, from others after conversion to the press sheet’s profile (then a query, since the printer "
    "converts). The largest mean over a printed square whose side is on the press sheet, at every eighth "
    "of that side; the mark shows where. The limit is the press sheet’s (common practice: 300 % for "
    "coated paper, less for uncoated).",
    "Ask for the picture in RGB and let the printer convert it, or convert it again with the printer’s "
    "own profile. Darkening or sharpening a CMYK picture only adds ink.",
    check,
    true,
};

} // namespace stoneproof
