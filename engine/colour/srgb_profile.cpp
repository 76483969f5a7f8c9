// Makes the profile of sRGB through lcms2. The only way in is srgb_profile; tested in
// tests/engine/colour/profile.test.cpp.
#include "engine/colour/srgb_profile.h"

#include "engine/colour/lcms.h"

#include <algorithm>
#include <array>
#include <new>

namespace stoneproof {

namespace {

/// In place of the clock: the month in which IEC 61966-2-1 came out. Twelve bytes from the 24th on: year,
/// month, day, hour, minute, second (ICC.1:2004-10, 7.2.8).
void set_date(std::vector<std::uint8_t> &icc) {
  constexpr std::array<std::uint8_t, 12> october_1999 = {0x07, 0xCF, 0, 10, 0, 1, 0, 0, 0, 0, 0, 0};
  std::copy(october_1999.begin(), october_1999.end(), icc.begin() + 24);
}

} // namespace

std::vector<std::uint8_t> srgb_profile() {
  const lcms::Context context = lcms::silent_context();
  const lcms::Profile profile(context ? cmsCreate_sRGBProfileTHR(context.get()) : nullptr);
  if (!profile) throw std::bad_alloc();
  cmsSetProfileVersion(profile.get(), 4.2);
  cmsUInt32Number size = 0;
  if (!cmsSaveProfileToMem(profile.get(), nullptr, &size)) throw std::bad_alloc();
  std::vector<std::uint8_t> icc(size);
  if (!cmsSaveProfileToMem(profile.get(), icc.data(), &size)) throw std::bad_alloc();
  set_date(icc);
  return icc;
}

} // namespace stoneproof
