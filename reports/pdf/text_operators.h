// A shaped line as text operators of a page.
#pragma once

#include "reports/pdf/font_table.h"
#include "reports/type/typesetter.h"

#include <string>

namespace stoneproof::pdf {

/// Where the baseline begins, measured from the bottom left corner of the page, the size, and whether the
/// line runs down the page, turned a quarter clockwise.
struct TextPlace {
  double x_pt = 0, y_pt = 0, size_pt = 0;
  bool down = false;
};

/// Appends one text object (BT to ET) to `out`. Colour is the caller's.
void append_text(std::string &out, const ShapedLine &line, const TextPlace &place,
                 const Typesetter &typesetter, FontTable &fonts);

} // namespace stoneproof::pdf
