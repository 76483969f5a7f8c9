// The finished PDF of a book, as marks to lay on it take it to be: which of its pages shows what, and where.
// schema/marks.md says the same in words.
#pragma once

#include "engine/placement/page_space.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace stoneproof::record {

/// A printer gets the pages of the book in one file and the cover, laid flat, in another.
enum class FinishedFile { block, cover };

/// Points of PDF default user space (ISO 32000-1, 8.3.2.3): from the lower left corner of the page, y
/// upwards.
struct UserRect {
  double left = 0, bottom = 0, right = 0, top = 0;
};

/// A place on a page of the finished PDF.
struct PdfPlace {
  std::size_t page = 0; ///< counted from 0
  UserRect rect;
};

/// Its pages are those of the description in their order, single ones: a spread is two of them, a blank page
/// one. Each is as large as its trim with the bleed of the description on its four sides (the cover of a
/// case: with the turn-in), and nothing else, so that its TrimBox lies inside its MediaBox by the bleed.
class FinishedPdf {
public:
  FinishedPdf(const Book &book, FinishedFile file);

  bool empty() const { return pages_.empty(); }
  /// Whether one of Book::pages is in this file.
  bool shows(std::size_t page) const;
  /// The parts of a place on one of Book::pages, one for each page of the PDF that shows some of it: at most
  /// two, of a spread. A place thinner than `least_mark` is told as wide as that. Empty where it lies off the
  /// pages.
  std::vector<PdfPlace> places_of(std::size_t page, const Rect &area) const;
  /// Where a note stands whose place is not on the pages: on the page nearest to it, beside that place.
  PdfPlace note_near(std::size_t page, const Rect &area) const;
  /// Where a note without a place stands: at the top of one of Book::pages, else of the first page of the
  /// PDF, beside the earlier ones, each asked for once. The PDF must not be empty.
  PdfPlace next_note(std::optional<std::size_t> page);

private:
  struct PdfPage {
    std::size_t page = 0; ///< index into Book::pages
    Rect media, trim;     ///< in that page's coordinates
    Rect own;             ///< of what is laid out there, what belongs on this page: up to the fold
    int notes = 0;        ///< that stand at its top
  };

  void add(const Book &book, std::size_t index);
  /// `inside` is the bleed at the fold.
  void add_spread(const PageSpace &space, Length inside, std::size_t index);
  PdfPlace note_at(std::size_t page, Point corner) const;
  UserRect user_rect(const PdfPage &page, const Rect &rect) const;

  std::vector<PdfPage> pages_;
};

} // namespace stoneproof::record
