// A picture that is laid out as two halves on facing single pages. Used by the rules halves-apart and
// picture-twice.
#pragma once

#include "engine/rules/edges.h"

#include <cmath>
#include <cstdlib>
#include <unordered_map>

namespace stoneproof {

/// Frames of the left and of the right page, by their places in Evidence::frames.
struct FacingHalves {
  std::size_t left = 0, right = 0;
};

/// How the two halves of a picture fail to continue, measured at the fold. `away` is how far the picture on
/// the right page lies to the right of where the left one goes on to: nothing where the halves lie as on one
/// surface, twice the gutter loss where the layout leaves out what the binding swallows.
struct HalvesMeet {
  double scale = 0; ///< share by which their sizes differ
  Length height;    ///< by which one lies lower than the other
  Length away;
};

inline bool reaches_binding(const Evidence &evidence, const PlacedFrame &placed) {
  const PageSpace &space = evidence.space_of(placed);
  return space.bound && reach_past(placed.box, space.trim).at(*space.bound) >= -layout_rounding &&
         !off_page(placed.box, space);
}

/// Frames that could be halves: of facing single pages, with the same picture, upright and mirrored alike,
/// both reaching the inner edge, and beside each other for some of their height. The frames of a page stand
/// together; each is looked up by its picture.
inline std::vector<FacingHalves> facing_halves(const Evidence &evidence) {
  std::vector<FacingHalves> halves;
  std::unordered_map<std::size_t, std::size_t> on_left; // the first of each picture
  std::optional<std::size_t> left_page;
  for (std::size_t i = 0; i < evidence.frames.size(); ++i) {
    const PlacedFrame &placed = evidence.frames[i];
    const Page &page = evidence.page_of(placed);
    const Frame &frame = evidence.frame_of(placed);
    if (page.kind != PageKind::page || !placed.laid || std::remainder(frame.turn.degrees, 360.0) != 0 ||
        !reaches_binding(evidence, placed))
      continue;
    if (evidence.space_of(placed).bound == PageSide::right) { // a left page
      if (left_page != placed.page) on_left.clear();
      left_page = placed.page;
      on_left.try_emplace(*placed.picture, i);
      continue;
    }
    if (!left_page || placed.page != *left_page + 1 ||
        page.number != evidence.book.pages[*left_page].number + 1)
      continue;
    const auto found = on_left.find(*placed.picture);
    if (found == on_left.end()) continue;
    const PlacedFrame &left = evidence.frames[found->second];
    if (evidence.frame_of(left).mirror != frame.mirror || left.box.top() >= placed.box.bottom() ||
        placed.box.top() >= left.box.bottom())
      continue;
    halves.push_back({found->second, i});
  }
  return halves;
}

inline HalvesMeet how_they_meet(const Evidence &evidence, const FacingHalves &halves) {
  const PlacedFrame &left = evidence.frames[halves.left], &right = evidence.frames[halves.right];
  const Rect &a = left.laid->picture, &b = right.laid->picture;
  const auto grows = [](Length from, Length to) { return std::abs(to / from - 1); };
  HalvesMeet meet;
  meet.scale = std::max(grows(a.width, b.width), grows(a.height, b.height));
  // Where the picture's edge lies when both pages are put beside each other at the fold.
  meet.away = b.left() - (a.left() - evidence.space_of(left).trim.width);
  meet.height = b.top() - a.top();
  return meet;
}

} // namespace stoneproof
