// The items of a page as operators.
#pragma once

#include "reports/layout/document.h"
#include "reports/pdf/font_table.h"
#include "reports/pdf/page_structure.h"
#include "reports/type/typesetter.h"

#include <cstddef>
#include <set>
#include <string>

namespace stoneproof::pdf {

/// What the pages of a document have in common, filled as they are drawn.
struct SharedResources {
  FontTable fonts;
  std::set<int> opacities; ///< in thousandths
};

struct PageContent {
  std::string operators;
  std::set<std::size_t> images;    ///< that the page shows
  std::set<std::size_t> own_pages; ///< likewise, of the user's PDF
  bool veiled = false;             ///< something on it is not opaque
  PageStructure structure;         ///< of what is drawn; all else is marked as an artifact
};

/// Draws a page from back to front. y is turned round here and nowhere before.
PageContent content_of(const layout::DocumentPage &page, const Typesetter &typesetter,
                       SharedResources &shared);

/// Names in the resources of a page.
std::string image_name(std::size_t image);
std::string own_page_name(std::size_t page);
std::string opacity_name(int thousandths);

} // namespace stoneproof::pdf
