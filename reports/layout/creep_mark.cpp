// Arrows of creep. The only way in is draw_creep; tested in tests/reports/layout/object_sheet.test.cpp.
#include "reports/layout/creep_mark.h"

#include "reports/content/object_words.h"

#include <fmt/format.h>

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Length arrow_length = 9_mm, arrow_head = 1.2_mm;

void draw_arrow(Canvas &canvas, Point from, Length by) {
  const Point to{from.x + by, from.y};
  const Length back = by > Length{} ? -arrow_head : arrow_head;
  canvas.line(from, to, style::creep_line);
  canvas.line({to.x + back, to.y - arrow_head / 2}, to, style::creep_line);
  canvas.line({to.x + back, to.y + arrow_head / 2}, to, style::creep_line);
}

/// One page with its front edge at `front` (in the coordinates of the surface), to the right or the left.
void draw_page(Canvas &canvas, const PageSpace &space, const Scale &scale, Length front, bool to_right,
               Length shift, bool compensated) {
  const int outwards = to_right ? 1 : -1;
  const Point top = scale(Point{front, space.trim.top()}), foot = scale(Point{front, space.trim.bottom()});
  const std::string words =
      fmt::format("creep {}{}", content::nearest_millimetres(shift), compensated ? ", moved back" : "");
  const Length y = scale(space.bleed).top() - 2.6_mm;
  // Clear of the crop marks at the corner.
  const Length tip = top.x - 3_mm * outwards, tail = tip - arrow_length * outwards;
  if (compensated)
    draw_arrow(canvas, {tip, y}, -arrow_length * outwards);
  else
    draw_arrow(canvas, {tail, y}, arrow_length * outwards);
  const Point beside{tail - 1.2_mm * outwards, y - style::label.leading / 2};
  if (to_right)
    canvas.text_to_right(beside, style::label, words);
  else
    canvas.text(beside, style::label, words);
  if (compensated) return;
  const Length knife = shift * scale.factor * outwards;
  canvas.line({top.x - knife, top.y}, {foot.x - knife, foot.y}, style::creep_line);
}

} // namespace

void draw_creep(Canvas &canvas, const Evidence &evidence, std::size_t page, std::size_t block_page,
                const Scale &scale) {
  const Page &content = evidence.book.pages[page];
  const PageSpace &space = evidence.spaces[page];
  if (content.kind == PageKind::cover) return;
  const bool spread = content.kind == PageKind::spread;
  const bool compensated = evidence.press.creep_compensated;
  for (std::size_t half = 0; half < (spread ? 2u : 1u); ++half) {
    const Length shift = evidence.bound.creep(block_page + half);
    if (shift <= Length{}) continue;
    const bool to_right = spread ? half == 1 : space.bound == PageSide::left;
    draw_page(canvas, space, scale, to_right ? space.trim.right() : space.trim.left(), to_right, shift,
              compensated);
  }
}

} // namespace stoneproof::layout
