// The book folds, but with many blank pages at its end, or with a last sheet of an odd size. The only way in
// is signature_left_over_rule; tested by tests/rules/signature-left-over.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

bool is_folded(BindingKind kind) {
  return kind == BindingKind::saddle || kind == BindingKind::perfect || kind == BindingKind::case_bound;
}

/// Blanks that fill the last sheet or the last signature, and no more than that. More of them, or fewer, are
/// there for their own sake, to be written on.
bool only_fill(const Evidence &evidence, std::size_t blanks) {
  const BoundBook &bound = evidence.bound;
  const std::size_t used = bound.plan.total() - blanks;
  return blanks == signature_plan(used, bound.signature, bound.multiple).blanks ||
         (evidence.book.binding.signature && blanks == blanks_to_multiple(used, bound.signature));
}

/// Where none is described, page-count-off tells how many are wanted.
void check_blanks(const Evidence &evidence, std::vector<Finding> &findings) {
  const std::size_t described = blanks_described_at_end(evidence.book);
  const std::size_t blanks = described + evidence.bound.plan.blanks;
  if (described == 0 || blanks <= most_blanks || !only_fill(evidence, blanks)) return;
  Finding finding;
  finding.grade = Grade::query;
  finding.measured = Count{blanks};
  finding.wanted = Count{most_blanks};
  findings.push_back(std::move(finding));
}

/// Without a signature that is told nobody knows on what sheets the book is printed.
void check_last(const Evidence &evidence, std::vector<Finding> &findings) {
  const BoundBook &bound = evidence.bound;
  const auto &signatures = bound.plan.signatures;
  const BindingKind kind = evidence.book.binding.kind;
  if (!evidence.book.binding.signature || kind == BindingKind::saddle || signatures.empty()) return;
  const std::size_t last = signatures.back().pages;
  if (last == bound.signature || is_usual_signature(last)) return;
  Finding finding;
  finding.grade = Grade::query;
  finding.measured = Count{last};
  finding.wanted = Count{bound.signature};
  findings.push_back(std::move(finding));
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  if (!is_folded(evidence.book.binding.kind)) return;
  check_blanks(evidence, findings);
  check_last(evidence, findings);
}

} // namespace

extern const Rule signature_left_over_rule = {
    "signature-left-over",
    Grade::query,
    "Last sheet is not used well",
    "Blank pages at the end are paid for like printed ones and look like a mistake when there are many. A "
    "rest of an unusual size is folded from two or three small sheets, which costs more than a whole one.",
    "Blank pages at the end, described or still wanted, that are just as many as fill the last sheet or "
    "signature: more than two are asked about (GPO Style Manual, 2008, rule 1.15). Any other number of them "
    "is taken for pages to be written on. Where the description tells a signature, also the pages that are "
    "left after whole signatures: pages mod signature. A rest is one sheet of its own when it is 4, 8, 12, "
    "16, 24 or 32 pages (the same rule, and New Hart’s Rules 1.8).",
    "Ask the printer what the rest costs. Add pages until the last sheet is full, or take some out.",
    check,
};

} // namespace stoneproof
