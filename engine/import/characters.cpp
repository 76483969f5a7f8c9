// Codes and glyph names -> characters, from PoDoFo's tables. The only ways in are character_of_code and
// character_of_glyph; tested in tests/engine/import/fonts.test.cpp.
#include "engine/xml/characters.h"
#include "engine/import/fonts.h"

#include <podofo/podofo.h>

#include <charconv>

namespace stoneproof::finished {

namespace {

/// PoDoFo gives UTF-16 in the byte order of the file.
std::string of_big_endian(PoDoFo::pdf_utf16be unit) {
  const auto character = static_cast<char32_t>((unit & 0xff) << 8 | unit >> 8);
  return character == 0 ? std::string() : utf8_of(std::u32string_view(&character, 1));
}

} // namespace

std::string character_of_code(std::string_view encoding, unsigned code) {
  if (code > 255) return {};
  const PoDoFo::PdfEncoding *table = encoding == "MacRomanEncoding"
                                         ? PoDoFo::PdfEncodingFactory::GlobalMacRomanEncodingInstance()
                                         : PoDoFo::PdfEncodingFactory::GlobalWinAnsiEncodingInstance();
  try {
    return of_big_endian(table->GetCharCode(static_cast<int>(code)));
  } catch (const PoDoFo::PdfError &) {
    return {};
  }
}

std::string character_of_glyph(const std::string &glyph) {
  const std::string base = glyph.substr(0, glyph.find('.')); // what follows names a variant of the glyph
  if (base.size() >= 7 && base.compare(0, 3, "uni") == 0) {
    unsigned value = 0;
    const auto read = std::from_chars(base.data() + 3, base.data() + 7, value, 16);
    const auto character = static_cast<char32_t>(value);
    if (read.ec == std::errc() && read.ptr == base.data() + 7)
      return utf8_of(std::u32string_view(&character, 1));
  }
  return base.empty() ? std::string()
                      : of_big_endian(PoDoFo::PdfDifferenceEncoding::NameToUnicodeID(PoDoFo::PdfName(base)));
}

} // namespace stoneproof::finished
