// An installed TrueType font, as far as a PDF needs to know it.
#pragma once

#include <array>
#include <filesystem>
#include <string>

namespace stoneproof::demo {

/// Lengths are in thousandths of the type size, as PDF counts them (ISO 32000-1, 9.8).
struct TrueType {
  std::string bytes; ///< the whole file
  std::array<int, 4> box{};
  int ascent = 0, descent = 0;
  double slant = 0;                ///< degrees; leaning to the right is negative
  std::array<int, 256> advances{}; ///< by codes of WinAnsiEncoding; 0 where the font has no such character
};

/// Throws std::runtime_error naming the file when it cannot be read.
TrueType read_true_type(const std::filesystem::path &file);

/// The code of a character in WinAnsiEncoding (ISO 32000-1, Annex D), as far as the postcards use it:
/// Latin-1, quotation marks and dashes. Throws std::runtime_error for others.
unsigned char win_ansi(char32_t character);

} // namespace stoneproof::demo
