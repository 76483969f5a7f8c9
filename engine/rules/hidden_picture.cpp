// A picture of the finished PDF shows nowhere. The only way in is hidden_picture_rule; tested by
// tests/rules/hidden-picture.
#include "engine/rules/about.h"
#include "engine/rules/print_page.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_print_page(evidence, [&](std::size_t page, const PrintPage &print) {
    for (const Rect &rect : print.hidden_pictures) {
      findings.push_back(about_print_page(Grade::note, evidence, page));
      findings.back().area = rect;
    }
  });
}

} // namespace

extern const Rule hidden_picture_rule = {
    "hidden-picture",
    Grade::note,
    "Picture is there and does not show",
    "It makes the file larger, and somebody may have meant it to show.",
    "Pictures that lie wholly beyond the sheet, or that a clip hides wholly.",
    "Look at the page in the layout program. Take the picture off, or put it back.",
    check,
    false,
    true,
};

} // namespace stoneproof
