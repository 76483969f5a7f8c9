// Books and press sheets of a few figures, for the tests of binding.
#pragma once

#include "engine/binding/bound_book.h"

namespace stoneproof::test {

inline Length mm(double value) { return Length::of_mm(value); }

/// A paper by its caliper.
inline Stock paper(double caliper_mm) {
  Stock stock;
  stock.caliper = mm(caliper_mm);
  return stock;
}

/// Trim 200 x 250 mm, bleed 3 mm; so many single pages without content.
inline Book book_of(BindingKind kind, std::size_t pages) {
  Book book;
  book.trim = {mm(200), mm(250)};
  book.bleed = {mm(3), mm(3), mm(3), {}};
  book.binding.kind = kind;
  book.pages.resize(pages);
  for (std::size_t i = 0; i < pages; ++i) book.pages[i].number = static_cast<int>(i) + 1;
  return book;
}

/// A leaf may differ by 0.013 mm (GPO, 1999); page counts are to be a multiple of `multiple`.
inline PressSheet sheet_of(int multiple = 4) {
  PressSheet press;
  press.page_counts.fill({multiple, 1, 99'999});
  press.spine.leaf_tolerance = mm(0.013);
  return press;
}

} // namespace stoneproof::test
