// Rows that keep within limits of time and of pixels for the file's bytes.
#pragma once

#include "engine/picture/formats.h"

namespace stoneproof {

/// The same rows; one that comes later than limits.most_time after `begun` is a Fault. Fault at once: the
/// rows hold more bytes for one of the file's `file_bytes` than limits.most_expansion.
Outcome<Rows> bounded(Rows rows, const std::filesystem::path &file, std::uint64_t file_bytes,
                      std::chrono::steady_clock::time_point begun, const PictureLimits &limits);

} // namespace stoneproof
