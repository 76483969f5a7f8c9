// On the cover, a text runs over a fold, or a frame ends beside one. The only way in is over_cover_fold_rule;
// tested by tests/rules/over-cover-fold.
#include "engine/rules/laid_cover.h"

namespace stoneproof {

namespace {

/// The shorter part of a box that a fold parts; negative: the fold lies beside it.
Length run_over(const Rect &box, Length fold) { return std::min(fold - box.left(), box.right() - fold); }

/// The fold that a text runs over furthest.
void check_text(const Evidence &evidence, std::size_t index, const std::vector<Length> &folds,
                std::vector<Finding> &findings) {
  const Rect &text = evidence.book.pages[0].texts[index].rect;
  Length worst;
  for (const Length fold : folds) worst = std::max(worst, run_over(text, fold));
  if (worst <= layout_rounding) return;
  findings.push_back(about_text(Grade::query, evidence, 0, index));
  findings.back().measured = worst;
  findings.back().wanted = Length{};
}

/// An edge on the fold itself is meant; one a hair beside it looks like a mistake wherever the fold falls.
void check_frame(const Evidence &evidence, const PlacedFrame &placed, const std::vector<Length> &folds,
                 std::vector<Finding> &findings) {
  const Rect &box = printed_box(evidence, placed);
  Finding finding = about_frame(Grade::query, evidence, placed);
  const auto note = [&](PageSide side, Length edge) {
    for (const Length fold : folds) {
      const Length distance = apart(edge, fold);
      if (distance <= layout_rounding || distance > evidence.press.fold_tolerance) continue;
      if (finding.sides.empty() || distance < std::get<Length>(finding.measured)) finding.measured = distance;
      if (finding.sides.empty() || finding.sides.back() != side) finding.sides.push_back(side);
    }
  };
  note(PageSide::left, box.left());
  note(PageSide::right, box.right());
  if (finding.sides.empty()) return;
  finding.wanted = evidence.press.fold_tolerance;
  findings.push_back(std::move(finding));
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  if (!evidence.book.cover) return;
  const std::vector<Length> folds = cover_folds(*evidence.book.cover);
  for (const PlacedFrame &placed : evidence.frames) {
    if (placed.page != 0) break; // the cover comes first
    check_frame(evidence, placed, folds, findings);
  }
  const auto &texts = evidence.book.pages[0].texts;
  for (std::size_t index = 0; index < texts.size(); ++index)
    if (!is_on_spine(*evidence.book.cover, texts[index])) check_text(evidence, index, folds, findings);
}

} // namespace

extern const Rule over_cover_fold_rule = {
    "over-cover-fold",
    Grade::query,
    "Lies over a fold of the cover",
    "A fold breaks letters and the ink on them. It also wanders, so that an edge beside it shows as a thread "
    "of colour on the wrong face.",
    "On the cover, how far a text block runs over a fold: those beside the spine, and those of the flaps; "
    "and how near to a fold a frame ends, against the press sheet’s fold tolerance (common practice: about 1 "
    "mm). A frame that ends on the fold, or passes it by more, is left alone, and so is text of the spine, "
    "which narrow-spine-text looks at.",
    "Move the text onto one face. Let the frame end on the fold, or pass it by more than it can wander.",
    check,
};

} // namespace stoneproof
