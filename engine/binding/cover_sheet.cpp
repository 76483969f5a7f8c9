// Measures of the cover. The only ways in are the functions of cover_sheet.h; tested in tests/engine/binding.
#include "engine/binding/cover_sheet.h"

namespace stoneproof {

Size case_sheet(Length board, Length hinge, Length spine, Length trim_height, Length square, Length turn_in) {
  return {(turn_in + board + hinge) * 2 + spine, (turn_in + square) * 2 + trim_height};
}

Length board_width(const Book &book) {
  const Binding &binding = book.binding;
  return binding.board_width.value_or(book.trim.width + binding.square - (binding.hinge - binding.board));
}

bool has_back(BindingKind kind) { return kind != BindingKind::saddle && kind != BindingKind::spiral; }

std::optional<CoverSheet> cover_sheet(const Book &book, const std::optional<Spine> &spine,
                                      const Edges &bleed) {
  const Binding &binding = book.binding;
  if (!spine && has_back(binding.kind)) return std::nullopt;
  CoverSheet cover;
  if (spine && has_back(binding.kind)) cover.spine = spine->width;
  const Length flaps = book.cover ? book.cover->flap * 2 : Length{};
  if (binding.kind == BindingKind::case_bound) {
    cover.board = board_width(book);
    cover.panel = cover.board + binding.hinge;
    cover.past = {binding.turn_in, binding.turn_in, binding.turn_in, binding.turn_in};
    cover.visible =
        case_sheet(cover.board, binding.hinge, cover.spine.length, book.trim.height, binding.square, {});
  } else {
    cover.panel = book.trim.width;
    cover.past = {bleed.top, bleed.bottom, bleed.outside, bleed.outside};
    cover.visible = {book.trim.width * 2 + cover.spine.length + flaps, book.trim.height};
  }
  cover.sheet = {cover.visible.width + cover.past.outside + cover.past.inside,
                 cover.visible.height + cover.past.top + cover.past.bottom};
  return cover;
}

} // namespace stoneproof
