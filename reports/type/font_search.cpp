// Asks fontconfig where a font is installed. The only way in is find_fonts(); tested in
// tests/reports/type/typesetter.test.cpp.
#include "reports/type/font_search.h"

#include "engine/destroy.h"

#include <fontconfig/fontconfig.h>
#include <memory>
#include <optional>
#include <string_view>

namespace stoneproof {
namespace {

using Config = std::unique_ptr<FcConfig, Destroy<FcConfigDestroy>>;
using Pattern = std::unique_ptr<FcPattern, Destroy<FcPatternDestroy>>;
using Properties = std::unique_ptr<FcObjectSet, Destroy<FcObjectSetDestroy>>;
using Fonts = std::unique_ptr<FcFontSet, Destroy<FcFontSetDestroy>>;

std::string style_name(const FontWanted &wanted) {
  if (wanted.bold) return wanted.italic ? "bold italic" : "bold";
  return wanted.italic ? "italic" : "regular";
}

/// Listing, unlike matching, gives only fonts that have every property asked for.
Fonts installed(const Config &config, const FontWanted &wanted) {
  const Pattern pattern(FcPatternCreate());
  FcPatternAddString(pattern.get(), FC_FAMILY, reinterpret_cast<const FcChar8 *>(wanted.family));
  FcPatternAddInteger(pattern.get(), FC_WEIGHT, wanted.bold ? FC_WEIGHT_BOLD : FC_WEIGHT_REGULAR);
  FcPatternAddInteger(pattern.get(), FC_SLANT, wanted.italic ? FC_SLANT_ITALIC : FC_SLANT_ROMAN);
  FcPatternAddInteger(pattern.get(), FC_WIDTH, FC_WIDTH_NORMAL);
  FcPatternAddString(pattern.get(), FC_FONTFORMAT, reinterpret_cast<const FcChar8 *>("TrueType"));
  const Properties properties(FcObjectSetBuild(FC_FILE, FC_INDEX, FC_VARIABLE, nullptr));
  return Fonts(FcFontList(config.get(), pattern.get(), properties.get()));
}

std::optional<FontFile> usable(FcPattern *font) {
  FcChar8 *path = nullptr;
  int index = 0;
  FcBool variable = FcFalse;
  FcPatternGetInteger(font, FC_INDEX, 0, &index);
  FcPatternGetBool(font, FC_VARIABLE, 0, &variable);
  if (FcPatternGetString(font, FC_FILE, 0, &path) != FcResultMatch || variable == FcTrue) return std::nullopt;
  return FontFile{reinterpret_cast<const char *>(path), static_cast<unsigned>(index)};
}

std::optional<FontFile> find_font(const Config &config, const FontWanted &wanted) {
  std::optional<FontFile> best; // of several copies, the first by path: not the order of a folder
  if (const Fonts fonts = installed(config, wanted)) {
    for (int i = 0; i < fonts->nfont; ++i) {
      const auto file = usable(fonts->fonts[i]);
      if (file && (!best || file->path < best->path)) best = file;
    }
  }
  return best;
}

} // namespace

Outcome<std::vector<FontFile>> find_fonts(std::span<const FontWanted> wanted) {
  const Config config(FcInitLoadConfigAndFonts());
  std::vector<FontFile> files;
  for (const FontWanted &font : wanted) {
    const auto file = config ? find_font(config, font) : std::nullopt;
    if (!file) {
      return Fault{"the font is not installed", std::string(font.family) + " " + style_name(font),
                   "Install the Debian package " + std::string(font.package) + "."};
    }
    files.push_back(*file);
  }
  return files;
}

} // namespace stoneproof
