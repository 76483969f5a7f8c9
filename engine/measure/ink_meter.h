// The ink that a part of a picture lays on the paper, and how much of it the press cannot print.
#pragma once

#include "engine/colour/press_table.h"
#include "engine/measure/part.h"
#include "engine/measure/square_maximum.h"
#include "engine/picture/rows.h"
#include "engine/picture/to_rgb.h"

#include <optional>
#include <vector>

namespace stoneproof {

struct Ink {
  /// Total area coverage, cyan + magenta + yellow + black, 0 to 4: the largest mean over a square.
  double most = 0;
  PixelPart where; ///< that square, in stored pixels
  /// Share of the part whose colour the press cannot print; none for CMYK, which is printed as it is.
  std::optional<double> out_of_gamut;
};

struct InkOrder {
  PixelPart part;
  double square_width = 0, square_height = 0; ///< of the square, in stored pixels; more than 0
};

/// Squares stand at every eighth of their side, to whole pixels. One that is larger than the part is cut to
/// it; at its right and lower edge the last eighth may be narrower. Where a square is wide enough, every
/// second, third, ... pixel and row is taken, so that a square still has 64 x 64 samples or more.
class InkMeter {
public:
  /// CMYK is measured as it is stored, other colour models through `table`; the layout, which is of rows that
  /// are not reduced, and the table must outlive this.
  InkMeter(const InkOrder &order, const RowLayout &layout, const PressTable *table);
  /// Row `y` of the picture as stored; rows outside the part are not looked at.
  void add(std::int64_t y, const std::uint8_t *row);
  /// After the last row; none where nothing was measured.
  std::optional<Ink> take();

private:
  struct Axis {
    std::int64_t cell, step, window; ///< pixels of a cell, from sample to sample; cells of the square
  };
  static Axis axis_of(double side, std::int64_t length);
  template <class InkOf>
  void add_samples(InkOf ink_of);
  void measure_inks(const std::uint8_t *row);
  void measure_colours(const std::uint8_t *row);
  void finish_cells();

  PixelPart part_;
  const RowLayout &layout_;
  const PressTable *table_;
  Axis x_, y_;
  ToRgb to_rgb_;
  SquareMaximum squares_;
  std::vector<SquareMaximum::Cell> cells_;
  std::vector<std::uint8_t> rgb_;
  std::int64_t rows_ = 0; ///< of the part, that have come
  double samples_ = 0, out_ = 0;
};

} // namespace stoneproof
