// RGB with more colours than sRGB. The only way in is wide_gamut_rule; tested by tests/rules/wide-gamut.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

bool is_wide(const Facts &facts) {
  if (facts.colour != ColourModel::rgb) return false;
  if (facts.tag == ColourTag::adobe || facts.tag == ColourTag::coded) return true;
  return facts.profile && !facts.profile->broken && facts.profile->wide_gamut;
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_picture_shown(evidence, [&](const PlacedFrame &placed) {
    if (is_wide(*evidence.pictures[*placed.picture].facts))
      findings.push_back(about_frame(Grade::note, evidence, placed));
  });
}

} // namespace

extern const Rule wide_gamut_rule = {
    "wide-gamut",
    Grade::note,
    "Picture is in wide-gamut RGB",
    "Its numbers mean stronger colours than those of sRGB. A program that overlooks the profile prints it"
    " dull, and no press can print the strongest of its colours anyway.",
    "The primaries of the embedded profile span more than 1.15 times the area of those of sRGB in CIE "
    "1976 u'v', or the file names Adobe RGB (Exif, R03) or other primaries than sRGB’s (ITU-T H.273).",
    "Ask the printer whether profiles are honoured. If in doubt, convert a copy to sRGB; never throw the "
    "profile away.",
    check,
};

} // namespace stoneproof
