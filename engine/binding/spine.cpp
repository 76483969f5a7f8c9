// Width of the back. The only way in is spine_of; tested in tests/engine/binding.
#include "engine/binding/spine.h"

namespace stoneproof {

std::optional<Spine> spine_of(const Book &book, std::size_t pages, const SpineBar &bar) {
  const auto leaf = leaf_thickness(book.stocks.block);
  if (!leaf || book.binding.kind == BindingKind::saddle) return std::nullopt;
  Spine spine;
  spine.pages = pages;
  spine.leaf = *leaf;
  const auto leaves = static_cast<std::int64_t>((pages + 1) / 2);
  spine.block = {leaf->leaf * leaves, bar.leaf_tolerance * leaves};
  if (book.binding.kind == BindingKind::perfect)
    if (const auto cover = leaf_thickness(book.stocks.cover)) spine.cover_leaf = cover->leaf;
  if (book.binding.kind == BindingKind::case_bound) {
    if (const auto endpaper = leaf_thickness(book.stocks.endpaper)) spine.endpapers = endpaper->leaf * 4;
    spine.boards = book.binding.board * 2;
    spine.lining = book.binding.spine_lining;
  }
  spine.width = {spine.block.length + spine.cover_leaf * 2 + spine.endpapers + spine.boards + spine.lining,
                 spine.block.tolerance};
  return spine;
}

} // namespace stoneproof
