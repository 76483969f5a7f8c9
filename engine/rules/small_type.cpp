// Type is smaller than the press sheet's least for its kind. The only way in is small_type_rule; tested by
// tests/rules/small-type.
#include "engine/rules/about.h"
#include "engine/rules/edges.h"

namespace stoneproof {

namespace {

/// Half a thousandth of an inch: layout programs round no further, so that 6 pt told in inches stays 6 pt.
constexpr Length size_rounding = Length::of_ticks(Length::ticks_per_in / 2000);

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_text(evidence, [&](std::size_t page, std::size_t index, const TextBlock &text) {
    const Length least = evidence.press.least_type_of(text.kind);
    if (text.text.empty() || text.type_size >= least - size_rounding) return;
    findings.push_back(about_text(Grade::query, evidence, page, index));
    findings.back().measured = text.type_size;
    findings.back().wanted = least;
  });
}

} // namespace

extern const Rule small_type_rule = {
    "small-type",
    Grade::query,
    "Type is very small",
    "Small type fills in or breaks up in print, most of all where it is white on a dark ground or made of "
    "several inks, and many readers of family and local books are old.",
    "The type size of the text block against the press sheet’s least for its kind (common practice: 6 pt "
    "can be read, 8 pt with ease). A size that is smaller by no more than the rounding of layout "
    "programs, half a thousandth of an inch, passes.",
    "Set it larger, or give it fewer words. If the printer accepts smaller type, say so in the press "
    "sheet.",
    check,
};

} // namespace stoneproof
