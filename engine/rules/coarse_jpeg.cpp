// A JPEG that was saved more coarsely than the press sheet wants. The only way in is coarse_jpeg_rule; tested
// by tests/rules/coarse-jpeg and, at its bars, in tests/engine/rules.
#include "engine/measure/jpeg_quality.h"
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const QualityBar &bar = evidence.press.jpeg_quality;
  each_laid_frame(evidence, [&](const PlacedFrame &placed) {
    const auto &jpeg = evidence.pictures[*placed.picture].facts->jpeg;
    const auto saved = jpeg ? jpeg_quality(*jpeg) : std::nullopt;
    if (!saved || saved->quality >= bar.wanted) return;
    const Grade grade = saved->quality < bar.least ? Grade::hold : Grade::query;
    Finding finding = about_frame(grade, evidence, placed);
    finding.measured = Quality{saved->quality};
    finding.wanted = Quality{bar.wanted};
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule coarse_jpeg_rule = {
    "coarse-jpeg",
    Grade::hold,
    "JPEG saved too coarsely",
    "A JPEG saved at a low quality has lost fine detail for good; in print its blocks show in skies and "
    "faces, "
    "and specks round letters and edges.",
    "The quality setting, 1 to 100, whose quantization tables the file carries: the tables of ITU-T T.81, "
    "Annex K, scaled as the Independent JPEG Group’s library does. Other tables, as cameras write them, are "
    "given the nearest setting, said as about. It tells of the last saving only. The limits are the press "
    "sheet’s (common practice: 75 wanted, least 50).",
    "Ask for the file as it was before it was saved so small, or scan the original again and save it as TIFF "
    "or as a JPEG of the best quality. Saving this file again at a higher quality brings nothing back.",
    check,
};

} // namespace stoneproof
