// The few Exif tags that facts need, through libexif.
#pragma once

#include "engine/picture/facts.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace stoneproof {

struct ExifFacts {
  int orientation = 1;    ///< 1 to 8; anything else in the file counts as 1
  double x = 0, y = 0;    ///< resolution; 0 where the file gives none
  double unit_inches = 1; ///< the length that x and y count their pixels over: 1 in, or 1 cm = 1/2.54 in
  ColourTag colour = ColourTag::none; ///< srgb, adobe or none
  std::string device;                 ///< as in Facts
  bool camera = false;                ///< as in Facts
};

/// "Maker Model", the maker once; what is not printable ASCII, and space at either end, is left out.
std::string device_name(std::string_view maker, std::string_view model);

/// `segment` is the content of an APP1 segment. Nothing when it is not Exif.
std::optional<ExifFacts> read_exif(std::span<const std::uint8_t> segment);

} // namespace stoneproof
