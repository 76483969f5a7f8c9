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

  /// Takes the elements of one page and gives the entry by which it finds them (StructParents); none if
  /// nothing of it is read.
  Entries add_page(PageStructure structure, ObjectNumber page, Length page_height);
  /// Writes all elements and gives the reference of the root; empty if nothing is read. To be called when the
  /// pages' contents are written: of each stream, PoDoFo moves all objects that were reserved after it.
  std::string finish();

private:
  struct Page {
    PageStructure structure;
    ObjectNumber object;
    Length height;
  };
  void write_page(const Page &page);

  ObjectFile &file_;
  ObjectNumber root_, document_;
  std::vector<Page> pages_;
  std::string sections_; ///< references
  std::string parents_;  ///< of all pieces of content, by page
};

} // namespace stoneproof::pdf
