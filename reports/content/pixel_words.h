// What is said of a picture's ink and colours. Used in this folder only.
#pragma once

#include "engine/rules/rule.h"

#include <string>

namespace stoneproof::content {

std::string too_much_ink_words(const Evidence &evidence, const Finding &finding);
std::string mismatched_profile_words(const Evidence &evidence, const Finding &finding);
std::string wide_gamut_words(const Evidence &evidence, const Finding &finding);
std::string no_profile_words(const Evidence &evidence, const Finding &finding);

/// The name of a colour model for people: "RGB", "gray", "one-bit".
std::string_view colour_name(ColourModel colour);
/// The same of a profile's colours.
std::string_view space_name(ProfileSpace space);
/// As it names itself, in quotes; "an unnamed profile" where it does not.
std::string profile_name(const ProfileFacts &profile);

} // namespace stoneproof::content
