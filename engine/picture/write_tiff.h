// Writes pixels that are already in memory as a TIFF file (TIFF 6.0).
#pragma once

#include "engine/outcome.h"
#include "engine/units/geometry.h"

#include <array>
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof {

enum class TiffColours { black_is_zero, white_is_zero, rgb, cmyk, icc_lab, palette };

struct TiffForm {
  PixelSize size;
  int channels = 3, bits = 8; ///< of a sample: 1, 2, 4, 8 or 16
  TiffColours colours = TiffColours::rgb;
  std::vector<std::array<std::uint8_t, 3>> palette; ///< RGB of each value
  std::string icc;                                  ///< a whole profile; empty: none

  std::size_t row_bytes() const { return static_cast<std::size_t>((size.width * channels * bits + 7) / 8); }
};

/// `rows`: row after row from the top, each from a byte of its own, samples of 16 bits with the high byte
/// first. Rows that are missing are zero. Faults: the file cannot be written; `where` is the path.
Outcome<Done> write_tiff(const std::filesystem::path &file, const TiffForm &form, std::string_view rows);

/// How a fax is coded (ITU-T T.4 and T.6; ISO 32000-1, table 11).
struct FaxForm {
  PixelSize size;
  int k = 0;                 ///< below 0: Group 4; 0: Group 3 of one dimension; above: of two
  bool byte_aligned = false; ///< each row begins a byte
  bool inverted = false;     ///< its black runs show white
};

/// The coded data as it is, in one strip.
Outcome<Done> write_fax_tiff(const std::filesystem::path &file, const FaxForm &form, std::string_view coded);

} // namespace stoneproof
