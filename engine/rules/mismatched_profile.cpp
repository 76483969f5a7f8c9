// An embedded colour profile that is not one of the picture's own colours. The only way in is
// mismatched_profile_rule; tested by tests/rules/mismatched-profile.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

/// Whether a profile of this space can describe pixels of this model.
bool fits(ProfileSpace space, ColourModel colour) {
  switch (colour) {
  case ColourModel::bilevel:
  case ColourModel::gray: return space == ProfileSpace::gray;
  case ColourModel::rgb: return space == ProfileSpace::rgb;
  case ColourModel::indexed: return space == ProfileSpace::rgb || space == ProfileSpace::gray;
  case ColourModel::cmyk: return space == ProfileSpace::cmyk;
  case ColourModel::lab: return space == ProfileSpace::lab;
  case ColourModel::other: return true;
  }
  return true;
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_picture_shown(evidence, [&](const PlacedFrame &placed) {
    const Facts &facts = *evidence.pictures[*placed.picture].facts;
    if (!facts.profile || facts.profile->broken) return;
    const bool fine =
        fits(facts.profile->space, facts.colour) && facts.profile->made_for != ProfileClass::other;
    if (!fine) findings.push_back(about_frame(Grade::query, evidence, placed));
  });
}

} // namespace

extern const Rule mismatched_profile_rule = {
    "mismatched-profile",
    Grade::query,
    "Colour profile does not fit the picture",
    "The profile speaks of other colours than the file holds. Programs ignore it or stop at it, and the "
    "colours come out by chance.",
    "The colour space and the class in the header of the embedded ICC profile (ICC.1) against the colour "
    "model of the pixels. Profiles of input, display, output and colour space are what a picture may "
    "carry.",
    "Save the picture again with a profile of its own colour model: sRGB for RGB, a gray profile for "
    "gray, the printer’s for CMYK.",
    check,
};

} // namespace stoneproof
