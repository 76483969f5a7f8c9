// Files that are no picture of a format that is read here, told by their first bytes, each with what to ask
// for instead.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace stoneproof {

struct OtherKind {
  std::string_view name;   ///< with its article, e.g. "a PDF document"
  std::string_view remedy; ///< one imperative sentence
};

/// None where the bytes are unknown, or begin as a picture that is read does; but some raw files of cameras
/// begin as a TIFF does too, so this is asked first. `head` is the start of the file.
std::optional<OtherKind> other_kind(std::span<const std::uint8_t> head);

/// What a TIFF is that holds its picture in a camera's own form and shows a small copy first (TIFF/EP, ISO
/// 12234-2).
OtherKind camera_raw();

} // namespace stoneproof
