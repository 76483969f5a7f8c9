// Figures as people read them. A density is rounded down and a scanner setting up, so that no rounding hides
// a shortfall, but for what the rounding of layout programs leaves of a whole figure; the record keeps full
// precision.
#pragma once

#include "engine/rules/finding.h"

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>

#include <vector>

namespace stoneproof::content {

std::string ppi(Density density);          ///< "299 ppi", rounded down but for a tenth
std::string millimetres(Length length);    ///< "2.96 mm": down to a hundredth, no needless zeros
std::string millimetres_up(Length length); ///< the same, up to a hundredth: for what must be added
std::string size(const Size &size); ///< "88 x 132 mm" with a multiplication sign, to the nearest millimetre,
                                    ///< below 10 mm to tenths
/// What rounding to whole micrometres may take off a size at its two edges, in millimetres.
inline constexpr double size_rounding = 0.002;
/// The same rounded down, but for `size_rounding`: of a size that a picture may be printed at.
std::string size_down(const Size &size);
std::string degrees(double angle); ///< "1.5°": to a tenth, without its sign
std::string
per_cent(double share); /// ///< "12.5 %": to a tenth, but never 0 % for something, nor 100 % for less
std::string figure(const Measure &measure);
/// The same of what was measured, beside what is wanted: a share is rounded away from a wanted one, and a
/// density told to a hundredth where it must be, so that no rounding makes the two alike.
std::string figure_beside(const Measure &measured,
                          const Measure &wanted); ///< by kind; "" where nothing was measured
/// "9.9 MB", "310 MB", "1.9 GB", rounded up: a megabyte is a million bytes, a gigabyte a thousand million.
std::string file_size(std::uint64_t bytes);
std::string count(std::size_t n, std::string_view one, std::string_view many); ///< "1 hold", "3 holds"

std::string listed(const std::vector<std::string> &names); ///< "top, outside and bottom"

/// The text with no-break spaces between a figure and its unit and inside "88 × 132 mm", so that no line of a
/// page ends in the middle of a figure.
std::string with_figures_kept_whole(std::string text);
/// The same where other units are used.
std::string with_units_kept_whole(std::string text, std::initializer_list<std::string_view> units);

} // namespace stoneproof::content
