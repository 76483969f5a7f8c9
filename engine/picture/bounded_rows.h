// Rows that keep within limits of time and of pixels for the file's bytes.
#pragma once

#include "engine/picture/formats.h"

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <optional>

namespace stoneproof {

/// The Fault of rows that hold more bytes for one of the file's `file_bytes` than limits.most_expansion.
std::optional<Fault> over_expanded(const RowLayout &layout, const std::filesystem::path &file,
                                   std::uint64_t file_bytes, const PictureLimits &limits);

/// The same rows; one that comes later than limits.most_time after `begun` is a Fault. Fault at once:
/// over_expanded. Rows that are decoded whole wait for the first call of next, so that both hold for them.
Outcome<Rows> bounded(Rows rows, const std::filesystem::path &file, std::uint64_t file_bytes,
                      std::chrono::steady_clock::time_point begun, const PictureLimits &limits);

} // namespace stoneproof
