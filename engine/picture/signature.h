// The format of a file by its first bytes; a file name is never looked at.
#pragma once

#include "engine/outcome.h"
#include "engine/picture/picture_file.h"
#include "engine/press/press_sheet.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace stoneproof {

struct Signature {
  std::optional<Format> format; ///< a format that is read here
  std::string_view other; ///< else what the file is, with its article, e.g. "a PDF document"; empty: unknown
};

/// `head` is the start of the file; 64 bytes are enough for every format but HTML with leading blanks.
Signature signature_of(std::span<const std::uint8_t> head);

/// The format that will read this file, or the Fault that says what else it is.
Outcome<Format> format_of(const PictureFile &file);

} // namespace stoneproof
