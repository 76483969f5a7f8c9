// How little room a text can do with: a lean estimate, so that what does not fit by it does not fit at all.
#pragma once

#include "engine/book/book.h"

#include <string_view>

namespace stoneproof {

/// Widths in parts of the type size, each as in the narrowest of 20 faces of Debian's packages that were
/// measured over the demo album's words (tests/bench/type_widths.py): Open Sans Condensed Light Italic, of
/// fonts-open-sans, whose mean advance is 0.295. Others: Yanone Kaffeesatz 0.306, Roboto Condensed Light
/// Italic 0.377, Gentium Plus 0.411, Lato 0.442, DejaVu Sans Condensed 0.457.
namespace lean {
inline constexpr double space = 0.17, thin = 0.20, letter = 0.36, wide = 0.53;
inline constexpr double mean = 0.295; ///< of letters beyond ASCII in the Latin, Greek and Cyrillic scripts
/// Characters that Unicode (UAX #11) calls wide or full-width take a whole square; some faces set them
/// closer, so 0.9. Their punctuation may be set to half a square (W3C, Requirements for Japanese Text
/// Layout, 3.1.2).
inline constexpr double square = 0.9, square_mark = 0.5;
inline constexpr double unknown = 0.2; ///< of any other script; our own choice, as lean as thin letters
/// From line to line, and the height of a single one, in parts of the type size. Lines set closer than nine
/// tenths touch (our own choice); capitals are 0.61 to 0.72 high in the faces above.
inline constexpr double line = 0.9, capitals = 0.6;
} // namespace lean

/// Of one line of UTF-8, in parts of the type size. Marks that combine with a letter have no width.
double lean_width(std::string_view line);

/// Lines of a text that are `width` wide: every paragraph fills its lines to the last letter, as if every
/// word could be broken anywhere. `width` and the type size are more than zero.
double lean_lines(const TextBlock &text, Length width);

/// Height of so many lines.
Length lean_height(const TextBlock &text, Length width);

} // namespace stoneproof
