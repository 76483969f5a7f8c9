// The page numbers have a gap. The only way in is pages_missing_rule; tested by tests/rules/pages-missing.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

/// The number that should follow a page or spread.
std::size_t next_number(const Page &page) {
  return static_cast<std::size_t>(page.number) + (page.kind == PageKind::spread ? 2u : 1u);
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const auto &pages = evidence.book.pages;
  std::size_t expected = 1;
  bool first = true;
  for (std::size_t index = 0; index < pages.size(); ++index) {
    if (pages[index].kind == PageKind::cover) continue;
    const auto number = static_cast<std::size_t>(pages[index].number);
    if (number > expected) {
      Finding finding;
      finding.grade = first ? Grade::query : Grade::hold;
      finding.page = index;
      finding.measured = Count{number};
      finding.wanted = Count{expected};
      findings.push_back(std::move(finding));
    }
    expected = next_number(pages[index]);
    first = false;
  }
}

} // namespace

extern const Rule pages_missing_rule = {
    "pages-missing",
    Grade::hold,
    "Pages are missing",
    "A page that was left out moves all that follow: after an odd number of them left pages come to lie on "
    "the right, and inner margins on the outside.",
    "Each page number against the one before it and one more, two more after a spread. A gap holds the book. "
    "A book that begins with another number than 1 is a query, since it may be a part of a book.",
    "Put in the pages that are missing, blank if so meant, or number those that follow anew.",
    check,
};

} // namespace stoneproof
