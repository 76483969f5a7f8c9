// The reader's own PDF: its pages shown in a proof, and a copy of it with notes. Through qpdf, which copies
// objects between files and mends broken ones. Foreign files: everything here runs in a process of its own.
#pragma once

#include "engine/outcome.h"
#include "engine/units/geometry.h"

#include <filesystem>
#include <string>
#include <vector>

namespace stoneproof::pdf {

/// A PDF that is only read.
struct UserPdf {
  std::filesystem::path file;
  std::string password; ///< empty: none
};

/// Key of the empty form XObjects of a proof whose place pages of the user's PDF take; its value is the page,
/// counted from 0. The form's space has its origin at the top left corner of the page's trim as it is seen, y
/// upwards.
inline constexpr const char *own_page_key = "StoneproofOwnPage";

/// Puts the pages in, vector and all, each on white paper. `proof` is rewritten; on a fault it stays as it
/// was, and shows nothing in those places.
Outcome<Done> put_own_pages(const std::filesystem::path &proof, const UserPdf &pdf);

enum class NoteKind { solid_box, dashed_box, dotted_box, text };

/// A note on a page of the user's PDF.
struct UserNote {
  std::size_t page = 0; ///< counted from 0
  Rect area; ///< from the top left corner of its trim as it is seen; of a text note its corner counts
  NoteKind kind = NoteKind::text;
  double red = 0, green = 0, blue = 0; ///< 0 to 1
  std::string title, words;
  std::string name; ///< one of a kind in the file
  std::string date; ///< as PDF writes it, e.g. "D:20240101120000Z"; empty: none
};

/// Writes a copy of the PDF with the notes as annotations that every viewer lists; the PDF itself is not
/// changed. The copy is not encrypted. Faults: the PDF cannot be read, the copy cannot be written.
Outcome<Done> write_annotated(const UserPdf &pdf, const std::vector<UserNote> &notes,
                              const std::filesystem::path &target);

} // namespace stoneproof::pdf
