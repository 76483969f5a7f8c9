// A line is thinner than the press holds. The only way in is hairline_rule; tested by
// tests/rules/hairline.
#include "engine/rules/about.h"
#include "engine/rules/print_page.h"

#include <algorithm>

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_print_page(evidence, [&](std::size_t page, const PrintPage &print) {
    const Length least = evidence.press.finished_pdf.thinnest_line;
    const ThinLine *thinnest = nullptr;
    for (const ThinLine &line : print.lines)
      if (line.width < least - layout_rounding / 10 && (!thinnest || line.width < thinnest->width))
        thinnest = &line;
    if (!thinnest) return;
    findings.push_back(about_print_page(Grade::query, evidence, page));
    findings.back().area = thinnest->rect;
    findings.back().measured = thinnest->width;
    findings.back().wanted = least;
  });
}

} // namespace

extern const Rule hairline_rule = {
    "hairline",
    Grade::query,
    "Line is too thin to print",
    "It breaks up on the press, or vanishes. A line of no width comes out as thin as the machine can make "
    "it.",
    "The width of each stroked line on the page, as its matrix leaves it, and the shorter side of each "
    "filled bar, against the thinnest line of the press sheet (common practice: 0.25 pt). Of several the "
    "thinnest is told.",
    "Make the line at least as wide as the press sheet wants.",
    check,
    false,
    true,
};

} // namespace stoneproof
