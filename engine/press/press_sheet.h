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

/// How many pages a book of one binding may have.
struct PageCountBar {
  int multiple = 1;  ///< the page count must be a multiple of this
  int least = 1;     ///< fewer: a hold
  int most = 99'999; ///< more: a hold
};

/// From so many pages on, text and pictures that are not cut keep this distance from the binding.
struct InsideMargin {
  int from = 1; ///< pages
  Length least;
};

/// What a spine may come out at, and what may be printed on it.
struct SpineBar {
  Length leaf_tolerance; ///< by which the thickness of a single leaf may differ from what was told
  Length text_from;      ///< a thinner spine carries no text
  Length text_clear;     ///< between text and either fold of the spine
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

/// What a finished PDF may hold.
struct FinishedPdfBar {
  Length thinnest_line = Length::of_pt(0.25); ///< thinner: a query
  bool transparency = true;                   ///< accepted; else a query
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
  Length fold_tolerance; ///< how far a fold may wander
  std::array<PageCountBar, 5> page_counts;  ///< by BindingKind
  std::vector<InsideMargin> inside_margins; ///< rising; none: the safe margin alone counts
  SpineBar spine;
  bool creep_compensated = false;   ///< the printer moves the pages of a stapled book against its creep
  std::array<Length, 5> least_type; ///< by TextKind: smaller type is a query
  Density flatbed_limit; ///< the highest setting at which a usual flatbed scanner still gains detail
  QualityBar jpeg_quality;
  ToneBar tone;
  InkBar ink;
  FinishedPdfBar finished_pdf;
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
  const PageCountBar &page_count(BindingKind kind) const {
    return page_counts[static_cast<std::size_t>(kind)];
  }
  Length least_type_of(TextKind kind) const { return least_type[static_cast<std::size_t>(kind)]; }
  /// What the sheet asks at the binding of a book of so many pages.
  Length inside_margin(std::size_t pages) const {
    Length least;
    for (const InsideMargin &margin : inside_margins)
      if (pages >= static_cast<std::size_t>(margin.from)) least = margin.least;
    return least;
  }
};

} // namespace stoneproof
