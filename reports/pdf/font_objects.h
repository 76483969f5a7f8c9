// The objects that embed a font in a PDF.
#pragma once

#include "engine/outcome.h"
#include "reports/pdf/font_table.h"
#include "reports/pdf/object_file.h"
#include "reports/type/typesetter.h"

#include <string>

namespace stoneproof::pdf {

/// Writes a Type0 font over a subset, TrueType or CFF, of just the glyphs that `font` uses, with their widths
/// and what they mean, and gives the number of the font dictionary.
Outcome<ObjectNumber> write_font(ObjectFile &file, const PdfFont &font, const Typesetter &typesetter);

/// The CMap that tells which characters each code stands for.
std::string to_unicode_cmap(const PdfFont &font);

} // namespace stoneproof::pdf
