// Values in the syntax of a PDF file: numbers, strings, dates, references. Independent of locale and time
// zone.
#pragma once

#include "engine/units/geometry.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace stoneproof::pdf {

/// The number of an indirect object.
using ObjectNumber = unsigned;

/// At most three decimals, no trailing zeros, never an exponent. A thousandth of a point is 0.35 micrometres.
std::string number(double value);
/// A length in points.
std::string points(Length length);
/// A text string (ISO 32000-1, 7.9.2.2) of UTF-8 text: literal if it is plain ASCII, else UTF-16 in
/// hexadecimal.
std::string text_string(std::string_view utf8);
/// UTF-16 with a byte order mark as a hexadecimal string.
std::string unicode_string(std::u32string_view text);
/// Two hexadecimal digits a byte, without brackets.
std::string hex_digits(std::string_view bytes);
/// A name object of any bytes (ISO 32000-1, 7.3.5).
std::string name(std::string_view bytes);
/// A date string in UTC. Moments outside the years 1970 to 9999 are moved to the nearer end.
std::string date_string(std::int64_t seconds_since_1970);
/// The same moment as XMP writes it.
std::string xmp_date(std::int64_t seconds_since_1970);
std::string reference(ObjectNumber object);
/// A rectangle of a page, measured there from the top left corner, as an array that measures from the bottom
/// left one.
std::string rectangle(const Rect &rect, Length page_height);

} // namespace stoneproof::pdf
