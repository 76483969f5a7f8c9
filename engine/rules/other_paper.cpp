// A page has the size of office paper in a book of another size. The only way in is other_paper_rule; tested
// by tests/rules/other-paper.
#include "engine/rules/about.h"
#include "engine/rules/print_page.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_print_page(evidence, [&](std::size_t page, const PrintPage &print) {
    if (!is_office_page(evidence.book, page) || print.boxes.trim) return;
    Finding finding = about_print_page(Grade::hold, evidence, page);
    finding.measured = evidence.book.pages[page].trim->width;
    finding.wanted = evidence.book.trim.width;
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule other_paper_rule = {
    "other-paper",
    Grade::hold,
    "Page was printed to office paper",
    "A page that went through a print dialog was fitted to A4 or Letter: everything on it has another size "
    "than in the layout.",
    "Pages without a TrimBox whose sheet is A4 (210 × 297 mm, ISO 216) or Letter (8.5 × 11 in, ANSI/ASME "
    "Y14.1), upright or across, within 0.5 mm (our own choice: programs write whole points), in a book whose "
    "pages mostly have another size.",
    "Export the page from the layout program in the book’s own size, without a print dialog.",
    check,
    false,
    true,
};

} // namespace stoneproof
