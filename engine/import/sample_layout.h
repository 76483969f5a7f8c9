// The samples of a decoded picture of a PDF, and how they become those of a TIFF (ISO 32000-1, 8.6
// and 8.9.5).
#pragma once

#include "engine/import/pdf_file.h"
#include "engine/picture/write_tiff.h"

#include <optional>
#include <string>
#include <vector>

namespace stoneproof::finished {

enum class Colours { gray, rgb, cmyk, lab, indexed, inks };

/// A colour space as far as the samples need it.
struct ColourSpace {
  Colours colours = Colours::gray;
  int channels = 1;
  std::string icc; ///< a whole profile; empty: none
  std::vector<double> lab_range{-100, 100, -100, 100};
  std::vector<std::string> inks; ///< names of Separation and DeviceN
  std::string lookup;            ///< of an indexed space: `base_channels` bytes an entry
  int base_channels = 3;
  Colours base = Colours::rgb;
};

/// None: it is none of ISO 32000-1. `colours` are the resources in which an inline image's names are looked
/// up.
std::optional<ColourSpace> colour_space_of(const PdfFile &file, const Object &space, const Object &colours);

/// What a dictionary says of its samples.
struct Samples {
  PixelSize size;
  int bits = 8;
  bool stencil = false;
  std::vector<double> decode; ///< empty: the default of the space
  ColourSpace space;

  std::size_t row_bytes() const {
    return static_cast<std::size_t>((size.width * space.channels * bits + 7) / 8);
  }
};

/// None where size, bits or colour space make no sense. A picture has at most `most_pixels`.
std::optional<Samples> samples_of(const PdfFile &file, const Object &dictionary, const Object &colours);
inline constexpr std::int64_t most_pixels = 1'000'000'000;

/// The decoded rows as a TIFF wants them.
struct TiffRows {
  TiffForm form;
  std::string rows;
};
TiffRows tiff_rows(const Samples &samples, std::string decoded);

/// Whether the decode array turns black and white round.
bool inverted(const Samples &samples);

} // namespace stoneproof::finished
