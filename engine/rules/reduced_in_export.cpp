// The finished PDF holds a picture at fewer pixels than the file it was made from, and too few. The only way
// in is reduced_in_export_rule; tested by tests/rules/reduced-in-export.
#include "engine/rules/about.h"
#include "engine/rules/shortfall.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_laid_frame(evidence, [&](const PlacedFrame &placed) {
    const double gain = gain_of_master(evidence, placed);
    const Density here = placed.laid->effective();
    const auto grade = shortfall(evidence, placed, here);
    if (!grade || gain <= 1) return;
    findings.push_back(about_frame(*grade, evidence, placed));
    findings.back().measured = here;
    findings.back().wanted = here * gain;
  });
}

} // namespace

extern const Rule reduced_in_export_rule = {
    "reduced-in-export",
    Grade::hold,
    "Export threw pixels away",
    "The file on disk holds more detail than the PDF that goes to the printer: nobody need scan anything "
    "again.",
    "Effective density of the picture in the PDF, where it falls short of the press sheet’s, against what "
    "the file gives that it was made from: pixels of the file for the same part. The file is found by what "
    "it shows, among those of the folder that was named (hashes, and correlation after scaling). At least "
    "1.1 times as many pixels are told (our own choice).",
    "Export the PDF anew without reducing pictures, or at the density that the press sheet wants.",
    check,
    true,
    true,
};

} // namespace stoneproof
