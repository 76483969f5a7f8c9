// The square of a grid of cells whose mean is largest, found while the grid comes row by row.
#pragma once

#include "engine/measure/part.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace stoneproof {

/// Sums of samples in cells. Keeps only as many rows of cells as the square is high.
class SquareMaximum {
public:
  struct Cell {
    double sum = 0, count = 0;
  };
  struct Found {
    double mean = 0;
    PixelPart cells; ///< the square, in cells
  };

  /// A grid of `columns` cells a row; a square of `width` x `height` cells, at least 1 each. Where the grid
  /// is narrower or lower than the square, the whole of it counts.
  SquareMaximum(std::int64_t columns, std::int64_t width, std::int64_t height);
  void add(const std::vector<Cell> &row);
  /// After the last row; none where no cell holds a sample. The first of equal squares.
  std::optional<Found> take();

private:
  void slide();

  std::int64_t columns_, width_, height_, rows_ = 0;
  std::vector<std::vector<Cell>> last_; ///< rows of cells, the oldest overwritten
  std::vector<Cell> column_sums_;       ///< over the rows kept
  std::optional<Found> found_;
};

} // namespace stoneproof
