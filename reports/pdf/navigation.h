// How a reader moves through a PDF: bookmarks, page labels, links and notes.
#pragma once

#include "reports/layout/document.h"
#include "reports/pdf/object_file.h"

#include <vector>

namespace stoneproof::pdf {

/// The pages' numbers, in their order. An index beyond them throws std::out_of_range.
using PageNumbers = std::vector<ObjectNumber>;

/// Writes the links and notes of one page; gives their references as an array, empty if there are none.
std::string write_annotations(ObjectFile &file, const layout::Document &document,
                              const layout::DocumentPage &page, const PageNumbers &pages,
                              ObjectNumber no_appearance);

/// A form that shows nothing. Notes lie over the mark that is drawn on the page, which is their icon.
ObjectNumber write_no_appearance(ObjectFile &file);

/// Writes the bookmarks, each closed over those below it; gives the reference of the outline, empty if there
/// are none.
std::string write_bookmarks(ObjectFile &file, const layout::Document &document, const PageNumbers &pages);

/// The catalog's value for the pages' labels; empty if no page has one.
std::string page_labels(const layout::Document &document);

} // namespace stoneproof::pdf
