// What an ICC profile says of itself (ICC.1:2022, header and description).
#pragma once

#include <cstdint>
#include <span>
#include <string>

namespace stoneproof {

/// The colour space of a profile's device side.
enum class ProfileSpace { gray, rgb, cmyk, lab, other };

/// What a profile is made for.
enum class ProfileClass { input, display, output, colour_space, other };

struct ProfileFacts {
  std::string description; ///< as the profile names itself, UTF-8; empty where it does not
  ProfileSpace space = ProfileSpace::other;
  ProfileClass made_for = ProfileClass::other;
  bool broken =
      false; ///< it cannot be read, or lacks what a conversion needs; the rest is then as far as known
  bool wide_gamut = false; ///< RGB whose primaries span clearly more colours than sRGB's
};

/// Never fails: a profile that cannot be read is `broken`.
ProfileFacts read_profile(std::span<const std::uint8_t> icc);

} // namespace stoneproof
