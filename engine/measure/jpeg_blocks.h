// The frequencies of JPEG's blocks, as the measures of a picture's JPEG past read them from pixels, and the
// quality that steps found in them stand for.
#pragma once

#include "engine/measure/tile.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace stoneproof {

inline constexpr int jpeg_block = 8; ///< pixels a side

/// The discrete cosine transform of ITU-T T.81, A.3.3, along one axis: [frequency][place]. Twice over it
/// gives the frequencies that a quantization table divides.
using BlockCosines = std::array<std::array<float, jpeg_block>, jpeg_block>;
const BlockCosines &block_cosines();

/// A frequency of a block: so many half waves down and across.
struct BlockMode {
  int down = 0, across = 0;
  /// Where its step stands in a QuantTable, and in that of a picture turned by a quarter since.
  std::size_t at() const { return static_cast<std::size_t>(down * jpeg_block + across); }
  std::size_t turned_at() const { return static_cast<std::size_t>(across * jpeg_block + down); }
};

/// The 35 low frequencies but the mean (down + across from 1 to 7), diagonal by diagonal: higher ones are
/// mostly nought.
std::span<const BlockMode> block_modes();

/// In which columns of some rows of a tile there is black or white: decoders clip there, which hides what was
/// quantized.
class ClippedColumns {
public:
  ClippedColumns(const Tile &tile, int top, int rows);
  bool any(int left, int columns) const;

private:
  std::vector<std::uint8_t> clipped_;
};

/// A step of an unknown table.
struct FoundStep {
  BlockMode mode;
  int step = 0;
};

/// An earlier quality with the range that it lies in.
struct EarlierQuality {
  int quality = 0, low = 0, high = 0; ///< 1 to 100
  bool standard =
      true; ///< the steps are those of ITU-T T.81, Annex K, scaled; else the quality is the nearest
};

/// The nearest quality as jpeg_quality defines it, of a table of which some steps were found. The range goes
/// from what it would be if the others grew as Annex K's do to what it would be if they grew no more; the
/// quality lies between. None found: 0.
EarlierQuality nearest_quality(std::span<const FoundStep> steps);

} // namespace stoneproof
