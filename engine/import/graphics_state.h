// What a content stream sets and what its painting heeds (ISO 32000-1, 8.4), as far as places and sizes go.
#pragma once

#include "engine/import/pdf_file.h"
#include "engine/import/plane.h"

#include <optional>

namespace stoneproof::finished {

enum class Ink { gray, rgb, cmyk, spot, pattern, other };

/// The colour that fills or strokes.
struct Paint {
  Ink ink = Ink::gray;
  bool white = false; ///< no ink at all
  Object pattern;     ///< where the ink is one
};

struct GraphicsState {
  Matrix to_page;
  Outline clip;
  Paint fill, stroke;
  double line_width = 1;

  std::optional<std::size_t> font; ///< index into the fonts that are drawn with
  double size = 0, character_space = 0, word_space = 0, width_share = 1, leading = 0, rise = 0;
  int text_mode = 0;
};

/// The path that is being built, in points of the page.
class Path {
public:
  void move_to(Spot at);
  void line_to(Spot at);
  void curve_to(Spot one, Spot two, Spot at);
  void clear() { *this = {}; }

  bool empty() const { return !box_; }
  const std::optional<Box> &box() const { return box_; }
  Spot last() const { return last_; }
  /// The path itself where it is one four-sided convex figure; else the box round it.
  Outline outline() const;
  /// The shorter side of the path where it is one four-sided figure.
  std::optional<double> thickness() const;

private:
  void reach(Spot at);
  bool four_sided() const;

  std::optional<Box> box_;
  Outline corners_; ///< of the only figure, as long as it may have four sides
  Spot last_;
  int figures_ = 0;
  bool plain_ = true; ///< no curves, no more corners than four sides have
};

} // namespace stoneproof::finished
