// RGB pictures that say nothing of their colours. The only way in is no_profile_rule; tested by
// tests/rules/no-profile.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

bool says_nothing(const Evidence &evidence, std::size_t picture) {
  const Facts &facts = *evidence.pictures[picture].facts;
  return facts.colour == ColourModel::rgb && facts.tag == ColourTag::none;
}

// One finding for the whole book: most scanners leave the profile out.
void check(const Evidence &evidence, std::vector<Finding> &findings) {
  std::vector<std::size_t> untagged;
  each_picture_shown(evidence, [&](const PlacedFrame &placed) {
    if (says_nothing(evidence, *placed.picture)) untagged.push_back(*placed.picture);
  });
  if (untagged.empty()) return;
  Finding finding = about_picture(Grade::note, evidence, untagged.front());
  finding.contributor.reset();
  finding.measured = Count{untagged.size()};
  finding.wanted = Count{0};
  findings.push_back(std::move(finding));
}

} // namespace

extern const Rule no_profile_rule = {
    "no-profile",
    Grade::note,
    "Pictures without a colour profile",
    "The file does not say what its red, green and blue are. The trade takes them for sRGB, and so does "
    "this check; a picture from a camera or scanner that was set to other colours then prints dull or "
    "gaudy.",
    "RGB pictures without an embedded ICC profile, without a mark in the Exif of a JPEG, WebP, HEIC or AVIF "
    "(colour space 1, or "
    "interoperability index R03), and without the chunks cICP, iCCP, sRGB, gAMA or cHRM of a PNG. All of "
    "them are told in one place.",
    "Nothing need be done if the pictures look right on a screen. If one looks dull or gaudy, ask its "
    "owner which colours the scanner or camera was set to.",
    check,
};

} // namespace stoneproof
