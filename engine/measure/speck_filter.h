// What is small against its surroundings: specks and hairs apart from the picture.
#pragma once

#include <cstdint>
#include <vector>

namespace stoneproof {

/// The difference of a pixel from its surroundings, which are the mean of two smoothed copies: the opening of
/// the closing and the closing of the opening by a square (Serra, Image Analysis and Mathematical Morphology,
/// 1982), so that what is narrower than the square goes, light or dark, and an edge stays. Then blurred by
/// 1-2-1 along both axes.
class SpeckFilter {
public:
  static constexpr int square = 11;
  /// Pixels that the filter looks at on each side.
  static constexpr int reach = 2 * (square - 1) + 2;
  static constexpr int unit = 32; ///< of the result for one level of 255

  /// `padded` holds `rows` rows of `width` pixels, more than 2 * reach each, row after row. Gives the
  /// differences of those that stand `reach` from every side, row after row.
  const std::vector<std::int16_t> &apply(const std::vector<std::uint8_t> &padded, int width, int rows);

private:
  const std::vector<std::uint8_t> &smooth(const std::vector<std::uint8_t> &padded, int width, bool open_last);

  std::vector<std::uint8_t> one_, other_, closed_;
  std::vector<std::int16_t> raw_, blurred_, out_;
};

} // namespace stoneproof
