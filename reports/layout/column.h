// The column of words beside a drawing: each mark explained at the height of its place, moved apart where
// they would collide, and joined to the place by a hairline.
#pragma once

#include "reports/content/proof_content.h"
#include "reports/layout/drawing.h"
#include "reports/layout/leaders.h"

#include <span>
#include <vector>

namespace stoneproof::layout {

/// A block that wants to stand at a height.
struct Slot {
  Length wanted; ///< top
  Length height;
};

/// Tops for as many slots as fit between `top` and `bottom`, in order, `gap` apart, each as near to what it
/// wants as its neighbours allow. At least one slot is placed, even if it is higher than the room.
std::vector<Length> place_slots(std::span<const Slot> slots, Length top, Length bottom, Length gap);

/// Where the words stand.
struct Column {
  Length left, width, top, bottom;
};

/// Draws as many of the marks as fit, with outlines and hairlines on the drawing and notes on the page; gives
/// how many. `around` is what the hairlines pass.
std::size_t draw_marks(Canvas &canvas, std::span<const content::Mark *const> marks, const PageSpace &space,
                       const Scale &scale, const LeaderRoom &around, const Column &column);

/// What a viewer lists and opens for a mark.
Note note_of(const content::Mark &mark, Rect area);

/// The number of a mark in a tag that shows its grade: filled, dashed or dotted. `top_left` is the tag's.
void draw_tag(Canvas &canvas, Point top_left, int number, Grade grade);
inline constexpr Size tag_size{Length::of_mm(8), Length::of_pt(11)};

} // namespace stoneproof::layout
