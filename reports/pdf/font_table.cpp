// Hands out character codes. The only ways in are FontTable and font_name(); tested in
// tests/reports/pdf/font_table.test.cpp.
#include "reports/pdf/font_table.h"

namespace stoneproof::pdf {

std::size_t FontTable::font_with_room(FontId font) {
  constexpr std::size_t most = 0xFFFF; // codes are two bytes, and 0 is taken
  const auto open = open_.find(font);
  if (open != open_.end() && fonts_[open->second].codes.size() < most) return open->second;
  fonts_.push_back({font, {}});
  return open_[font] = fonts_.size() - 1;
}

GlyphCode FontTable::code_of(FontId font, GlyphId glyph, std::u32string_view text) {
  std::pair<FontId, CodedGlyph> key{font, {glyph, std::u32string(text)}};
  if (const auto found = known_.find(key); found != known_.end()) return found->second;
  const std::size_t index = font_with_room(font);
  PdfFont &target = fonts_[index];
  target.codes.push_back(key.second);
  const GlyphCode code{index, static_cast<std::uint16_t>(target.codes.size())};
  known_.emplace(std::move(key), code);
  return code;
}

std::string font_name(std::size_t font) { return "F" + std::to_string(font + 1); }

} // namespace stoneproof::pdf
