// Asks fontconfig where fonts are installed. The only ways in are the functions of font_search.h; tested in
// tests/reports/type/typesetter.test.cpp.
#include "reports/type/font_search.h"

#include "engine/destroy.h"

#include <algorithm>
#include <cstdlib>
#include <fontconfig/fontconfig.h>
#include <initializer_list>
#include <iterator>
#include <memory>
#include <optional>
#include <string_view>
#include <tuple>

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
  const Properties properties(FcObjectSetBuild(FC_FILE, FC_INDEX, FC_VARIABLE, FC_FONTFORMAT, nullptr));
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

/// Whether the outlines of a font are of one of these kinds.
bool has_outlines(FcPattern *font, std::initializer_list<std::string_view> kinds) {
  FcChar8 *format = nullptr;
  return FcPatternGetString(font, FC_FONTFORMAT, 0, &format) == FcResultMatch &&
         std::find(kinds.begin(), kinds.end(), reinterpret_cast<const char *>(format)) != kinds.end();
}

std::optional<FontFile> find_font(const Config &config, const FontWanted &wanted,
                                  std::initializer_list<std::string_view> kinds) {
  std::optional<FontFile> best; // of several copies, the first by path: not the order of a folder
  if (const Fonts fonts = installed(config, wanted)) {
    for (int i = 0; i < fonts->nfont; ++i) {
      if (!has_outlines(fonts->fonts[i], kinds)) continue;
      const auto file = usable(fonts->fonts[i]);
      if (file && (!best || file->path < best->path)) best = file;
    }
  }
  return best;
}

/// A font, and which of the wanted characters it has.
struct Cover {
  FontFile file;
  int from_regular = 0; ///< how far its weight is from regular, in fontconfig's steps
  std::u32string has;
};

/// Every upright font with TrueType or CFF outlines that has any of the characters.
std::vector<Cover> covers_of(const Config &config, std::u32string_view characters) {
  const Pattern pattern(FcPatternCreate());
  FcPatternAddInteger(pattern.get(), FC_SLANT, FC_SLANT_ROMAN);
  const Properties properties(
      FcObjectSetBuild(FC_FILE, FC_INDEX, FC_VARIABLE, FC_FONTFORMAT, FC_WEIGHT, FC_CHARSET, nullptr));
  const Fonts fonts(FcFontList(config.get(), pattern.get(), properties.get()));
  std::vector<Cover> covers;
  for (int i = 0; fonts && i < fonts->nfont; ++i) {
    auto file = usable(fonts->fonts[i]);
    FcCharSet *set = nullptr;
    int weight = FC_WEIGHT_REGULAR;
    FcPatternGetInteger(fonts->fonts[i], FC_WEIGHT, 0, &weight);
    if (!file || !has_outlines(fonts->fonts[i], {"TrueType", "CFF"}) ||
        FcPatternGetCharSet(fonts->fonts[i], FC_CHARSET, 0, &set) != FcResultMatch)
      continue;
    Cover cover{std::move(*file), std::abs(weight - FC_WEIGHT_REGULAR), {}};
    std::copy_if(characters.begin(), characters.end(), std::back_inserter(cover.has),
                 [&](char32_t c) { return FcCharSetHasChar(set, c) == FcTrue; });
    if (!cover.has.empty()) covers.push_back(std::move(cover));
  }
  return covers;
}

bool goes_before(const Cover &a, const Cover &b) {
  return std::tuple(b.has.size(), a.from_regular, std::string_view(a.file.path), a.file.index) <
         std::tuple(a.has.size(), b.from_regular, std::string_view(b.file.path), b.file.index);
}

} // namespace

std::vector<FontFile> find_fonts_with(std::u32string_view characters, std::span<const FontFile> but_not) {
  std::vector<FontFile> files;
  if (characters.empty()) return files;
  const Config config(FcInitLoadConfigAndFonts());
  std::vector<Cover> covers = config ? covers_of(config, characters) : std::vector<Cover>();
  std::erase_if(covers, [&](const Cover &cover) {
    return std::find(but_not.begin(), but_not.end(), cover.file) != but_not.end();
  });
  while (!covers.empty()) {
    const Cover best = *std::min_element(covers.begin(), covers.end(), goes_before);
    files.push_back(best.file);
    for (Cover &cover : covers)
      std::erase_if(cover.has, [&](char32_t c) { return best.has.find(c) != std::u32string::npos; });
    std::erase_if(covers, [](const Cover &cover) { return cover.has.empty(); });
  }
  return files;
}

std::optional<FontFile> find_bold_of(const FontFile &font) {
  const Config config(FcInitLoadConfigAndFonts());
  const Pattern pattern(FcPatternCreate());
  FcPatternAddString(pattern.get(), FC_FILE, reinterpret_cast<const FcChar8 *>(font.path.c_str()));
  FcPatternAddInteger(pattern.get(), FC_INDEX, static_cast<int>(font.index));
  const Properties properties(FcObjectSetBuild(FC_FAMILY, nullptr));
  const Fonts fonts(config ? FcFontList(config.get(), pattern.get(), properties.get()) : nullptr);
  FcChar8 *family = nullptr;
  if (!fonts || fonts->nfont == 0 ||
      FcPatternGetString(fonts->fonts[0], FC_FAMILY, 0, &family) != FcResultMatch)
    return std::nullopt;
  return find_font(config, {reinterpret_cast<const char *>(family), "", true}, {"TrueType", "CFF"});
}

Outcome<std::vector<FontFile>> find_fonts(std::span<const FontWanted> wanted) {
  const Config config(FcInitLoadConfigAndFonts());
  std::vector<FontFile> files;
  for (const FontWanted &font : wanted) {
    const auto file = config ? find_font(config, font, {"TrueType"}) : std::nullopt;
    if (!file) {
      return Fault{"the font is not installed", std::string(font.family) + " " + style_name(font),
                   "Install the Debian package " + std::string(font.package) + "."};
    }
    files.push_back(*file);
  }
  return files;
}

} // namespace stoneproof
