// A font of the finished PDF is not in the file. The only way in is font_not_embedded_rule; tested by
// tests/rules/font-not-embedded.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  if (!evidence.book.print_file) return;
  const auto &fonts = evidence.book.print_file->fonts;
  for (std::size_t i = 0; i < fonts.size(); ++i) {
    if (fonts[i].embedded) continue;
    Finding finding;
    finding.grade = Grade::hold;
    finding.font = i;
    findings.push_back(std::move(finding));
  }
}

} // namespace

extern const Rule font_not_embedded_rule = {
    "font-not-embedded",
    Grade::hold,
    "Font is not in the file",
    "The printer’s machine puts another font in its place: other letters, other line ends, missing accents.",
    "Fonts that a text of the finished PDF is shown in and whose outlines are not embedded, the fourteen "
    "standard ones among them (ISO 15930-7, PDF/X-4, asks for all).",
    "Export the PDF with all fonts embedded. Where the font does not allow it, take another or turn the "
    "words into outlines.",
    check,
    false,
    true,
};

} // namespace stoneproof
