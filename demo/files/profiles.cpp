// ICC profiles by lcms2, with the same bytes every time. Only way in: profile_bytes of files.h.
#include "demo/files/files.h"

#include <algorithm>
#include <array>

#include <lcms2.h>

namespace stoneproof::demo {

namespace {

void name(cmsHPROFILE profile, const char *text) {
  cmsMLU *words = cmsMLUalloc(nullptr, 1);
  cmsMLUsetASCII(words, "en", "US", text);
  cmsWriteTag(profile, cmsSigProfileDescriptionTag, words);
  cmsMLUfree(words);
}

/// The primaries of ROMM RGB (ISO 22028-2), a gamut that some scanners are set to.
cmsHPROFILE wide_rgb(cmsToneCurve *curve) {
  const cmsCIExyY white{0.3457, 0.3585, 1};
  const cmsCIExyYTRIPLE primaries{{0.7347, 0.2653, 1}, {0.1596, 0.8404, 1}, {0.0366, 0.0001, 1}};
  cmsToneCurve *curves[] = {curve, curve, curve};
  const cmsHPROFILE profile = cmsCreateRGBProfile(&white, &primaries, curves);
  name(profile, "Scanner, wide colours");
  return profile;
}

cmsHPROFILE gray(const cmsToneCurve *curve) {
  const cmsHPROFILE profile = cmsCreateGrayProfile(cmsD50_xyY(), curve);
  name(profile, "Scanner, gray");
  return profile;
}

std::vector<unsigned char> bytes_of(cmsHPROFILE profile) {
  cmsUInt32Number count = 0;
  cmsSaveProfileToMem(profile, nullptr, &count);
  std::vector<unsigned char> bytes(count);
  cmsSaveProfileToMem(profile, bytes.data(), &count);
  constexpr std::array<unsigned char, 12> long_ago = {0x07, 0xD0, 0,
                                                      1,    0,    1}; // 1 January 2000 (ICC.1, 7.2.8)
  std::copy(long_ago.begin(), long_ago.end(), bytes.begin() + 24);
  return bytes;
}

} // namespace

std::vector<unsigned char> profile_bytes(Profile kind) {
  if (kind == Profile::none) return {};
  cmsToneCurve *curve = cmsBuildGamma(nullptr, 1.8);
  const cmsHPROFILE profile = kind == Profile::srgb       ? cmsCreate_sRGBProfile()
                              : kind == Profile::mistaken ? gray(curve)
                                                          : wide_rgb(curve);
  cmsFreeToneCurve(curve);
  auto bytes = bytes_of(profile);
  cmsCloseProfile(profile);
  if (kind == Profile::cut_short) bytes.resize(bytes.size() / 2);
  return bytes;
}

} // namespace stoneproof::demo
