// A page has nothing on it. The only way in is empty_page_rule; tested by tests/rules/empty-page.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const auto &pages = evidence.book.pages;
  for (std::size_t index = 0; index < pages.size(); ++index) {
    const Page &page = pages[index];
    if (page.kind == PageKind::cover || page.blank || !page.frames.empty() || !page.texts.empty()) continue;
    Finding finding;
    finding.grade = Grade::query;
    finding.page = index;
    finding.area = evidence.spaces[index].trim;
    findings.push_back(std::move(finding));
  }
}

} // namespace

extern const Rule empty_page_rule = {
    "empty-page",
    Grade::query,
    "Page has nothing on it",
    "An empty page may be meant, or its pictures were lost on the way; on paper the two look alike.",
    "Pages and spreads without a frame and without a text that are not described as blank.",
    "Put back what belongs there, or describe the page as blank.",
    check,
};

} // namespace stoneproof
