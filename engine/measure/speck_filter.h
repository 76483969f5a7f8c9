// What is small against its surroundings: specks and hairs apart from the picture.
#pragma once

#include <cstdint>
#include <vector>

namespace stoneproof {

/// The difference of a pixel from its surroundings: from the median, down the columns, of the medians along
/// the rows, each of `window` pixels (a median of medians, near that of the whole square), so that what is
/// narrower than half the window goes, light or dark, and an edge stays. Then blurred by 1-2-1 along both
/// axes.
class SpeckFilter {
public:
  static constexpr int window = 11;
  /// Pixels that the filter looks at on each side.
  static constexpr int reach = window / 2 + 1;
  static constexpr int unit = 16; ///< of the result for one level of 255

  /// `padded` holds `rows` rows of `width` pixels, more than 2 * reach each, row after row. Gives the
  /// differences of those that stand `reach` from every side, row after row.
  const std::vector<std::int16_t> &apply(const std::vector<std::uint8_t> &padded, int width, int rows);

private:
  std::vector<std::uint8_t> along_, both_;
  std::vector<std::int16_t> raw_, blurred_, out_;
};

} // namespace stoneproof
