// Characters as UTF-8 and as XML 1.0 (fifth edition) sorts them.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace stoneproof {

/// One decoded character. `bytes` is 0 at the end of the text and where the bytes are not UTF-8 (RFC 3629: no
/// overlong forms, no surrogates, nothing above U+10FFFF).
struct Decoded {
  char32_t character = 0;
  std::size_t bytes = 0;
};
Decoded decode(std::string_view text, std::size_t at);

/// Characters of a text; a byte that is not UTF-8 counts as one, U+FFFD.
std::u32string code_points_of(std::string_view text);
std::string utf8_of(std::u32string_view characters);

/// The productions Char, NameStartChar, NameChar and S of XML 1.0.
bool is_xml_character(char32_t c);
bool is_name_start(char32_t c);
bool is_name_character(char32_t c);
constexpr bool is_xml_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

/// Without white space at the ends and with single spaces inside, as XML Schema's `collapse`.
std::string collapsed(std::string_view text);

/// Control characters (tab too when `keep_tab` is false) and broken bytes as U+FFFD, so that a terminal is
/// safe.
std::string printable(std::string_view text, bool keep_tab = false);

/// As it stands in a text or a quoted attribute value of an XML document, so that a reader gets it back:
/// markup and white space other than spaces as references. What XML cannot hold, and broken bytes, is U+FFFD.
std::string xml_escaped(std::string_view text);

/// In straight quotes, printable, shortened to 40 characters: the way messages show what a file says.
std::string in_quotes(std::string_view text);

} // namespace stoneproof
