// The spine carries text, though it is too thin for it. The only way in is narrow_spine_text_rule; tested by
// tests/rules/narrow-spine-text.
#include "engine/rules/laid_cover.h"

namespace stoneproof {

namespace {

void check_clearance(const Evidence &evidence, std::size_t index, std::vector<Finding> &findings) {
  const Rect &text = evidence.book.pages[0].texts[index].rect;
  const Rect spine = laid_spine(*evidence.book.cover);
  const Length wanted = evidence.press.spine.text_clear;
  const Length left = text.left() - spine.left(), right = spine.right() - text.right();
  Finding finding = about_text(Grade::hold, evidence, 0, index);
  if (left < wanted - layout_rounding) finding.sides.push_back(PageSide::left);
  if (right < wanted - layout_rounding) finding.sides.push_back(PageSide::right);
  if (finding.sides.empty()) return;
  finding.measured = std::min(left, right);
  finding.wanted = wanted;
  findings.push_back(std::move(finding));
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  if (!evidence.book.cover) return;
  const Length spine = real_spine(evidence), wanted = evidence.press.spine.text_from;
  const auto &texts = evidence.book.pages[0].texts;
  for (std::size_t index = 0; index < texts.size(); ++index) {
    if (!is_on_spine(*evidence.book.cover, texts[index])) continue;
    if (spine >= wanted) {
      check_clearance(evidence, index, findings);
      continue;
    }
    findings.push_back(about_text(Grade::hold, evidence, 0, index));
    findings.back().measured = spine;
    findings.back().wanted = wanted;
  }
}

} // namespace

extern const Rule narrow_spine_text_rule = {
    "narrow-spine-text",
    Grade::hold,
    "Text does not fit the spine",
    "Folds wander. On a thin spine, or near to its edges, a part of the letters comes round to the front or "
    "the back.",
    "Text of the kind spine, or between the two folds of the spine. The spine, as it is reckoned from the "
    "paper, or as it was laid out where no paper is told, against the width from which the press sheet "
    "accepts text (common practice: 6 mm); and the distance of the text block from either fold, against what "
    "the press sheet wants clear (common practice: 1.5 mm).",
    "Leave the text off a spine that is too thin. Else set it smaller, in the middle of the spine.",
    check,
};

} // namespace stoneproof
