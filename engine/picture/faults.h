// Every Fault that a picture file can give, worded once.
#pragma once

#include "engine/outcome.h"
#include "engine/picture/facts.h"
#include "engine/picture/other_kinds.h"

#include <cstdint>
#include <filesystem>
#include <string_view>
#include <sys/types.h>

namespace stoneproof::faults {

Fault cannot_open(const std::filesystem::path &file, int error_number);
/// A folder, pipe, device or socket; `mode` as stat gives it.
Fault not_regular(const std::filesystem::path &file, mode_t mode);
Fault empty(const std::filesystem::path &file);
/// A format that is known by its signature and not read; `kind` with its article, e.g. "a PDF document".
Fault other_format(const std::filesystem::path &file, const OtherKind &kind);
Fault unknown_format(const std::filesystem::path &file);

/// `format` is the name of the format, `detail` what the library said of the fault.
Fault broken_header(const std::filesystem::path &file, std::string_view format, std::string_view detail);
Fault damaged(const std::filesystem::path &file, std::string_view format, std::string_view detail);
/// A sound file of a kind that is not decoded; `kind` completes "the TIFF holds ...".
Fault not_decoded(const std::filesystem::path &file, std::string_view format, std::string_view kind);

Fault too_many_pixels(const std::filesystem::path &file, PixelSize claimed, const PictureLimits &limits);
Fault too_much_memory(const std::filesystem::path &file, std::uint64_t needed, const PictureLimits &limits);
Fault too_slow(const std::filesystem::path &file, std::chrono::seconds most);
/// `expansion`: bytes of pixels for one of the file.
Fault too_much_expansion(const std::filesystem::path &file, double expansion, const PictureLimits &limits);
Fault part_outside(const std::filesystem::path &file);
Fault changed(const std::filesystem::path &file);

/// Whether a picture of this size passes the limits.
bool within(PixelSize size, const PictureLimits &limits);

} // namespace stoneproof::faults
