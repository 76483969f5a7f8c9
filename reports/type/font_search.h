// Finding the files of installed fonts by family, weight and slant.
#pragma once

#include "engine/outcome.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof {

struct FontWanted {
  const char *family;
  const char *package; ///< the Debian package that installs the family, for the remedy
  bool bold = false, italic = false;
};

struct FontFile {
  std::string path;
  unsigned index = 0; ///< of the font in a collection file
  friend bool operator==(const FontFile &, const FontFile &) = default;
};

/// The files of exactly these families, weights and slants with TrueType outlines, never a substitute. Fails
/// with the first that is not installed.
Outcome<std::vector<FontFile>> find_fonts(std::span<const FontWanted> wanted);

/// Other installed fonts with upright TrueType or CFF outlines that have these characters between them, as
/// few as the greedy choice gives: the font that has most of them first, of two that have as many one of
/// regular weight, then the first by path. Characters that no font has are left out. `but_not` are left out
/// too.
std::vector<FontFile> find_fonts_with(std::u32string_view characters, std::span<const FontFile> but_not = {});

/// The bold font of the family that a font belongs to, with outlines of either kind; none where it is not
/// installed.
std::optional<FontFile> find_bold_of(const FontFile &font);

} // namespace stoneproof
