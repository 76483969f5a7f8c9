// Where a thing is written in a text file.
#pragma once

namespace stoneproof {

/// Where a thing is written in the description; 1-based, columns counted in characters.
struct SourcePlace {
  int line = 0;
  int column = 0;
  friend constexpr bool operator==(const SourcePlace &, const SourcePlace &) = default;
};

} // namespace stoneproof
