// What the rules about finished PDFs share.
#pragma once

#include "engine/rules/about.h"
#include "engine/rules/edges.h"

#include <optional>
#include <vector>

namespace stoneproof {

/// Calls `check(page, print)` for every page that was read from a finished PDF.
template <class Check>
void each_print_page(const Evidence &evidence, Check check) {
  for (std::size_t page = 0; page < evidence.book.pages.size(); ++page)
    if (const auto &print = evidence.book.pages[page].print) check(page, *print);
}

inline Finding about_print_page(Grade grade, const Evidence &evidence, std::size_t page) {
  Finding finding;
  finding.grade = grade;
  finding.page = page;
  finding.area = evidence.spaces[page].trim;
  return finding;
}

/// Whether a page shows nothing: neither frame nor text, nor paint of a finished PDF. Of a page that could
/// not be read nobody knows.
bool shows_nothing(const Page &page);

/// A page without a picture of its own to show: one that is said to be blank, or of a finished PDF that shows
/// nothing.
inline bool stays_empty(const Page &page) { return page.blank || (page.print && shows_nothing(page)); }

/// The pages of a finished PDF that show nothing and are not said to be blank, by their places in
/// Book::pages.
std::vector<std::size_t> empty_print_pages(const Book &book);

/// Whether the sheet of a PDF ends before the bleed does that is wanted at a side.
bool sheet_lacks_bleed(const PageSpace &space, const PrintPage &print, PageSide side);

/// Whether a size is that of the book turned by 90 degrees, and not the book's own.
bool is_turned(const Size &size, const Size &of_book);

/// What is wrong with the boxes of a page.
enum class BoxFault { trim_and_art, trim_beyond_bleed, beyond_media, cropped };
std::optional<BoxFault> box_fault(const PageBoxes &boxes);

/// The first colour model, of those in which something is painted, that the press sheet does not accept.
std::optional<ColourModel> unaccepted_paint(const PressSheet &press, const PaintedIn &painted);

/// Whether a page has the size of A4 or Letter paper, in a book of another.
bool is_office_page(const Book &book, std::size_t page);

} // namespace stoneproof
