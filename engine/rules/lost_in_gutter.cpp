// The binding swallows a text, the point of a picture that matters, or a strip of a picture. The only way in
// is lost_in_gutter_rule; tested by tests/rules/lost-in-gutter.
#include "engine/rules/gutter.h"

namespace stoneproof {

namespace {

/// The place on the page of the focus point that the description names; a tick wide and high.
std::optional<Rect> said_focus(const Evidence &evidence, const PlacedFrame &placed) {
  const auto *fill = std::get_if<Fill>(&evidence.frame_of(placed).fit);
  if (!fill || !fill->focus_said || !placed.laid) return std::nullopt;
  const PixelSize size = evidence.pictures[*placed.picture].facts->size;
  const PixelRect point{fill->focus_x * static_cast<double>(size.width),
                        fill->focus_y * static_cast<double>(size.height), 0, 0};
  return place_of(placed, point, size);
}

/// The part of a frame that lies in the swallowed strip of a spread, if it lies on both pages.
std::optional<Length> swallowed_width(const Rect &box, const PageSpace &space) {
  if (!space.fold || box.left() >= *space.fold - layout_rounding ||
      box.right() <= *space.fold + layout_rounding)
    return std::nullopt;
  return std::min(box.right(), *space.fold + space.gutter_loss) -
         std::max(box.left(), *space.fold - space.gutter_loss);
}

void check_frame(const Evidence &evidence, const PlacedFrame &placed, std::vector<Finding> &findings) {
  const PageSpace &space = evidence.space_of(placed);
  const Rect &box = printed_box(evidence, placed);
  if (!placed.laid || space.gutter_loss <= layout_rounding || off_page(box, space)) return;
  const auto focus = said_focus(evidence, placed);
  const auto distance = focus ? distance_to_binding(*focus, space) : std::nullopt;
  if (distance && *distance < space.gutter_loss - layout_rounding) {
    findings.push_back(about_frame(Grade::query, evidence, placed));
    findings.back().measured = std::max(*distance, Length{});
    findings.back().wanted = space.gutter_loss;
    findings.back().sides = {space.fold ? PageSide::fold : *space.bound};
  }
  if (const auto width = swallowed_width(box, space)) {
    findings.push_back(about_frame(Grade::note, evidence, placed));
    findings.back().measured = *width;
    findings.back().wanted = Length{};
  }
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  for (const PlacedFrame &placed : evidence.frames) check_frame(evidence, placed, findings);
  each_text(evidence, [&](std::size_t page, std::size_t index, const TextBlock &text) {
    const PageSpace &space = evidence.spaces[page];
    if (!swallowed(text.rect, space)) return;
    findings.push_back(about_text(Grade::hold, evidence, page, index));
    findings.back().measured = *distance_to_binding(text.rect, space);
    findings.back().wanted = space.gutter_loss;
    findings.back().sides = {space.fold ? PageSide::fold : *space.bound};
  });
}

} // namespace

extern const Rule lost_in_gutter_rule = {
    "lost-in-gutter",
    Grade::hold,
    "Lost in the gutter",
    "A bound book does not open to the bottom. The strip along the binding cannot be seen, and a word or a "
    "face in it is lost, though it stands on the screen.",
    "The strip is as wide on each page as the gutter loss of the description, from the fold of a spread or "
    "from the inner trim edge of a single page. Text that reaches into it is a hold. A picture whose named "
    "focus point lies in it is a query. For every picture that crosses the fold of a spread a note says how "
    "wide a strip of it is swallowed: at most 2 × gutter loss.",
    "Move it away from the binding, or move the picture in its frame.",
    check,
};

} // namespace stoneproof
