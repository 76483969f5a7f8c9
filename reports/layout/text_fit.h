// Fitting words into a width: a pure function of the text, the type and the width.
#pragma once

#include "reports/type/typesetter.h"

#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::layout {

/// Breaks text into lines no wider than `width`: at spaces, at line ends, and inside a word only where the
/// word alone is too wide. Nothing is lost but the spaces at the breaks. A single character wider than the
/// width stays whole.
std::vector<std::string> wrap(const Typesetter &type, Face face, Length size, Length width,
                              std::string_view text);

/// The text on one line, its middle replaced by an ellipsis where it is too wide: the ends of a file name
/// tell most.
std::string shortened(const Typesetter &type, Face face, Length size, Length width, std::string_view text);

} // namespace stoneproof::layout
