// The fonts of a PDF as far as placing text needs them: widths, heights, characters (ISO 32000-1, 9.6
// to 9.10).
#pragma once

#include "engine/import/pdf_file.h"
#include "engine/import/plane.h"

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace stoneproof::finished {

struct Font {
  std::string name;                                     ///< as the file names it, without the tag of a subset
  bool embedded = false;                                ///< its outlines are in the file
  bool type3 = false;                                   ///< its glyphs are content streams
  bool two_bytes = false;                               ///< a composite font: two bytes a code
  std::unordered_map<unsigned, double> widths;          ///< thousandths of the em
  double other_width = 0;                               ///< of all other codes
  double ascent = 0.75, descent = -0.25;                ///< shares of the em
  std::unordered_map<unsigned, std::string> characters; ///< UTF-8 by code
  Matrix glyph_space{0.001, 0, 0, 0.001, 0, 0};         ///< of a Type 3 font its own
  std::unordered_map<unsigned, Object>
      pictures; ///< of a Type 3 font the glyphs by code that may hold pictures
  Object dictionary;

  double width_of(unsigned code) const;
  /// U+FFFD where the file does not tell.
  const std::string &character_of(unsigned code) const;
};

/// Never fails: what is missing has the defaults above.
Font read_font(const PdfFile &file, const Object &dictionary);

/// The characters of a ToUnicode map (Adobe Technical Note 5411), by code.
std::unordered_map<unsigned, std::string> read_to_unicode(std::string_view map);

/// The character of a code in an encoding by its PDF name (ISO 32000-1, annex D), WinAnsi where it is
/// another; empty where there is none.
std::string character_of_code(std::string_view encoding, unsigned code);
/// The character of a glyph's name (Adobe Glyph List); empty where it is none of the list.
std::string character_of_glyph(const std::string &glyph);

/// Widths by code, in thousandths of the em, in one of the 14 fonts that every reader has (ISO 32000-1,
/// 9.6.2.2), for codes with these characters; of Symbol and ZapfDingbats for their own codes. Empty where the
/// name is none of theirs.
std::unordered_map<unsigned, double>
standard_widths(std::string_view name, const std::unordered_map<unsigned, std::string> &characters);

} // namespace stoneproof::finished
