// The fonts of a PDF as they are filled: which glyph, standing for which characters, has which code.
#pragma once

#include "reports/type/shaped_line.h"

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace stoneproof::pdf {

/// A glyph and the characters it stands for; none if another glyph stands for them too.
struct CodedGlyph {
  GlyphId glyph = 0;
  std::u32string text;
  auto operator<=>(const CodedGlyph &) const = default;
};

/// One font of the PDF. The code of codes[i] is i + 1; code 0 is the missing glyph.
struct PdfFont {
  FontId font = 0;
  std::vector<CodedGlyph> codes;
};

struct GlyphCode {
  std::size_t font = 0; ///< index into FontTable::fonts()
  std::uint16_t code = 0;
};

/// Gives codes in the order of first use. A glyph has a code of its own for each text that it stands for: a
/// space and a no-break space look alike but are read back as what they were.
class FontTable {
public:
  GlyphCode code_of(FontId font, GlyphId glyph, std::u32string_view text);
  const std::vector<PdfFont> &fonts() const { return fonts_; }

private:
  std::size_t font_with_room(FontId font);

  std::vector<PdfFont> fonts_;
  std::map<std::pair<FontId, CodedGlyph>, GlyphCode> known_;
  std::map<FontId, std::size_t> open_; ///< the PDF font that takes new codes
};

/// The name of a font in the resources of every page.
std::string font_name(std::size_t font);

} // namespace stoneproof::pdf
