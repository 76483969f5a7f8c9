// A frame reaches the trim and it, or its picture, stops short of the bleed edge. The only way in is
// short_bleed_rule; tested by tests/rules/short-bleed.
#include "engine/rules/about.h"
#include "engine/rules/edges.h"

#include <cmath>

namespace stoneproof {

namespace {

struct Place {
  double along, out; ///< ticks along a side of the page from its start, and out past the trim
};

/// A point as seen from a side of the page. Going round a frame clockwise, the edge that faces the side runs
/// in the direction of growing `along`.
Place seen_from(PageSide side, const Rect &trim, Point point) {
  const auto ticks = [](Length length) { return static_cast<double>(length.ticks()); };
  if (side == PageSide::top) return {ticks(point.x - trim.left()), ticks(trim.top() - point.y)};
  if (side == PageSide::bottom) return {ticks(trim.right() - point.x), ticks(point.y - trim.bottom())};
  if (side == PageSide::left) return {ticks(trim.bottom() - point.y), ticks(trim.left() - point.x)};
  return {ticks(point.y - trim.top()), ticks(point.x - trim.right())};
}

/// An edge that runs this near to the direction of a side, 10 degrees as rise over run, runs along it: a
/// strip of white beside it would show as a thread. A steeper one is seen to slant. Our own choice, no
/// published source.
constexpr double along_slope = 0.176;

/// How far an edge passes the trim within the page's own width: its least reach where it runs along the trim,
/// its greatest where it slants in over the page. None when it faces another side or lies beside the page.
std::optional<Length> edge_reach(Place from, Place to, double width) {
  const double run = to.along - from.along, rise = to.out - from.out;
  if (run <= 0 || run < std::abs(rise)) return std::nullopt;
  const double begin = std::max(from.along, 0.0), end = std::min(to.along, width);
  if (begin >= end) return std::nullopt;
  const double first = from.out + rise * (begin - from.along) / run;
  const double last = from.out + rise * (end - from.along) / run;
  const Length least = Length::nearest(std::min(first, last)), most = Length::nearest(std::max(first, last));
  const bool slants = least < -layout_rounding || std::abs(rise) > along_slope * run;
  return slants ? most : least;
}

/// The same for a whole frame or picture; none when no edge of it faces the side.
std::optional<Length> reach_of(const Corners &corners, const PageSpace &space, PageSide side) {
  const bool upright = side == PageSide::left || side == PageSide::right;
  const Length width = upright ? space.trim.height : space.trim.width;
  std::optional<Length> worst;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Place from = seen_from(side, space.trim, corners[i]);
    const Place to = seen_from(side, space.trim, corners[(i + 1) % corners.size()]);
    const auto reach = edge_reach(from, to, static_cast<double>(width.ticks()));
    if (reach && (!worst || *reach < *worst)) worst = reach;
  }
  return worst;
}

/// What is printed of a frame, turned: the part of the picture that shows.
std::optional<Corners> picture_part(const Evidence &evidence, const PlacedFrame &placed) {
  const Frame &frame = evidence.frame_of(placed);
  if (!placed.laid || !placed.laid->visible) return std::nullopt;
  return turned(*placed.laid->visible, frame.turn, frame.rect.centre());
}

/// How far the print passes the trim at a side: the frame's edge, or the picture's where that ends sooner.
/// None where the frame does not reach the trim. Of a picture that is set to lie inside its frame the picture
/// alone counts.
std::optional<Length> printed_reach(const Evidence &evidence, const PlacedFrame &placed, PageSide side) {
  const PageSpace &space = evidence.space_of(placed);
  const auto picture = picture_part(evidence, placed);
  const bool inside = picture && std::holds_alternative<Inside>(evidence.frame_of(placed).fit);
  const auto outer = reach_of(inside ? *picture : placed.corners, space, side);
  if (!outer || *outer < -layout_rounding) return std::nullopt;
  const auto inner = picture ? reach_of(*picture, space, side) : outer;
  return std::min(*outer, inner.value_or(*outer));
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  for (const PlacedFrame &placed : evidence.frames) {
    const PageSpace &space = evidence.space_of(placed);
    if (off_page(printed_box(evidence, placed), space)) continue;
    Finding finding = about_frame(Grade::hold, evidence, placed);
    Length worst_gap;
    for (const PageSide side : page_sides) {
      const Length wanted = space.bleed_wanted.at(side);
      const auto reach = printed_reach(evidence, placed, side);
      if (!reach || *reach >= wanted - layout_rounding) continue;
      finding.sides.push_back(side);
      if (wanted - *reach <= worst_gap) continue;
      worst_gap = wanted - *reach;
      finding.measured = *reach;
      finding.wanted = wanted;
    }
    if (!finding.sides.empty()) findings.push_back(std::move(finding));
  }
}

} // namespace

extern const Rule short_bleed_rule = {
    "short-bleed",
    Grade::hold,
    "Bleed is too short",
    "The knife never cuts twice in the same place. Where the print stops at the trim, a white thread shows "
    "along the edge of some copies.",
    "How far the frame, and the picture in it, pass the trim at each side that the frame reaches, against "
    "the larger of the book’s and the press sheet’s bleed (common practice: 3 mm or 1/8 in). Of a turned "
    "frame the edge "
    "that faces the side counts: at its shortest reach where it runs along the trim, within ten degrees, and "
    "at its "
    "longest where it slants in over the page, since such an edge is meant to show.",
    "Pull the frame, and the picture in it, out to the bleed edge.",
    check,
};

} // namespace stoneproof
