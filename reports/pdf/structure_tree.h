// The structure of the whole document (ISO 32000-1, 14.7 and 14.8): one section a page.
#pragma once

#include "reports/pdf/object_file.h"
#include "reports/pdf/page_structure.h"

#include <string>
#include <vector>

namespace stoneproof::pdf {

class StructureTree {
public:
  explicit StructureTree(ObjectFile &file) : file_(file), root_(file.reserve()), document_(file.reserve()) {}

  /// Writes the elements of one page and gives the entry by which it finds them (StructParents); none if
  /// nothing of it is read.
  Entries add_page(const PageStructure &structure, ObjectNumber page, Length page_height);
  /// Writes what holds the pages together and gives the reference of the root; empty if nothing is read.
  std::string finish();

private:
  ObjectFile &file_;
  ObjectNumber root_, document_;
  std::string sections_;     ///< references
  std::string parents_;      ///< of all pieces of content, by page
  std::size_t numbered_ = 0; ///< pages in `parents_`
};

} // namespace stoneproof::pdf
