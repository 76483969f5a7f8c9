// The known word that a mistyped one was probably meant to be.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof {

/// The nearest of the known words: fewest insertions, deletions, replacements and swaps of neighbours, the
/// case of ASCII letters set aside; the first among equals. Nothing when more than a third of the word (at
/// least one letter) would have to change.
std::optional<std::string_view> did_you_mean(std::string_view word,
                                             const std::vector<std::string_view> &known);

/// " (did you mean NAME?)" or nothing, to be put after the message.
std::string suggestion(std::string_view word, const std::vector<std::string_view> &known);

} // namespace stoneproof
