// The whole object. The only way in is bind; tested in tests/engine/binding.
#include "engine/binding/bound_book.h"

#include "engine/placement/page_space.h"

#include <algorithm>
#include <numeric>

namespace stoneproof {

namespace {

constexpr std::size_t pages_of_a_folded_sheet = 4;

} // namespace

Length BoundBook::creep(std::size_t page) const {
  return creeps ? creep_of(page, plan.total(), *leaf) : Length{};
}

BoundBook bind(const Book &book, const PressSheet &press) {
  const Binding &binding = book.binding;
  const bool saddle = binding.kind == BindingKind::saddle;
  BoundBook bound;
  const std::size_t pages = book.page_count();
  bound.multiple = static_cast<std::size_t>(press.page_count(binding.kind).multiple);
  if (saddle) bound.multiple = std::lcm(bound.multiple, pages_of_a_folded_sheet);
  bound.signature = static_cast<std::size_t>(binding.signature.value_or(static_cast<int>(bound.multiple)));
  if (saddle) bound.signature = pages + blanks_to_multiple(pages, bound.multiple);
  bound.signature = std::max<std::size_t>(bound.signature, 1); // a book of no pages
  bound.plan = signature_plan(pages, bound.signature, bound.multiple);
  if (!saddle && !binding.signature) bound.plan.signatures.clear();
  if (const auto leaf = leaf_thickness(book.stocks.block)) bound.leaf = leaf->leaf;
  bound.creeps = saddle && bound.leaf;
  bound.spine = spine_of(book, bound.plan.total(), press.spine);
  bound.cover = cover_sheet(book, bound.spine, larger(book.bleed, press.bleed));
  return bound;
}

} // namespace stoneproof
