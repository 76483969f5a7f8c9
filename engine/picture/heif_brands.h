// What kind of HEIF a file says it is, by the brands in its first box (ISO/IEC 14496-12, section 4.3).
#pragma once

#include <cstdint>
#include <optional>
#include <span>

namespace stoneproof {

enum class HeifKind {
  hevc,     ///< pictures packed by HEVC: HEIC (ISO/IEC 23008-12, annex B)
  av1,      ///< pictures packed by AV1: AVIF (AV1 Image File Format, section 8)
  sequence, ///< first of all a sequence of pictures, like a short film
  other     ///< pictures packed in another way
};

/// None where the file is no HEIF. `head` is the start of the file.
std::optional<HeifKind> heif_kind(std::span<const std::uint8_t> head);

} // namespace stoneproof
