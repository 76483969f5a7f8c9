// Reads profiles through lcms2. Only way in: read_profile. Tested in tests/engine/colour/profile.test.cpp.
#include "engine/colour/profile.h"

#include <lcms2.h>

namespace stoneproof {

ProfileFacts read_profile(std::span<const std::uint8_t> icc) {
  ProfileFacts facts;
  const cmsHPROFILE profile = cmsOpenProfileFromMem(icc.data(), static_cast<cmsUInt32Number>(icc.size()));
  facts.broken = profile == nullptr;
  if (profile) cmsCloseProfile(profile);
  return facts;
}

} // namespace stoneproof
