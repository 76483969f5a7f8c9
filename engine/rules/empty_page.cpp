// A page has nothing on it. The only way in is empty_page_rule; tested by tests/rules/empty-page.
#include "engine/rules/about.h"
#include "engine/rules/print_page.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const auto &pages = evidence.book.pages;
  for (std::size_t index = 0; index < pages.size(); ++index) {
    const Page &page = pages[index];
    if (page.kind == PageKind::cover || page.blank || page.print || !shows_nothing(page)) continue;
    Finding finding;
    finding.grade = Grade::query;
    finding.page = index;
    finding.area = evidence.spaces[index].trim;
    findings.push_back(std::move(finding));
  }
  // A finished PDF cannot say which are meant: they are asked about all at once.
  const auto empty = empty_print_pages(evidence.book);
  if (empty.empty()) return;
  findings.push_back(about_print_page(Grade::query, evidence, empty.front()));
  findings.back().measured = Count{empty.size()};
}

} // namespace

extern const Rule empty_page_rule = {
    "empty-page",
    Grade::query,
    "Page has nothing on it",
    "An empty page may be meant, or its pictures were lost on the way; on paper the two look alike.",
    "Pages and spreads without a frame and without a text that are not said to be blank. Of a finished PDF, "
    "which cannot say so: pages that show no picture and no text and on whose trim nothing is painted, white "
    "aside; they are asked about together.",
    "Put back what belongs there. Where the page is meant to be empty, say so in the description; in a "
    "finished PDF nothing needs to be done.",
    check,
};

} // namespace stoneproof
