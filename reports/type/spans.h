// Cutting a line of text into spans of one script and one direction, in the order they are seen.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace stoneproof {

struct TextSpan {
  std::size_t first = 0, count = 0; ///< code points of the line
  unsigned script = 0;              ///< ISO 15924 tag, as HarfBuzz packs it
  bool right_to_left = false;
};

/// Spans from left to right as seen. The direction of the line is that of its first letter. A reduced form of
/// the Unicode Bidirectional Algorithm (UAX #9: W2, N1, N2, L2): letters have the direction of their script,
/// numbers run left to right inside right-to-left text, other characters follow their neighbours; explicit
/// embeddings and the finer rules for punctuation in numbers are not followed. Every code point is in one
/// span.
std::vector<TextSpan> spans_of(std::u32string_view text);

} // namespace stoneproof
