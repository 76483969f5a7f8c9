// Something other than a picture is painted in colours that the press sheet does not accept. The only way in
// is paint_not_accepted_rule; tested by tests/rules/paint-not-accepted.
#include "engine/rules/about.h"
#include "engine/rules/print_page.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_print_page(evidence, [&](std::size_t page, const PrintPage &print) {
    if (!unaccepted_paint(evidence.press, print.painted_in)) return;
    findings.push_back(about_print_page(Grade::query, evidence, page));
  });
}

} // namespace

extern const Rule paint_not_accepted_rule = {
    "paint-not-accepted",
    Grade::query,
    "Text or shapes in colours that are not accepted",
    "The printer’s software converts them by its own lights: black text in RGB comes out in four inks, with "
    "coloured fringes.",
    "Colour spaces in which text, lines, areas and shadings of the page are painted, by the number of their "
    "channels: gray, RGB, CMYK or spot inks, against the colour models of the press sheet; spot inks count "
    "as “other”. Paint in white does not count.",
    "Convert the colours in the layout program, or ask the printer whether these are welcome.",
    check,
    false,
    true,
};

} // namespace stoneproof
