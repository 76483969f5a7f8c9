// The printer's requirements as values. The printer's own specification always has the last word; the
// built-in sheet holds common practice.
#pragma once

#include "engine/book/book.h"
#include "engine/colour/profile.h"
#include "engine/units/density.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace stoneproof {

struct DensityBar {
  Density wanted; ///< below it, less the tolerance: a query
  Density least;  ///< below it, less the tolerance: a hold
};

/// Settings of a JPEG's quality, 1 to 100 (engine/measure/jpeg_quality.h).
struct QualityBar {
  int wanted = 1; ///< below it: a query
  int least = 1;  ///< below it: a hold
};

/// What is asked of a picture's tones (engine/measure/tone.h).
struct ToneBar {
  double clipped =
      1; ///< share of the shown part that may print as bare paper, or as one black: above it a query
  double range = 0; ///< share of the whole range that a photo's tones span: below it a query
};

/// Total area coverage: cyan + magenta + yellow + black.
struct InkBar {
  double most = 4; ///< 0 to 4: above it a hold for CMYK, a query for what is to be converted
  Length square;   ///< side of the printed square over which coverage is averaged
};

/// The ICC profile of the press with its paper, and what may lie beyond it.
struct PressProfile {
  std::string file;              ///< as the sheet names it
  std::vector<std::uint8_t> icc; ///< a whole profile of a CMYK output device
  ProfileFacts facts;
  double difference = 0; ///< CIEDE2000: a colour that comes out further off cannot be printed
  double share = 1;      ///< of the shown part that may not be printable: above it a query
};

enum class Format { jpeg, tiff, png, gif, webp, heic, avif };
inline constexpr Word<Format> format_words[] = {
    {Format::jpeg, "jpeg"}, {Format::tiff, "tiff"}, {Format::png, "png"},  {Format::gif, "gif"},
    {Format::webp, "webp"}, {Format::heic, "heic"}, {Format::avif, "avif"}};

enum class ColourModel { bilevel, gray, rgb, cmyk, lab, indexed, other };
inline constexpr Word<ColourModel> colour_words[] = {
    {ColourModel::bilevel, "bilevel"}, {ColourModel::gray, "gray"}, {ColourModel::rgb, "rgb"},
    {ColourModel::cmyk, "cmyk"},       {ColourModel::lab, "lab"},   {ColourModel::indexed, "indexed"},
    {ColourModel::other, "other"}};

struct PressSheet {
  std::string name;                  ///< as printed on the proof
  std::string source;                ///< the file it was read from, or "built in"
  std::array<DensityBar, 4> density; ///< by Use
  double density_tolerance = 0;      ///< share by which a density may fall short, e.g. 0.01
  double stretch_tolerance = 0;      ///< share by which the two axes' densities may differ
  Edges bleed, safe_margin;          ///< the least the printer accepts; a book may ask more of itself
  Length cut_tolerance;  ///< how far the cut may wander: nearer to the trim than this is a near miss
  int page_multiple = 1; ///< the page count must be a multiple of this
  Density flatbed_limit; ///< the highest setting at which a usual flatbed scanner still gains detail
  QualityBar jpeg_quality;
  ToneBar tone;
  InkBar ink;
  std::shared_ptr<const PressProfile> profile; ///< none: the sheet names none
  std::vector<Format> formats;                 ///< accepted
  std::vector<ColourModel> colours;            ///< accepted

  bool accepts(Format format) const {
    return std::find(formats.begin(), formats.end(), format) != formats.end();
  }
  bool accepts(ColourModel colour) const {
    return std::find(colours.begin(), colours.end(), colour) != colours.end();
  }
  /// Whether a density lies below a bar by more than the tolerance. The rounding of doubles, far below a
  /// pixel, must not fail a picture that is at the bar.
  bool falls_short(Density found, Density bar) const {
    constexpr double doubles = 1e-9;
    return found < bar * ((1 - density_tolerance) * (1 - doubles));
  }
  const DensityBar &bar(Use use) const { return density[static_cast<std::size_t>(use)]; }
};

} // namespace stoneproof
