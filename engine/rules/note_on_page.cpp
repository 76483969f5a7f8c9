// A comment or a form field lies on the page. The only way in is note_on_page_rule; tested by
// tests/rules/note-on-page.
#include "engine/rules/about.h"
#include "engine/rules/print_page.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_print_page(evidence, [&](std::size_t page, const PrintPage &print) {
    const Rect sheet = print.boxes.bleed.value_or(evidence.spaces[page].trim);
    Finding finding = about_print_page(Grade::query, evidence, page);
    std::size_t notes = 0;
    for (const PageNote &note : print.notes) {
      if (note.kind == "PrinterMark" || note.kind == "TrapNet" || !shared_part(note.rect, sheet)) continue;
      if (notes++ == 0) finding.area = note.rect;
    }
    finding.measured = Count{notes};
    if (notes > 0) findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule note_on_page_rule = {
    "note-on-page",
    Grade::query,
    "Comment or form field lies on the page",
    "Some machines print it into the book.",
    "Annotations other than links that are not hidden and lie on the page or in its bleed; printer’s marks "
    "and trap networks may (ISO 15930-7, PDF/X-4).",
    "Take comments and form fields out before the PDF goes to the printer.",
    check,
    false,
    true,
};

} // namespace stoneproof
