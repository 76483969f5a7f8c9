// Square samples of a picture's lightness, chosen where there is most detail, as its rows come.
#pragma once

#include "engine/measure/part.h"
#include "engine/picture/rows.h"
#include "engine/picture/to_rgb.h"

#include <cstdint>
#include <memory>
#include <vector>

namespace stoneproof {

/// Lightness is that of ITU-T T.871 (JPEG's Y), 0 to 255.
struct Tile {
  std::int64_t x = 0, y = 0;      ///< of its top left pixel in the picture as stored
  int side = 0;                   ///< pixels
  std::vector<std::uint8_t> luma; ///< side x side
  double detail = 0;              ///< mean of |4-neighbour Laplacian|, on every second row

  std::uint8_t at(int column, int row) const {
    return luma[static_cast<std::size_t>(row) * static_cast<std::size_t>(side) +
                static_cast<std::size_t>(column)];
  }
};

/// Cuts a part into tiles of 256 pixels, or of 128 where it is too small, and keeps those with most detail,
/// roughly judged.
///
/// Of a part of n times 8 megapixels only every n-th row of tiles is looked at: detail is seldom in one place
/// alone. They begin at multiples of eight pixels of the picture, so that the blocks of a JPEG lie whole
/// inside. Memory: one row of tiles, as wide as the part, and those that are kept.
class TileSampler {
public:
  static constexpr int large = 256, small = 128;

  /// The layout must outlive this; it is of rows that are not reduced. A part whose shorter side has no room
  /// for a small tile gives none.
  TileSampler(const PixelPart &part, const RowLayout &layout, std::size_t most = 8);
  /// Row `y` of the picture as stored; rows outside the part are not looked at.
  void add(std::int64_t y, const std::uint8_t *row);
  /// Most detail first.
  std::vector<Tile> take();

private:
  struct Candidate {
    std::int64_t x = 0, y = 0;
    std::int64_t rough = 0; ///< what it is chosen by, of its rows so far
    std::uint8_t *pixels = nullptr;
  };
  std::size_t tile_bytes() const { return static_cast<std::size_t>(side_ * side_ * bytes_); }
  void judge_row_of_tiles(std::int64_t y);
  Tile tile_of(const Candidate &kept) const;

  PixelPart grid_; ///< the pixels that tiles cover
  int side_ = 0;   ///< 0: no room
  std::size_t most_;
  std::int64_t row_step_ = 1; ///< of tiles
  const RowLayout &layout_;
  ToRgb to_rgb_;
  bool plain_gray_, plain_rgb_;
  std::int64_t bytes_ = 3;                 ///< a pixel of a candidate: gray or RGB
  std::unique_ptr<std::uint8_t[]> pixels_; ///< room for a row of tiles and those that are kept
  std::vector<Candidate> row_, kept_;
};

/// The same tile turned so that its columns are rows.
Tile transposed(const Tile &tile);

} // namespace stoneproof
