// The book has a number of pages that cannot be folded, or that its binding cannot hold. The only way in is
// page_count_off_rule; tested by tests/rules/page-count-off.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

/// The limits are asked of the book as it is bound, with the blanks that fill it up.
void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const SignaturePlan &plan = evidence.bound.plan;
  const PageCountBar &bar = evidence.press.page_count(evidence.book.binding.kind);
  const auto least = static_cast<std::size_t>(bar.least), most = static_cast<std::size_t>(bar.most);
  if (plan.pages == 0) return;
  std::size_t wanted = plan.total();
  if (plan.total() < least) wanted = least;
  if (plan.total() > most) wanted = most;
  if (wanted == plan.pages) return;
  Finding finding;
  finding.grade = Grade::hold;
  finding.measured = Count{plan.pages};
  finding.wanted = Count{wanted};
  findings.push_back(std::move(finding));
}

} // namespace

extern const Rule page_count_off_rule = {
    "page-count-off",
    Grade::hold,
    "Number of pages cannot be bound",
    "Pages are printed on sheets that are folded. What is missing to a whole sheet comes out as blank pages, "
    "and somebody has to say where. Too few pages do not hold in a binding, and too many do not close.",
    "The pages of the block, a spread counting for two, without the cover. They are to be a multiple of the "
    "press sheet’s page multiple for this binding, of 4 in a stapled book since a folded sheet has four "
    "pages, and of 2 in any, since a leaf has two sides: blanks = (multiple - pages mod multiple) mod "
    "multiple, all at the end. With them the count is held against the press sheet’s limits (common "
    "practice).",
    "Add pages, blank if so meant, or take some out.",
    check,
};

} // namespace stoneproof
