// A finished PDF -> the description of its book, and its pictures as files. The way into this folder.
#pragma once

#include "engine/book/book.h"
#include "engine/import/apart.h"
#include "engine/outcome.h"

#include <filesystem>
#include <string>

namespace stoneproof::finished {

struct DraftOrder {
  std::filesystem::path pdf;
  std::string password;                       ///< empty: none
  std::filesystem::path pictures;             ///< an existing folder that they are written into
  BindingKind binding = BindingKind::perfect; ///< no PDF tells how it will be bound
};

/// The description as XML (schema/book.md). The PDF is opened read-only, in a process of its own: however
/// broken it is, this comes back within the bounds. Faults: not a PDF, damaged, encrypted with another
/// password, without pages, beyond the bounds; a picture that cannot be written.
Outcome<std::string> draft_book(const DraftOrder &order, const Bounds &bounds);

/// Bounds that suit the size of the file: a minute and 2 s a megabyte, 1 GB and three times the file.
Bounds bounds_for(const std::filesystem::path &pdf);

} // namespace stoneproof::finished
