// A picture was a JPEG of lower quality before it became what it is now. The only way in is
// saved_before_rule; tested by tests/rules/saved-before.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

/// The best that the earlier saving may have been decides; what was good enough then is only told of a file
/// that looks like a master.
std::optional<Grade> grade_of(const JpegPast &past, const QualityBar &bar) {
  if (past.earlier.high < bar.least) return Grade::hold;
  if (past.earlier.high < bar.wanted) return Grade::query;
  return past.kind == JpegPastKind::was_jpeg ? std::optional(Grade::note) : std::nullopt;
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_measured_frame(evidence, [&](const PlacedFrame &placed, const Shown &shown) {
    const JpegPast &past = shown.detail.past;
    if (past.certainty != Certainty::firm || past.kind == JpegPastKind::none) return;
    const auto grade = grade_of(past, evidence.press.jpeg_quality);
    if (!grade) return;
    Finding finding = about_frame(*grade, evidence, placed);
    finding.measured = Quality{past.earlier.quality};
    finding.wanted = Quality{evidence.press.jpeg_quality.wanted};
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule saved_before_rule = {
    "saved-before",
    Grade::hold,
    "Was a coarser JPEG before",
    "What a JPEG has lost stays lost, whatever it is saved as afterwards. A TIFF made of it looks like a "
    "master, and a "
    "JPEG of the best quality like a fresh one; both print with the old one’s blocks and specks.",
    "The frequencies of 8 × 8 blocks in the most detailed parts of what is shown lie on the lattice of an "
    "earlier "
    "quantization table: on the present grid (after Lukas and Fridrich, 2003), on another, or, in a TIFF or "
    "PNG, on "
    "any (after Fan and de Queiroz, 2003, and Bianchi and Piva, 2012). The quality is that of the tables of "
    "ITU-T "
    "T.81, Annex K, that fit best. Said only when the trace is proof. Not found where the picture was "
    "resized, "
    "sharpened or given grain since. The limits are those for JPEGs on the press sheet; a TIFF or PNG that "
    "was a JPEG "
    "of sufficient quality is a note.",
    "Ask for the file as it was first saved by the camera or the scanner, or scan the original again and "
    "save it as "
    "TIFF at once.",
    check,
    true,
};

} // namespace stoneproof
