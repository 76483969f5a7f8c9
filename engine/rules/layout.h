// What the rules of near misses and type have in common: pages with their frames, and where print and letters
// lie.
#pragma once

#include "engine/placement/overlaps.h"
#include "engine/rules/about.h"
#include "engine/rules/edges.h"
#include "engine/rules/lean_type.h"

#include <cmath>
#include <span>

namespace stoneproof {

/// Two edges that differ by no more than this are seen as one line. Our own choice: about the thinnest line
/// that is drawn in print, a quarter point.
inline constexpr Length hair = Length::of_ticks(Length::ticks_per_mm / 10);

/// Calls `check(page index, page, its frames)` for every page; frames stand in book order.
template <class Check>
void each_page(const Evidence &evidence, Check check) {
  const std::span<const PlacedFrame> all = evidence.frames;
  std::size_t next = 0;
  for (std::size_t page = 0; page < evidence.book.pages.size(); ++page) {
    const std::size_t count = evidence.book.pages[page].frames.size();
    check(page, evidence.book.pages[page], all.subspan(next, count));
    next += count;
  }
}

/// Its edges run along those of the page; one that is turned otherwise has no edge to align.
inline bool is_upright(const Frame &frame) { return std::remainder(frame.turn.degrees, 90.0) == 0; }

/// The corners of what is printed of a frame, as `printed_box` is the box round them.
inline Corners printed_shape(const Evidence &evidence, const PlacedFrame &placed) {
  const Frame &frame = evidence.frame_of(placed);
  const bool inside = std::holds_alternative<Inside>(frame.fit);
  if (!inside || !placed.laid || !placed.laid->visible) return placed.corners;
  return turned(*placed.laid->visible, frame.turn, frame.rect.centre());
}

inline std::vector<Rect> printed_boxes(const Evidence &evidence, std::span<const PlacedFrame> frames) {
  std::vector<Rect> boxes;
  boxes.reserve(frames.size());
  for (const PlacedFrame &placed : frames) boxes.push_back(printed_box(evidence, placed));
  return boxes;
}

/// Where letters lie in a text block: not in the strip of a quarter of the type size along its long sides,
/// which lines of any usual setting leave free (our own choice), nor at its very ends.
inline Rect lettered_part(const TextBlock &text) {
  const auto trimmed = [](Length whole, Length by) { return std::min(by, whole / 2 - Length::of_ticks(2)); };
  const bool upright = text.kind == TextKind::spine && text.rect.height > text.rect.width;
  const Length quarter = std::max(text.type_size / 4, layout_rounding);
  const Length x = trimmed(text.rect.width, upright ? quarter : layout_rounding);
  const Length y = trimmed(text.rect.height, upright ? layout_rounding : quarter);
  return {text.rect.x + x, text.rect.y + y, text.rect.width - x * 2, text.rect.height - y * 2};
}

/// Whether `taken` is only the foot of a text block, and the text ends above it even if it takes twice the
/// lines of the lean estimate, at 1.2 of the type size each. Our own choice.
inline bool only_empty_foot(const TextBlock &text, const Rect &taken) {
  if (taken.bottom() < lettered_part(text).bottom()) return false;
  const Length ample = text.type_size * (lean_lines(text, text.rect.width) * 2 * 1.2);
  return ample <= taken.top() - text.rect.top();
}

/// How a text and a frame lie over each other: nothing where they only touch.
struct Covering {
  Rect box;           ///< round the part of the letters that they share
  double share = 0;   ///< of the letters' part
  bool whole = false; ///< all of it
};
inline std::optional<Covering> covering(const Evidence &evidence, const PlacedFrame &placed,
                                        const TextBlock &text) {
  const SharedPart part = shared_part(printed_shape(evidence, placed), lettered_part(text));
  if (part.share <= 0 || std::min(part.box.width, part.box.height) <= Length{}) return std::nullopt;
  constexpr double almost = 1 - 1e-6; // corners of a turned frame are rounded to ticks
  return Covering{part.box, part.share, part.share >= almost};
}

/// Calls `check(text index, frame)` for every text block of a page and every frame whose box it overlaps.
template <class Check>
void each_text_on_frame(const Evidence &evidence, const Page &page, std::span<const PlacedFrame> frames,
                        Check check) {
  if (page.texts.empty() || frames.empty()) return;
  std::vector<Rect> texts;
  for (const TextBlock &text : page.texts) texts.push_back(text.rect);
  each_overlap(texts, printed_boxes(evidence, frames),
               [&](std::size_t text, std::size_t frame) { check(text, frames[frame]); });
}

} // namespace stoneproof
