// Outlines and leaders, drawn. The only ways in are the functions of mark_lines.h; tested through the proof
// in tests/reports/layout.
#include "reports/layout/mark_lines.h"

#include <algorithm>
#include <cmath>

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Length off_words = 0.6_mm;  ///< between a text and the outline of its mark
constexpr Length corner_cut = 0.8_mm; ///< of a leader
constexpr Length past_bleed = 1.2_mm; ///< an outline may lie so far outside the bleed

/// The corners of a way are cut, so that two leaders that bend beside each other are not taken for a
/// crossing.
Way with_cut_corners(const Way &way) {
  Way cut{way.front()};
  for (std::size_t i = 1; i + 1 < way.size(); ++i)
    for (const Point &towards : {way[i - 1], way[i + 1]}) {
      const Point away{towards.x - way[i].x, towards.y - way[i].y};
      const Length length = std::max({away.x, away.y, -away.x, -away.y});
      const double share = length > Length{} ? std::min(corner_cut / length, 0.5) : 0;
      cut.push_back({way[i].x + away.x * share, way[i].y + away.y * share});
    }
  cut.push_back(way.back());
  return cut;
}

/// How far two sides look the same way, from -1 to 1; sides run clockwise.
double facing(Point from, Point to, PageSide side) {
  const double x = (to.x - from.x).mm(), y = (to.y - from.y).mm(), length = std::hypot(x, y);
  if (length == 0) return -1;
  switch (side) {
  case PageSide::top: return x / length;
  case PageSide::bottom: return -x / length;
  case PageSide::left: return -y / length;
  case PageSide::right: return y / length;
  case PageSide::fold: break;
  }
  return -1;
}

/// The sides at fault are drawn heavier.
void draw_fault_sides(Canvas &canvas, const content::Mark &mark, const Outline &outline, Length fold) {
  if (outline.size() < 3) return; // it lies off the page
  for (PageSide side : mark.sides) {
    const Rect box = box_round(outline);
    if (side == PageSide::fold && box.left() < fold && box.right() > fold) {
      canvas.line({fold, box.top()}, {fold, box.bottom()}, style::fault_line);
      continue;
    }
    if (side == PageSide::fold) side = box.right() <= fold ? PageSide::right : PageSide::left;
    std::size_t most = 0;
    const auto end = [&](std::size_t i) { return outline[(i + 1) % outline.size()]; };
    for (std::size_t i = 1; i < outline.size(); ++i)
      if (facing(outline[i], end(i), side) > facing(outline[most], end(most), side)) most = i;
    canvas.line(outline[most], end(most), style::fault_line);
  }
}

/// Along the edge where the drawing ends the outline stays open: the place goes on beyond it.
void draw_open(Canvas &canvas, const Outline &outline, const Rect &room, const Stroke &stroke) {
  const auto cut_away = [&](const Point &a, const Point &b) {
    return (a.x == b.x && (a.x == room.left() || a.x == room.right())) ||
           (a.y == b.y && (a.y == room.top() || a.y == room.bottom()));
  };
  bool whole = true;
  for (std::size_t i = 0; i < outline.size(); ++i)
    whole &= !cut_away(outline[i], outline[(i + 1) % outline.size()]);
  if (whole) return canvas.shape(outline, std::nullopt, stroke);
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point &a = outline[i], &b = outline[(i + 1) % outline.size()];
    if (!cut_away(a, b)) canvas.line(a, b, stroke);
  }
}

} // namespace

Outlined outlined(std::span<const content::Mark *const> marks, const LeaderRoom &around, const Scale &scale) {
  Outlined all{{}, {}, around.drawing.grown(past_bleed)};
  std::vector<Grade> lines;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const content::Mark &mark = *marks[i];
    if (!mark.area) continue;
    Outline place = corners_of(scale(*mark.area));
    if (mark.frame.empty()) place = offset(place, off_words); // of words the outline covers none
    if (mark.corners) std::transform(mark.corners->begin(), mark.corners->end(), place.begin(), scale);
    all.marks.push_back(i);
    lines.push_back(mark.grade);
    all.outlines.push_back(outline_within(place, all.room));
  }
  all.outlines = side_by_side(std::move(all.outlines), lines, all.room);
  return all;
}

void draw_outlines(Canvas &canvas, std::span<const content::Mark *const> marks, const Outlined &places,
                   Length fold) {
  for (const Outline &outline : places.outlines) draw_open(canvas, outline, places.room, style::casing);
  for (std::size_t i = 0; i < places.marks.size(); ++i) {
    const content::Mark &mark = *marks[places.marks[i]];
    draw_open(canvas, places.outlines[i], places.room, style::grade_line(mark.grade));
    draw_fault_sides(canvas, mark, places.outlines[i], fold);
  }
}

void draw_leader(Canvas &canvas, const Way &way) {
  const Way cut = with_cut_corners(way);
  for (const Stroke *stroke : {&style::casing, &style::leader})
    for (std::size_t i = 1; i < cut.size(); ++i)
      if (!(cut[i - 1] == cut[i])) canvas.line(cut[i - 1], cut[i], *stroke);
  canvas.box(Rect{way.front().x, way.front().y, {}, {}}.grown(0.55_mm), style::mark, std::nullopt);
}

} // namespace stoneproof::layout
