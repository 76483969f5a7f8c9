// What the rules about finished PDFs share.
#pragma once

#include "engine/rules/about.h"
#include "engine/rules/edges.h"

#include <optional>

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

/// What is wrong with the boxes of a page.
enum class BoxFault { trim_and_art, trim_beyond_bleed, beyond_media, cropped };
std::optional<BoxFault> box_fault(const PageBoxes &boxes);

/// The first colour model, of those in which something is painted, that the press sheet does not accept.
std::optional<ColourModel> unaccepted_paint(const PressSheet &press, const PaintedIn &painted);

/// Whether a page has the size of A4 or Letter paper, in a book of another.
bool is_office_page(const Book &book, std::size_t page);

} // namespace stoneproof
