// Widths of the fonts that every reader has, from PoDoFo's tables. The only way in is standard_widths; tested
// in tests/engine/import/fonts.test.cpp.
#include "engine/import/fonts.h"
#include "engine/xml/characters.h"

#include <podofo/podofo.h>

#include <memory>

namespace stoneproof::finished {

namespace {

struct Family {
  std::string_view begins; ///< of a font's name
  const char *plain, *bold, *sloped, *both;
};

/// The names of ISO 32000-1, 9.6.2.2, and those by which older programs meant the same fonts (from memory).
constexpr Family families[] = {
    {"Helvetica", "Helvetica", "Helvetica-Bold", "Helvetica-Oblique", "Helvetica-BoldOblique"},
    {"Arial", "Helvetica", "Helvetica-Bold", "Helvetica-Oblique", "Helvetica-BoldOblique"},
    {"Times", "Times-Roman", "Times-Bold", "Times-Italic", "Times-BoldItalic"},
    {"Courier", "Courier", "Courier-Bold", "Courier-Oblique", "Courier-BoldOblique"},
    {"Symbol", "Symbol", "Symbol", "Symbol", "Symbol"},
    {"ZapfDingbats", "ZapfDingbats", "ZapfDingbats", "ZapfDingbats", "ZapfDingbats"}};

/// Null: it is none of them.
const char *standard_name(std::string_view name) {
  for (const Family &family : families) {
    if (!name.starts_with(family.begins)) continue;
    const bool bold = name.find("Bold") != std::string_view::npos;
    const bool sloped =
        name.find("Oblique") != std::string_view::npos || name.find("Italic") != std::string_view::npos;
    return bold && sloped ? family.both : bold ? family.bold : sloped ? family.sloped : family.plain;
  }
  return nullptr;
}

} // namespace

std::unordered_map<unsigned, double>
standard_widths(std::string_view name, const std::unordered_map<unsigned, std::string> &characters) {
  std::unordered_map<unsigned, double> widths;
  const char *standard = standard_name(name);
  if (!standard) return widths;
  try {
    PoDoFo::PdfVecObjects objects;
    objects.SetAutoDelete(true);
    const std::unique_ptr<PoDoFo::PdfFont> font(PoDoFo::PdfFontFactory::CreateBase14Font(
        standard, PoDoFo::ePdfFont_Normal, PoDoFo::PdfEncodingFactory::GlobalWinAnsiEncodingInstance(),
        &objects));
    font->SetFontSize(1000);
    const PoDoFo::PdfFontMetrics &metrics = *font->GetFontMetrics();
    const bool own_codes = name.starts_with("Symbol") || name.starts_with("Zapf");
    for (unsigned code = 32; own_codes && code < 256; ++code)
      widths[code] = metrics.CharWidth(static_cast<unsigned char>(code));
    for (const auto &[code, text] : characters)
      if (const char32_t character = decode(text, 0).character; !own_codes && character < 0x10000)
        widths[code] = metrics.UnicodeCharWidth(static_cast<unsigned short>(character));
  } catch (const PoDoFo::PdfError &) {
    widths.clear();
  }
  return widths;
}

} // namespace stoneproof::finished
