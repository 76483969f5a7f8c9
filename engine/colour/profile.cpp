// Reads profiles through lcms2, without a conversion wherever the tags alone tell. Only way in: read_profile.
// Tested in tests/engine/colour/profile.test.cpp.
#include "engine/colour/profile.h"

#include "engine/colour/lcms.h"

#include <array>
#include <cmath>

namespace stoneproof {

namespace {

ProfileSpace space_of(cmsColorSpaceSignature signature) {
  switch (signature) {
  case cmsSigGrayData: return ProfileSpace::gray;
  case cmsSigRgbData: return ProfileSpace::rgb;
  case cmsSigCmykData: return ProfileSpace::cmyk;
  case cmsSigLabData: return ProfileSpace::lab;
  default: return ProfileSpace::other;
  }
}

ProfileClass class_of(cmsProfileClassSignature signature) {
  switch (signature) {
  case cmsSigInputClass: return ProfileClass::input;
  case cmsSigDisplayClass: return ProfileClass::display;
  case cmsSigOutputClass: return ProfileClass::output;
  case cmsSigColorSpaceClass: return ProfileClass::colour_space;
  default: return ProfileClass::other;
  }
}

/// The header says how many bytes the profile has (ICC.1:2022, 7.2.2).
bool is_cut(std::span<const std::uint8_t> icc) {
  if (icc.size() < 4) return true;
  const std::uint32_t size = std::uint32_t{icc[0]} << 24 | std::uint32_t{icc[1]} << 16 |
                             std::uint32_t{icc[2]} << 8 | std::uint32_t{icc[3]};
  return size > icc.size();
}

void append_utf8(std::string &text, char32_t c) {
  const auto tail = [&](int shift) { text += static_cast<char>(0x80u | ((c >> shift) & 0x3Fu)); };
  if (c < 0x80) {
    text += static_cast<char>(c);
  } else if (c < 0x800) {
    text += static_cast<char>(0xC0u | c >> 6);
    tail(0);
  } else if (c < 0x10000) {
    text += static_cast<char>(0xE0u | c >> 12);
    tail(6), tail(0);
  } else {
    text += static_cast<char>(0xF0u | c >> 18);
    tail(12), tail(6), tail(0);
  }
}

constexpr bool is_control(char32_t c) { return c < 0x20 || (c >= 0x7F && c < 0xA0) || c == 0xFEFF; }
constexpr bool is_high_half(char32_t c) { return c >= 0xD800 && c < 0xDC00; }
constexpr bool is_low_half(char32_t c) { return c >= 0xDC00 && c < 0xE000; }

/// At most 100 characters, without control characters and without spaces around.
constexpr int most_characters = 100;

std::string description_of(cmsHPROFILE profile) {
  // Room for more characters than are kept, because some fall away; lcms2 cuts what is longer. It gives the
  // halves of characters beyond 16 bits one by one.
  std::array<wchar_t, 4 * most_characters> wide{};
  const auto bytes = static_cast<cmsUInt32Number>(sizeof wide);
  if (cmsGetProfileInfo(profile, cmsInfoDescription, "en", "US", wide.data(), bytes) == 0) return {};
  std::string text;
  int characters = 0;
  for (std::size_t i = 0; i < wide.size() && wide[i] != 0 && characters < most_characters; ++i) {
    auto c = static_cast<char32_t>(wide[i]);
    if (is_high_half(c) && i + 1 < wide.size() && is_low_half(static_cast<char32_t>(wide[i + 1])))
      c = 0x10000 + ((c - 0xD800) << 10) + (static_cast<char32_t>(wide[++i]) - 0xDC00);
    if (is_control(c) || is_high_half(c) || is_low_half(c) || c > 0x10FFFF) continue;
    if (c == ' ' && text.empty()) continue;
    append_utf8(text, c);
    ++characters;
  }
  text.erase(text.find_last_not_of(' ') + 1);
  return text;
}

bool reads(cmsHPROFILE profile, std::initializer_list<cmsTagSignature> tags) {
  for (const cmsTagSignature tag : tags)
    if (!cmsReadTag(profile, tag)) return false;
  return true;
}

/// Whether its colours can be converted to others. Asks for the tags that lcms2 looks for, in its order.
bool serves_as_source(cmsHPROFILE profile) {
  for (const cmsTagSignature table : {cmsSigDToB1Tag, cmsSigAToB1Tag, cmsSigAToB0Tag})
    if (cmsIsTag(profile, table)) return reads(profile, {table});
  switch (cmsGetColorSpace(profile)) {
  case cmsSigGrayData: return reads(profile, {cmsSigGrayTRCTag});
  case cmsSigRgbData:
    return reads(profile, {cmsSigRedColorantTag, cmsSigGreenColorantTag, cmsSigBlueColorantTag,
                           cmsSigRedTRCTag, cmsSigGreenTRCTag, cmsSigBlueTRCTag});
  default: return false;
  }
}

using Primaries = std::array<cmsCIEXYZ, 3>;

/// The triangle that the primaries span in the CIE 1976 u'v' diagram (CIE 15).
double area_of(const Primaries &primaries) {
  std::array<double, 3> u{}, v{};
  for (std::size_t i = 0; i < 3; ++i) {
    const cmsCIEXYZ &p = primaries[i];
    const double sum = p.X + 15 * p.Y + 3 * p.Z;
    if (!(std::abs(sum) > 1e-6)) return 0;
    u[i] = 4 * p.X / sum, v[i] = 9 * p.Y / sum;
  }
  return std::abs((u[1] - u[0]) * (v[2] - v[0]) - (u[2] - u[0]) * (v[1] - v[0])) / 2;
}

/// XYZ of pure red, green and blue against D50; zeros where they cannot be known.
Primaries primaries_of(const lcms::Context &context, const lcms::Profile &profile) {
  Primaries primaries{};
  constexpr std::array tags = {cmsSigRedColorantTag, cmsSigGreenColorantTag, cmsSigBlueColorantTag};
  if (reads(profile.get(), {tags[0], tags[1], tags[2]})) {
    for (std::size_t i = 0; i < 3; ++i)
      primaries[i] = *static_cast<const cmsCIEXYZ *>(cmsReadTag(profile.get(), tags[i]));
    return primaries;
  }
  const lcms::Profile xyz(cmsCreateXYZProfileTHR(context.get()));
  const auto transform = lcms::transform(context, profile, TYPE_RGB_DBL, xyz, TYPE_XYZ_DBL);
  constexpr std::array<double, 9> pure = {1, 0, 0, 0, 1, 0, 0, 0, 1};
  if (transform) cmsDoTransform(transform.get(), pure.data(), primaries.data(), 3);
  return primaries;
}

/// The triangle of sRGB: the colorants of IEC 61966-2-1 adapted to D50, as published with its profiles.
constexpr Primaries srgb = {
    {{0.43607, 0.22249, 0.01392}, {0.38515, 0.71687, 0.09708}, {0.14307, 0.06061, 0.71410}}};

/// See profile.h for the reason.
constexpr double clearly_wider = 1.15;

} // namespace

ProfileFacts read_profile(std::span<const std::uint8_t> icc) {
  ProfileFacts facts;
  const lcms::Context context = lcms::silent_context();
  const lcms::Profile profile = lcms::open(context, icc);
  if (!profile) {
    facts.broken = true;
    return facts;
  }
  facts.description = description_of(profile.get());
  facts.space = space_of(cmsGetColorSpace(profile.get()));
  facts.made_for = class_of(cmsGetDeviceClass(profile.get()));
  facts.broken = is_cut(icc) || !serves_as_source(profile.get());
  if (facts.space == ProfileSpace::rgb && !facts.broken)
    facts.wide_gamut = area_of(primaries_of(context, profile)) > clearly_wider * area_of(srgb);
  return facts;
}

} // namespace stoneproof
