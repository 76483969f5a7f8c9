// Text in lines that fit. Widths are characters (code points): wide East Asian ones count as one.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::terminal {

/// Columns where nobody says how wide the terminal is.
inline constexpr int usual_width = 80;

/// Breaks at spaces. A word that is wider than a line gets a line of its own. An empty text gives no line.
std::vector<std::string> wrapped(std::string_view text, int width);

/// The lines, each behind `indent` spaces and ended by a newline; `width` counts the indent.
std::string wrapped_text(std::string_view text, int width, int indent = 0);

/// The text, or its beginning with an ellipsis as the last character where it is wider than `width`.
std::string shortened(std::string_view text, int width);

/// The text made printable, in at most `most` lines, the last one shortened to say that there is more.
std::vector<std::string> few_lines(std::string_view text, int width, std::size_t most);

} // namespace stoneproof::terminal
