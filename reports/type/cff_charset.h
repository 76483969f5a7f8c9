// What a CID-keyed CFF font calls its glyphs.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace stoneproof {

/// The CIDs of a bare CFF font's glyphs, in the order of their numbers, by its charset (Adobe Technical Note
/// 5176, section 13); empty for a font that is not CID-keyed. Nothing when the bytes are no such font.
std::optional<std::vector<std::uint16_t>> cids_of(std::string_view cff);

} // namespace stoneproof
