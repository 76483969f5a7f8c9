// The boxes of a page of the finished PDF contradict each other. The only way in is boxes_amiss_rule; tested
// by tests/rules/boxes-amiss.
#include "engine/rules/about.h"
#include "engine/rules/print_page.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_print_page(evidence, [&](std::size_t page, const PrintPage &print) {
    if (!box_fault(print.boxes)) return;
    findings.push_back(about_print_page(Grade::hold, evidence, page));
  });
}

} // namespace

extern const Rule boxes_amiss_rule = {
    "boxes-amiss",
    Grade::hold,
    "Page boxes contradict each other",
    "The machines that put pages on the printing sheet go by the boxes. Where these contradict each other, "
    "the page is cut in the wrong place or refused.",
    "ISO 15930-7 (PDF/X-4): a page names a TrimBox or an ArtBox and not both; the trim lies inside the "
    "BleedBox, and all of them inside the MediaBox; a CropBox cuts off nothing of them. A difference within "
    "the rounding of layout programs, 0.05 mm (our own choice), passes.",
    "Export the PDF anew, and let the layout program write the page boxes.",
    check,
    false,
    true,
};

} // namespace stoneproof
