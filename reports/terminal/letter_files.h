// The names of the letters' files.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::terminal {

/// One name for each person, "Maud Ellerby-Finch.letter.pdf". Whatever a folder or a file system could
/// stumble over (slashes, control characters, leading dots, great length) is replaced or left out; an empty
/// name is "contributor". Names that would be the same, small and capital Latin letters taken alike, are
/// numbered: "Anna 2.letter.pdf".
std::vector<std::string> letter_names(const std::vector<std::string> &people);

} // namespace stoneproof::terminal
