// The profile of sRGB (IEC 61966-2-1), for files that say what their colours mean.
#pragma once

#include <cstdint>
#include <vector>

namespace stoneproof {

/// An ICC profile of version 4.2 (ICC.1:2004-10), as ISO 32000-1 takes it, with the same bytes whenever it is
/// made; about 600 of them. Throws std::bad_alloc without memory.
std::vector<std::uint8_t> srgb_profile();

} // namespace stoneproof
