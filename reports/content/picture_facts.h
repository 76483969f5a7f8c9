// What is said of a picture file, as rows of a table: what the file says of itself, and what was measured in
// its pixels.
#pragma once

#include "engine/rules/evidence.h"

#include <string>
#include <vector>

namespace stoneproof::content {

/// "Pixels": "3000 × 2000, 6 megapixels".
struct FactRow {
  std::string label, text;
  friend bool operator==(const FactRow &, const FactRow &) = default;
};

/// A fault first; no more than that where the header could not be read.
std::vector<FactRow> file_rows(const PictureState &state, const PressSheet &press);

/// "JPEG", "WebP".
std::string_view format_name(Format format);

/// What density the file claims, which decides nothing.
FactRow density_row(const Facts &facts);

/// Detail, and what the pixels tell of where the picture comes from.
std::vector<FactRow> origin_rows(const PictureState &state, Use use, const Shown &shown);

FactRow tone_row(Use use, const Tone &tone, const PressSheet &press);

} // namespace stoneproof::content
