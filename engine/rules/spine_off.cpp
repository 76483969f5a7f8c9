// The spine was laid out wider or narrower than the book comes out. The only way in is spine_off_rule; tested
// by tests/rules/spine-off.
#include "engine/rules/laid_cover.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const Book &book = evidence.book;
  if (!book.cover || !evidence.bound.cover || !spine_differs(evidence)) return;
  Finding finding = about_cover(Grade::hold, evidence);
  finding.area = laid_spine(*book.cover);
  finding.measured = book.cover->spine;
  finding.wanted = evidence.bound.cover->spine.length;
  findings.push_back(std::move(finding));
}

} // namespace

extern const Rule spine_off_rule = {
    "spine-off",
    Grade::hold,
    "Spine has the wrong width",
    "On a spine that is too wide or too narrow the title sits off its middle, and the edges of the colour "
    "come round to the front or the back.",
    "The spine of the cover as it was laid out against the reckoned one: leaves (pages / 2, blanks "
    "included) × thickness of a leaf; of a glued book two leaves of its cover are added; of a bound case its "
    "endpapers, two boards and the lining. It may differ by leaves × the press sheet’s tolerance of a leaf "
    "(GPO, Government Paper Specification Standards, 1999: 0.013 mm), never by less than the rounding of "
    "layout programs. A stapled book has no spine. That of a spiral is not looked at.",
    "Lay the cover out anew with the reckoned spine, or ask the printer for the width that the bindery "
    "measured, and correct the paper’s figures.",
    check,
};

} // namespace stoneproof
