// The finished PDF does not say for which printing condition it was made. The only way in is
// no_output_intent_rule; tested by tests/rules/no-output-intent.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  if (!evidence.book.print_file || !evidence.book.print_file->output_intent.empty()) return;
  findings.push_back({});
  findings.back().grade = Grade::note;
}

} // namespace

extern const Rule no_output_intent_rule = {
    "no-output-intent",
    Grade::note,
    "PDF does not say what it was made for",
    "Colours without a printing condition are anybody’s guess.",
    "The file has no output intent (ISO 15930-7, PDF/X-4, asks for one).",
    "Export the PDF for the printing condition that the printer names, for example as PDF/X-4.",
    check,
    false,
    true,
};

} // namespace stoneproof
