// Measures and shapes lines of text in the faces of our documents.
#pragma once

#include "engine/outcome.h"
#include "engine/units/length.h"
#include "reports/type/face.h"
#include "reports/type/font_facts.h"
#include "reports/type/font_subset.h"
#include "reports/type/shaped_line.h"

#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace stoneproof {

class Font;

/// Loaded once; cheap to copy; any number of threads may measure with it. Lines are UTF-8; no input is
/// refused: a byte that is not UTF-8 or a control character is set as U+FFFD, tab and line ends as a space. A
/// soft hyphen is a place to break a line, not a sign: inside a line it is not set. A character that the face
/// lacks comes from the fallback font, or from another installed one (bold for a bold face, where there is
/// one) where it was in the words it was loaded for; one that no font has is a white square.
class Typesetter {
public:
  /// Fails when a font is not installed; the Fault names its family and the Debian package. For characters in
  /// `words` that our fonts lack, like those of Chinese, Japanese and Korean, other installed fonts are
  /// looked for. `language` is a BCP 47 tag: of signs that languages write in different ways, like the
  /// ideographs that Chinese and Japanese share, its way is set; empty: that of the fonts.
  static Outcome<Typesetter> load(std::string_view words = {}, const std::string &language = {});

  /// From the first origin to the last. Nothing kerns with a space (U+0020), so the widths of words and of
  /// the spaces between them add up to that of the line, to a few ticks. Words met before in the same thread
  /// cost a look-up.
  Length width(Face face, Length size, std::string_view line) const;
  ShapedLine shape(Face face, std::string_view line) const;

  Length ascent(Face face, Length size) const; ///< from the baseline up to the top of the line
  Length descent(Face face,
                 Length size) const; ///< from the baseline down to the bottom of the line, positive
  Length cap_height(Face face, Length size) const;

  /// What a writer needs to embed a font of a ShapedRun.
  const FontFacts &facts(FontId font) const;
  int advance(FontId font, GlyphId glyph) const; ///< before kerning, font units
  Outcome<FontSubset> subset(FontId font, const std::vector<GlyphId> &glyphs) const; ///< see font.h

private:
  explicit Typesetter(std::shared_ptr<const std::vector<Font>> fonts) : fonts_(std::move(fonts)) {}
  const Font &font_of(Face face) const;

  std::shared_ptr<const std::vector<Font>> fonts_;
};

} // namespace stoneproof
