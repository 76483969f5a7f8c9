// A page has another trim than the book. The only way in is mixed_trim_rule; tested by
// tests/rules/mixed-trim.
#include "engine/rules/print_page.h"

namespace stoneproof {

namespace {

Length distance(Length a, Length b) { return a < b ? b - a : a - b; }

/// The rule other-paper speaks of it.
bool told_as_other_paper(const Book &book, std::size_t page) {
  const auto &print = book.pages[page].print;
  return print && !print->boxes.trim && is_office_page(book, page);
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const Size &of_book = evidence.book.trim;
  for (std::size_t index = 0; index < evidence.book.pages.size(); ++index) {
    const auto &trim = evidence.book.pages[index].trim;
    if (!trim || told_as_other_paper(evidence.book, index)) continue;
    const Length width = distance(trim->width, of_book.width);
    const Length height = distance(trim->height, of_book.height);
    if (std::max(width, height) <= layout_rounding) continue;
    Finding finding;
    finding.grade = Grade::hold;
    finding.page = index;
    finding.area = evidence.spaces[index].trim;
    finding.measured = width >= height ? trim->width : trim->height;
    finding.wanted = width >= height ? of_book.width : of_book.height;
    findings.push_back(std::move(finding));
  }
}

} // namespace

extern const Rule mixed_trim_rule = {
    "mixed-trim",
    Grade::hold,
    "Page has another size than the book",
    "All pages of a book are cut in one go. A smaller page gets white edges, and a larger one loses what "
    "lies there. A page that stands turned is printed turned, or cut in two.",
    "The width and height of the page’s own trim, of one page of a spread, against those of the book. A "
    "difference within the rounding of layout programs, 0.05 mm (our own choice), passes.",
    "Lay the page out anew in the book’s size, or where it has that size but lies turned, turn it.",
    check,
};

} // namespace stoneproof
