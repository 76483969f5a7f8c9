// Sentences about ink and colours that need more than figures. The only ways in are the functions of
// pixel_words.h; tested in tests/reports/content.
#include "reports/content/pixel_words.h"

#include "reports/content/figures.h"

#include <fmt/format.h>

namespace stoneproof::content {

namespace {

const Facts &facts_of(const Evidence &evidence, const Finding &finding) {
  return *evidence.pictures[*finding.picture].facts;
}

} // namespace

std::string_view space_name(ProfileSpace space) {
  switch (space) {
  case ProfileSpace::gray: return "gray";
  case ProfileSpace::rgb: return "RGB";
  case ProfileSpace::cmyk: return "CMYK";
  case ProfileSpace::lab: return "Lab";
  case ProfileSpace::other: return "another colour model";
  }
  return {};
}

std::string profile_name(const ProfileFacts &profile) {
  return profile.description.empty() ? "an unnamed profile" : fmt::format("“{}”", profile.description);
}

std::string_view colour_name(ColourModel colour) {
  switch (colour) {
  case ColourModel::bilevel: return "one-bit";
  case ColourModel::gray: return "gray";
  case ColourModel::rgb: return "RGB";
  case ColourModel::cmyk: return "CMYK";
  case ColourModel::lab: return "Lab";
  case ColourModel::indexed: return "palette";
  case ColourModel::other: return "unusual";
  }
  return {};
}

std::string too_much_ink_words(const Evidence &evidence, const Finding &finding) {
  const bool as_is = facts_of(evidence, finding).colour == ColourModel::cmyk;
  return fmt::format("{} up to {} of ink; the press sheet takes {}.",
                     as_is ? "Lays" : "Converted for this press, it lays",
                     figure_beside(finding.measured, finding.wanted), figure(finding.wanted));
}

std::string mismatched_profile_words(const Evidence &evidence, const Finding &finding) {
  const Facts &facts = facts_of(evidence, finding);
  const ProfileFacts profile = facts.profile.value_or(ProfileFacts());
  if (profile.made_for == ProfileClass::other)
    return fmt::format("Its profile, {}, is not of a kind that a picture may carry.", profile_name(profile));
  return fmt::format("The picture is {}, but its profile, {}, is one of {}.", colour_name(facts.colour),
                     profile_name(profile), space_name(profile.space));
}

std::string wide_gamut_words(const Evidence &evidence, const Finding &finding) {
  const Facts &facts = facts_of(evidence, finding);
  const std::string name = facts.profile                   ? profile_name(*facts.profile)
                           : facts.tag == ColourTag::adobe ? "Adobe RGB (1998)"
                                                           : "wider primaries";
  return fmt::format("Its colours are those of {}, stronger than those of sRGB.", name);
}

std::string no_profile_words(const Evidence &, const Finding &finding) {
  const auto *pictures = std::get_if<Count>(&finding.measured);
  const std::size_t others = pictures ? pictures->value - 1 : 0;
  if (others == 0) return "Does not say what its colours are; sRGB is assumed.";
  return fmt::format("This and {} do not say what their colours are; sRGB is assumed.",
                     count(others, "other picture", "other pictures"));
}

} // namespace stoneproof::content
