// Converts every quantised colour of a source to the press's inks and back to what the press then shows. Only
// way in: PressTable::make. Tested in tests/engine/colour/press_table.test.cpp and, against another program's
// reckoning, in tests/outside/colour.test.cpp.
#include "engine/colour/press_table.h"

#include "engine/colour/difference.h"
#include "engine/colour/lcms.h"

#include <array>
#include <optional>
#include <utility>

namespace stoneproof {

namespace {

constexpr const char *of_press = "the press's colour profile", *of_picture = "the picture's colour profile";
constexpr const char *ask_printer =
    "Ask the printer for the ICC profile of the press and paper, of kind CMYK output.";
constexpr const char *save_again =
    "Open the picture in a picture editor, give it the profile sRGB by conversion, and save it again.";

std::optional<Fault> fault_of_press(std::span<const std::uint8_t> icc) {
  const ProfileFacts facts = read_profile(icc);
  if (facts.space == ProfileSpace::other && facts.broken)
    return Fault{"this is not a colour profile that can be read", of_press, ask_printer};
  if (facts.space != ProfileSpace::cmyk || facts.made_for != ProfileClass::output)
    return Fault{"this profile is not one of a press that prints with cyan, magenta, yellow and black",
                 of_press, ask_printer};
  if (facts.broken) return Fault{"the profile is damaged or incomplete", of_press, ask_printer};
  return std::nullopt;
}

std::optional<Fault> fault_of_source(std::span<const std::uint8_t> icc, ProfileSpace space) {
  if (space == ProfileSpace::cmyk)
    return Fault{"the picture is in printing inks already; only RGB and gray pictures are converted",
                 of_picture, "Ask for the picture in RGB, as it was before its conversion to inks."};
  if (space != ProfileSpace::rgb && space != ProfileSpace::gray)
    return Fault{"the picture is neither RGB nor gray", of_picture, save_again};
  if (icc.empty()) return std::nullopt;
  const ProfileFacts facts = read_profile(icc);
  if (facts.broken) return Fault{"the profile is damaged or incomplete", of_picture, save_again};
  if (facts.space != space)
    return Fault{space == ProfileSpace::gray ? "the picture is gray, but its profile is for other colours"
                                             : "the picture is RGB, but its profile is for other colours",
                 of_picture, save_again};
  return std::nullopt;
}

/// The curve of IEC 61966-2-1: code value to light.
lcms::Curve srgb_curve(const lcms::Context &context) {
  constexpr double parameters[] = {2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045};
  return lcms::Curve(cmsBuildParametricToneCurve(context.get(), 4, parameters));
}

lcms::Profile open_source(const lcms::Context &context, std::span<const std::uint8_t> icc,
                          ProfileSpace space) {
  if (!icc.empty()) return lcms::open(context, icc);
  if (space == ProfileSpace::rgb) return lcms::Profile(cmsCreate_sRGBProfileTHR(context.get()));
  const lcms::Curve curve = srgb_curve(context);
  return lcms::Profile(cmsCreateGrayProfileTHR(context.get(), cmsD50_xyY(), curve.get()));
}

/// Black point compensation (ISO 18619:2015): along each axis of XYZ, white stays and the source's black
/// becomes the press's. What the press is meant to show, and does show where its gamut reaches; without it
/// every shadow would count as out of gamut, because no press prints black as dark as a screen.
class Aim {
public:
  Aim(const lcms::Profile &source, const lcms::Profile &press) {
    cmsCIEXYZ from{}, to{};
    cmsDetectBlackPoint(&from, source.get(), INTENT_RELATIVE_COLORIMETRIC, 0);
    cmsDetectDestinationBlackPoint(&to, press.get(), INTENT_RELATIVE_COLORIMETRIC, 0);
    const cmsCIEXYZ &white = *cmsD50_XYZ();
    x_ = {from.X, to.X, white.X}, y_ = {from.Y, to.Y, white.Y}, z_ = {from.Z, to.Z, white.Z};
  }
  Lab of(const cmsCIEXYZ &source) const {
    const cmsCIEXYZ meant = {x_.of(source.X), y_.of(source.Y), z_.of(source.Z)};
    cmsCIELab lab;
    cmsXYZ2Lab(cmsD50_XYZ(), &lab, &meant);
    return {lab.L, lab.a, lab.b};
  }

private:
  struct Axis {
    double from = 0, to = 0, white = 1;
    double of(double value) const { return to + (value - from) * (white - to) / (white - from); }
  };
  Axis x_, y_, z_;
};

/// The three conversions of one pair of profiles. Null handles where a profile lacks what they need.
struct Conversions {
  Conversions(const lcms::Context &context, const lcms::Profile &source, bool gray,
              const lcms::Profile &press) {
    const lcms::Profile xyz(cmsCreateXYZProfileTHR(context.get()));
    const lcms::Profile lab(cmsCreateLab4ProfileTHR(context.get(), nullptr));
    const cmsUInt32Number format = gray ? TYPE_GRAY_16 : TYPE_RGB_16;
    seen = lcms::transform(context, source, format, xyz, TYPE_XYZ_DBL);
    inked = lcms::transform(context, source, format, press, TYPE_CMYK_16, cmsFLAGS_BLACKPOINTCOMPENSATION);
    shown = lcms::transform(context, press, TYPE_CMYK_16, lab, TYPE_Lab_DBL);
  }
  lcms::Transform seen;  ///< source to XYZ
  lcms::Transform inked; ///< source to inks
  lcms::Transform shown; ///< inks to Lab on the paper
};

using Samples = std::vector<std::uint16_t>; ///< 65535 is full light, or 100 % of one ink

/// In tenths of a percent.
unsigned total_of(const std::uint16_t *ink) {
  const unsigned sum = unsigned{ink[0]} + ink[1] + ink[2] + ink[3];
  return (sum * 1000 + 32767) / 65535;
}

/// The middle of the four 8-bit levels that 6 leading bits stand for, 4 q + 1.5, as 16 bits.
std::uint16_t middle_of(unsigned q) { return static_cast<std::uint16_t>((8 * q + 3) * 257 / 2); }

/// All greens and blues of one red, in the order of the cells.
Samples colours_of(unsigned red) {
  Samples samples;
  samples.reserve(3 * 64 * 64);
  for (unsigned green = 0; green < 64; ++green)
    for (unsigned blue = 0; blue < 64; ++blue)
      samples.insert(samples.end(), {middle_of(red), middle_of(green), middle_of(blue)});
  return samples;
}

Samples all_grays() {
  Samples samples;
  for (unsigned gray = 0; gray < 256; ++gray) samples.push_back(static_cast<std::uint16_t>(gray * 257));
  return samples;
}

} // namespace

Outcome<PressTable> PressTable::make(std::span<const std::uint8_t> source_icc, ProfileSpace source_space,
                                     std::span<const std::uint8_t> press_icc, double difference_limit) {
  if (auto fault = fault_of_source(source_icc, source_space)) return *std::move(fault);
  if (auto fault = fault_of_press(press_icc)) return *std::move(fault);
  const bool gray = source_space == ProfileSpace::gray;
  const lcms::Context context = lcms::silent_context();
  const lcms::Profile press = lcms::open(context, press_icc);
  const lcms::Profile source = open_source(context, source_icc, source_space);
  if (!press || !source) return Fault{"there is not enough memory", of_press, "Close other programs."};
  const Conversions to(context, source, gray, press);
  if (!to.seen) return Fault{"the profile lacks the tables of a conversion", of_picture, save_again};
  if (!to.inked || !to.shown)
    return Fault{"the profile lacks the tables of a conversion to inks and back", of_press, ask_printer};

  const Aim aim(source, press);
  std::vector<std::uint16_t> cells;
  cells.reserve(gray ? 256 : 64 * 64 * 64);
  const auto add = [&](const Samples &samples) {
    const std::size_t count = samples.size() / (gray ? 1 : 3);
    std::vector<cmsCIEXYZ> seen(count);
    std::vector<cmsCIELab> shown(count);
    Samples ink(4 * count);
    const auto n = static_cast<cmsUInt32Number>(count);
    cmsDoTransform(to.seen.get(), samples.data(), seen.data(), n);
    cmsDoTransform(to.inked.get(), samples.data(), ink.data(), n);
    cmsDoTransform(to.shown.get(), ink.data(), shown.data(), n);
    for (std::size_t i = 0; i < count; ++i) {
      const bool out = ciede2000(aim.of(seen[i]), {shown[i].L, shown[i].a, shown[i].b}) > difference_limit;
      cells.push_back(static_cast<std::uint16_t>(total_of(&ink[4 * i]) | (out ? out_bit : 0u)));
    }
  };
  if (gray)
    add(all_grays());
  else
    for (unsigned red = 0; red < 64; ++red) add(colours_of(red));
  return PressTable(source_space, std::move(cells));
}

} // namespace stoneproof
