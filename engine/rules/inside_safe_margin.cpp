// A frame or a text block enters the safe margin. The only way in is inside_safe_margin_rule; tested by
// tests/rules/inside-safe-margin.
#include "engine/rules/about.h"
#include "engine/rules/gutter.h"

namespace stoneproof {

namespace {

/// How near a box comes to the fold of a spread. None on single pages, and for a box that crosses the fold.
std::optional<Length> distance_to_fold(const Rect &box, const PageSpace &space) {
  if (!space.fold) return std::nullopt;
  const Length distance = std::max(box.left() - *space.fold, *space.fold - box.right());
  return distance < -layout_rounding ? std::nullopt : std::optional(distance);
}

/// Notes one side when it lies nearer than `wanted`; the finding's figures are those of the worst side.
void note_side(Finding &finding, PageSide side, Length distance, Length wanted) {
  if (distance >= wanted - layout_rounding) return;
  const bool first = finding.sides.empty();
  finding.sides.push_back(side);
  if (!first && wanted - distance <= std::get<Length>(finding.wanted) - std::get<Length>(finding.measured))
    return;
  finding.measured = distance;
  finding.wanted = wanted;
}

/// Nearer than `cut_from` to a cut side, or than `binding_from` to the binding, is left to other rules.
/// Leaves the finding without sides where the box keeps every margin.
void measure_margin(Finding &finding, const Rect &box, const PageSpace &space, Length cut_from,
                    Length binding_from) {
  const Reach reach = reach_past(box, space.trim);
  for (const PageSide side : page_sides) {
    const Length distance = -reach.at(side);
    if (distance > (side == space.bound ? binding_from : cut_from))
      note_side(finding, side, distance, space.margin_wanted.at(side));
  }
  const auto from_fold = distance_to_fold(box, space);
  if (from_fold && *from_fold > binding_from)
    note_side(finding, PageSide::fold, *from_fold, space.fold_margin);
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const Length cut = evidence.press.cut_tolerance, any = -layout_rounding - Length::of_ticks(1);
  for (const PlacedFrame &placed : evidence.frames) {
    const PageSpace &space = evidence.space_of(placed);
    const Rect &box = printed_box(evidence, placed);
    if (off_page(box, space)) continue;
    Finding finding = about_frame(Grade::query, evidence, placed);
    measure_margin(finding, box, space, std::max(cut, layout_rounding), layout_rounding);
    if (!finding.sides.empty()) findings.push_back(std::move(finding));
  }
  each_text(evidence, [&](std::size_t page, std::size_t index, const TextBlock &text) {
    const PageSpace &space = evidence.spaces[page];
    if (passes_trim(text.rect, space)) return;
    Finding finding = about_text(Grade::query, evidence, page, index);
    // What the binding swallows is left to lost-in-gutter, which looks as far as the gutter loss.
    measure_margin(finding, text.rect, space, any, swallowed(text.rect, space) ? space.gutter_loss : any);
    if (finding.sides.empty()) return;
    if (std::get<Length>(finding.measured) <= cut) finding.grade = Grade::hold;
    findings.push_back(std::move(finding));
  });
}

} // namespace

extern const Rule inside_safe_margin_rule = {
    "inside-safe-margin",
    Grade::hold,
    "Enters the safe margin",
    "The cut and the fold wander. What stands too near to the edge looks crooked when the page is cut, and a "
    "word may be cut off.",
    "Distance from the frame or the text block to the trim and to the fold of a spread, against the larger "
    "of the "
    "book’s and the press sheet’s safe margin (common practice: 3 to 6 mm), at the binding no less than the "
    "gutter "
    "loss. Text within the cut tolerance of an edge is a hold; all else is a query. A frame that reaches an "
    "edge, or "
    "nearly reaches a cut one, is left to short-bleed and near-trim, and a text that the binding swallows to "
    "lost-in-gutter.",
    "Move it in behind the safe margin, or, if it is a picture that may be cut, pull it out to the bleed "
    "edge.",
    check,
};

} // namespace stoneproof
