// Lab as colour fax codes it (ITU-T T.42; RFC 2301, section 5.2), in the coding of ICC.
#pragma once

#include "engine/picture/tiff_session.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace stoneproof {

/// What keeps the samples from being read, in words that complete "the TIFF holds ...".
std::optional<std::string> itu_lab_obstacle(const TiffSession &session);
/// One row of `to.size()` interleaved samples of 8 bits, in the default range of T.42, to 16-bit ICC Lab.
/// Channels after the third keep their share of the range. Gives the bytes of `to`.
std::span<const std::uint8_t> itu_lab_to_icc(const std::uint8_t *row, std::size_t channels,
                                             std::vector<std::uint16_t> &to);

} // namespace stoneproof
