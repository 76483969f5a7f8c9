// A page holds transparency and the press sheet does not accept it. The only way in is transparent_page_rule;
// tested by tests/rules/transparent-page.
#include "engine/rules/about.h"
#include "engine/rules/print_page.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_print_page(evidence, [&](std::size_t page, const PrintPage &print) {
    if (evidence.press.finished_pdf.transparency || !print.transparent) return;
    findings.push_back(about_print_page(Grade::query, evidence, page));
  });
}

} // namespace

extern const Rule transparent_page_rule = {
    "transparent-page",
    Grade::query,
    "Page holds transparency",
    "Older machines flatten what is see-through or blended on their own: thin lines, stitched pictures, "
    "changed colours.",
    "Pages with an opacity below one, a blend mode other than Normal, or a soft mask, where the press sheet "
    "says that transparency is not accepted (ISO 32000-1, clause 11).",
    "Export the PDF for a standard without transparency (PDF/X-1a or PDF/X-3), or ask the printer.",
    check,
    false,
    true,
};

} // namespace stoneproof
