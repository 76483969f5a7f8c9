// The pages of a PDF with what they inherit (ISO 32000-1, 7.7.3).
#pragma once

#include "engine/import/pdf_file.h"
#include "engine/import/plane.h"

#include <optional>
#include <string>
#include <vector>

namespace stoneproof::finished {

/// The boxes of a page (ISO 32000-1, 14.11.2), in its own user space; none: the page does not name it.
struct SheetBoxes {
  Box media{0, 0, 612, 792}; ///< where the page names none: Letter, as readers take it
  std::optional<Box> crop, bleed, trim, art;
  int rotate = 0;  ///< 0, 90, 180 or 270, clockwise
  double unit = 1; ///< points to a unit of user space

  /// What a page shows at most: CropBox within MediaBox.
  Box seen() const;
};

struct PageSource {
  Object page, resources;
  SheetBoxes boxes;
};

/// The trim as it is seen: TrimBox, or where the page names none what it shows.
Box trim_of(const SheetBoxes &boxes);

/// In their order. Never more than `most_pages`; `cut_short` tells that there were. A page that stands twice,
/// or a tree that holds itself, is passed over.
struct PageTree {
  std::vector<PageSource> pages;
  bool cut_short = false;
};
PageTree read_page_tree(const PdfFile &file);

inline constexpr std::size_t most_pages = 10'000;

/// The labels of so many pages (ISO 32000-1, 12.4.2); empty ones where the file names none.
std::vector<std::string> read_page_labels(const PdfFile &file, std::size_t pages);

} // namespace stoneproof::finished
