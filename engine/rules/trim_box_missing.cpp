// A page of the finished PDF does not say where it is cut. The only way in is trim_box_missing_rule; tested
// by tests/rules/trim-box-missing.
#include "engine/rules/about.h"
#include "engine/rules/print_page.h"

namespace stoneproof {

namespace {

/// One finding for all pages: most often it is none or every one of them.
void check(const Evidence &evidence, std::vector<Finding> &findings) {
  std::optional<Finding> finding;
  std::size_t pages = 0;
  each_print_page(evidence, [&](std::size_t page, const PrintPage &print) {
    if (print.boxes.trim || print.boxes.art) return;
    ++pages;
    if (!finding) finding = about_print_page(Grade::query, evidence, page);
  });
  if (!finding) return;
  finding->measured = Count{pages};
  findings.push_back(*finding);
}

} // namespace

extern const Rule trim_box_missing_rule = {
    "trim-box-missing",
    Grade::query,
    "Page does not say where it is cut",
    "Without a TrimBox the printer takes the whole sheet for the page, and what was meant to be cut off is "
    "printed, or the page is scaled to fit.",
    "Pages of the finished PDF that name neither a TrimBox nor an ArtBox, as ISO 15930-7 (PDF/X-4) asks of "
    "every page; the edge of what the page shows, CropBox or MediaBox, stands for the trim in all other "
    "figures.",
    "Export the PDF with its page boxes: the trim size as TrimBox, the bleed as BleedBox.",
    check,
    false,
    true,
};

} // namespace stoneproof
