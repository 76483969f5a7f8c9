// One font of the documents: its measures, its shaping and its subsets, on top of HarfBuzz.
#pragma once

#include "engine/destroy.h"
#include "engine/outcome.h"
#include "reports/type/font_facts.h"
#include "reports/type/font_search.h"
#include "reports/type/font_subset.h"
#include "reports/type/shaped_line.h"
#include "reports/type/spans.h"

#include <hb.h>
#include <memory>
#include <string>
#include <vector>

namespace stoneproof {

using HbBuffer = std::unique_ptr<hb_buffer_t, Destroy<hb_buffer_destroy>>;

/// Never changes once made; any number of threads may use it.
class Font {
public:
  /// Fails when the file is no font, or one without outlines that a PDF can hold: TrueType's or CFF's.
  /// `language` is a BCP 47 tag or empty: of a sign that languages write in different ways, its way is set.
  static Outcome<Font> load(const FontFile &file, const std::string &language);

  const FontFacts &facts() const { return facts_; }
  int advance(GlyphId glyph) const;
  bool has(char32_t character) const;
  /// Shapes part of a line into `buffer`; clusters are indexes into `text`, glyphs come in visual order.
  /// Kerning is on, ligatures of choice are off. A character without a glyph becomes `missing`.
  void shape(std::u32string_view text, const TextSpan &span, hb_buffer_t *buffer, GlyphId missing) const;
  /// A white square (U+25A1), or glyph 0 if the font has none: what is set for characters that no font has. A
  /// document that is to be kept may not use glyph 0 (ISO 19005-3, 6.2.11.8).
  GlyphId square() const { return square_; }
  /// The outlines of these glyphs, of what they are made of and of glyph 0, without layout tables. The same
  /// glyphs give the same bytes, whatever their order.
  Outcome<FontSubset> subset(const std::vector<GlyphId> &glyphs) const;

private:
  std::unique_ptr<hb_font_t, Destroy<hb_font_destroy>> font_;
  hb_language_t language_ = HB_LANGUAGE_INVALID;
  FontFacts facts_;
  Outlines outlines_ = Outlines::true_type;
  GlyphId square_ = 0;
};

} // namespace stoneproof
