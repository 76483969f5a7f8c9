// The finished PDF is encrypted. The only way in is locked_file_rule; tested by
// tests/rules/locked-file.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  if (!evidence.book.print_file || !evidence.book.print_file->encrypted) return;
  findings.push_back({});
  findings.back().grade = Grade::hold;
}

} // namespace

extern const Rule locked_file_rule = {
    "locked-file",
    Grade::hold,
    "PDF is encrypted",
    "A printer’s machine cannot open it, or may not change what it must.",
    "The file has an encryption dictionary, with whatever password and rights (ISO 15930-7, PDF/X-4, allows "
    "none).",
    "Export the PDF without a password and without restrictions.",
    check,
    false,
    true,
};

} // namespace stoneproof
