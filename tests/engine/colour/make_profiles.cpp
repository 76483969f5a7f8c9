// Makes profiles with lcms2. Ways in: those of make_profiles.h.
#include "tests/engine/colour/make_profiles.h"

#include <algorithm>
#include <array>
#include <lcms2.h>
#include <stdexcept>

namespace stoneproof::made {

namespace {

void must(bool done) {
  if (!done) throw std::runtime_error("lcms2 cannot make a profile");
}

cmsHPROFILE open_rgb(const RgbSpace &space) {
  const auto xyY = [](Chromaticity c) { return cmsCIExyY{c.x, c.y, 1}; };
  const cmsCIExyY white = xyY(space.white);
  const cmsCIExyYTRIPLE primaries = {xyY(space.red), xyY(space.green), xyY(space.blue)};
  cmsToneCurve *curve = cmsBuildGamma(nullptr, space.gamma);
  cmsToneCurve *curves[] = {curve, curve, curve};
  const cmsHPROFILE profile = cmsCreateRGBProfile(&white, &primaries, curves);
  cmsFreeToneCurve(curve);
  must(profile != nullptr);
  return profile;
}

Bytes saved(cmsHPROFILE profile) {
  cmsUInt32Number size = 0;
  must(cmsSaveProfileToMem(profile, nullptr, &size) != 0);
  Bytes bytes(size);
  must(cmsSaveProfileToMem(profile, bytes.data(), &size) != 0);
  cmsCloseProfile(profile);
  return bytes;
}

cmsHPROFILE blank(cmsProfileClassSignature kind, cmsColorSpaceSignature space) {
  const cmsHPROFILE profile = cmsCreateProfilePlaceholder(nullptr);
  must(profile != nullptr);
  cmsSetProfileVersion(profile, 4.3);
  cmsSetDeviceClass(profile, kind);
  cmsSetColorSpace(profile, space);
  cmsSetPCS(profile, cmsSigLabData);
  must(cmsWriteTag(profile, cmsSigMediaWhitePointTag, cmsD50_XYZ()) != 0);
  return profile;
}

/// A table of `points` along each axis, filled by `sampler`, which gets `cargo`.
void write_table(cmsHPROFILE profile, cmsTagSignature tag, cmsUInt32Number points, cmsUInt32Number in,
                 cmsUInt32Number out, cmsSAMPLER16 sampler, void *cargo) {
  cmsPipeline *pipeline = cmsPipelineAlloc(nullptr, in, out);
  cmsStage *table = cmsStageAllocCLut16bit(nullptr, points, in, out, nullptr);
  must(cmsStageSampleCLut16bit(table, sampler, cargo, 0) != 0);
  for (cmsStage *stage :
       {cmsStageAllocToneCurves(nullptr, in, nullptr), table, cmsStageAllocToneCurves(nullptr, out, nullptr)})
    must(cmsPipelineInsertStage(pipeline, cmsAT_END, stage) != 0);
  must(cmsWriteTag(profile, tag, pipeline) != 0);
  cmsPipelineFree(pipeline);
}

/// The display whose colours the press prints: the primaries of sRGB drawn towards white.
constexpr RgbSpace dull = {d65, {0.52, 0.33}, {0.31, 0.48}, {0.20, 0.16}};
constexpr double darkest = 0.11; ///< of its 0 to 1: what full ink leaves

struct Dull {
  Dull() {
    const cmsHPROFILE rgb = open_rgb(dull), lab = cmsCreateLab4Profile(nullptr);
    to_lab = cmsCreateTransform(rgb, TYPE_RGB_DBL, lab, TYPE_Lab_16, INTENT_RELATIVE_COLORIMETRIC, 0);
    from_lab = cmsCreateTransform(lab, TYPE_Lab_16, rgb, TYPE_RGB_DBL, INTENT_RELATIVE_COLORIMETRIC, 0);
    cmsCloseProfile(rgb);
    cmsCloseProfile(lab);
    must(to_lab && from_lab);
  }
  Dull(const Dull &) = delete;
  Dull &operator=(const Dull &) = delete;
  ~Dull() {
    cmsDeleteTransform(to_lab);
    cmsDeleteTransform(from_lab);
  }
  cmsHTRANSFORM to_lab = nullptr, from_lab = nullptr;
};

cmsInt32Number show_ink(const cmsUInt16Number ink[], cmsUInt16Number lab[], void *cargo) {
  std::array<double, 3> rgb{};
  for (std::size_t i = 0; i < 3; ++i)
    rgb[i] = darkest + (1 - darkest) * (1 - ink[i] / 65535.0) * (1 - ink[3] / 65535.0);
  cmsDoTransform(static_cast<const Dull *>(cargo)->to_lab, rgb.data(), lab, 1);
  return 1;
}

cmsInt32Number ink_for(const cmsUInt16Number lab[], cmsUInt16Number ink[], void *cargo) {
  std::array<double, 3> rgb{};
  cmsDoTransform(static_cast<const Dull *>(cargo)->from_lab, lab, rgb.data(), 1);
  for (std::size_t i = 0; i < 3; ++i) {
    const double light = std::clamp((rgb[i] - darkest) / (1 - darkest), 0.0, 1.0);
    ink[i] = static_cast<cmsUInt16Number>((1 - light) * 65535 + 0.5);
  }
  ink[3] = 0;
  return 1;
}

cmsInt32Number convert(const cmsUInt16Number in[], cmsUInt16Number out[], void *cargo) {
  cmsDoTransform(static_cast<cmsHTRANSFORM>(cargo), in, out, 1);
  return 1;
}

} // namespace

Bytes rgb_profile(const RgbSpace &space) { return saved(open_rgb(space)); }

Bytes rgb_table_profile(const RgbSpace &space) {
  const cmsHPROFILE rgb = open_rgb(space), lab = cmsCreateLab4Profile(nullptr);
  const cmsHTRANSFORM to_lab =
      cmsCreateTransform(rgb, TYPE_RGB_16, lab, TYPE_Lab_16, INTENT_RELATIVE_COLORIMETRIC, 0);
  must(to_lab != nullptr);
  const cmsHPROFILE profile = blank(cmsSigInputClass, cmsSigRgbData);
  write_table(profile, cmsSigAToB0Tag, 17, 3, 3, convert, to_lab);
  cmsDeleteTransform(to_lab);
  cmsCloseProfile(rgb);
  cmsCloseProfile(lab);
  return saved(profile);
}

Bytes gray_profile(double gamma) {
  cmsToneCurve *curve = cmsBuildGamma(nullptr, gamma);
  const cmsHPROFILE profile = cmsCreateGrayProfile(cmsD50_xyY(), curve);
  cmsFreeToneCurve(curve);
  must(profile != nullptr);
  return saved(profile);
}

Bytes press_without_tables() { return saved(blank(cmsSigOutputClass, cmsSigCmykData)); }

Bytes press_profile() {
  Dull display;
  const cmsHPROFILE profile = blank(cmsSigOutputClass, cmsSigCmykData);
  write_table(profile, cmsSigAToB0Tag, 11, 4, 3, show_ink, &display);
  write_table(profile, cmsSigBToA0Tag, 41, 3, 4, ink_for, &display);
  must(cmsLinkTag(profile, cmsSigAToB1Tag, cmsSigAToB0Tag) != 0);
  must(cmsLinkTag(profile, cmsSigBToA1Tag, cmsSigBToA0Tag) != 0);
  return saved(profile);
}

Bytes named_profile(const std::vector<Named> &names, double version) {
  const cmsHPROFILE profile = open_rgb(srgb);
  cmsSetProfileVersion(profile, version);
  cmsMLU *texts = cmsMLUalloc(nullptr, static_cast<cmsUInt32Number>(names.size()));
  for (const Named &name : names)
    must(cmsMLUsetWide(texts, name.language.c_str(), "US", name.text.c_str()) != 0);
  must(cmsWriteTag(profile, cmsSigProfileDescriptionTag, texts) != 0);
  cmsMLUfree(texts);
  return saved(profile);
}

} // namespace stoneproof::made
