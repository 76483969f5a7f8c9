// A file format or colour model that the press sheet does not accept. The only way in is
// unaccepted_file_rule; tested by tests/rules/unaccepted-file.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_laid_frame(evidence, [&](const PlacedFrame &placed) {
    const auto &facts = evidence.pictures[*placed.picture].facts;
    const bool fine = evidence.press.accepts(facts->format) && evidence.press.accepts(facts->colour);
    if (!fine) findings.push_back(about_frame(Grade::query, evidence, placed));
  });
}

} // namespace

extern const Rule unaccepted_file_rule = {
    "unaccepted-file",
    Grade::query,
    "File format or colour is not on the press sheet",
    "What the printer does not accept is sent back, or converted by a machine that nobody watches.",
    "The file’s format and colour model, read from its own header, against the press sheet’s lists.",
    "Convert the picture to a format and colour that the printer accepts, or ask the printer.",
    check,
};

} // namespace stoneproof
