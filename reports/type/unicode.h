// Text as code points and back. Never fails: what is not valid becomes U+FFFD, the replacement character.
#pragma once

#include <string>
#include <string_view>

namespace stoneproof {

/// Code points of UTF-8 text. Each byte that belongs to no valid sequence (overlong forms, surrogates and
/// values beyond U+10FFFF are not valid) becomes one U+FFFD.
std::u32string code_points(std::string_view utf8);

/// UTF-8 of code points. Surrogates and values beyond U+10FFFF become U+FFFD.
std::string utf8(std::u32string_view text);

/// UTF-16, big endian, without a byte order mark: two bytes a unit.
std::string utf16_be(std::u32string_view text);

} // namespace stoneproof
