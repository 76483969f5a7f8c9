// The edges of pages, spreads and covers. The only ways in are the functions of page_space.h; tested in
// tests/engine/placement/page_space.test.cpp.
#include "engine/placement/page_space.h"

namespace stoneproof {

namespace {

Rect grown_by(const Rect &rect, const Reach &by, int sign) {
  return {rect.x - by.left * sign, rect.y - by.top * sign, rect.width + (by.left + by.right) * sign,
          rect.height + (by.top + by.bottom) * sign};
}

/// A spread has its binding in the middle, a page at one side.
void set_binding(PageSpace &space, const Book &book, const WantedEdges &wanted, const Page &page) {
  space.gutter_loss = book.binding.gutter_loss;
  if (page.kind == PageKind::spread) {
    space.fold = space.trim.width / 2;
    space.fold_margin = wanted.margin.inside;
  } else if (side_of(page.number, book.binding.first_page) == Side::right) {
    space.bound = PageSide::left;
    space.bleed_wanted.left = wanted.bleed.inside;
    space.margin_wanted.left = wanted.margin.inside;
  } else {
    space.bound = PageSide::right;
    space.bleed_wanted.right = wanted.bleed.inside;
    space.margin_wanted.right = wanted.margin.inside;
  }
}

Size size_of(const Book &book, const Page &page) {
  if (page.kind == PageKind::cover) return book.cover ? book.cover->size : book.trim;
  const Size trim = page.trim.value_or(book.trim);
  return page.kind == PageKind::spread ? Size{trim.width * 2, trim.height} : trim;
}

} // namespace

WantedEdges wanted_edges(const Book &book, const PressSheet &press) {
  WantedEdges wanted{larger(book.bleed, press.bleed), larger(book.safe_margin, press.safe_margin)};
  wanted.margin.inside =
      std::max({wanted.margin.inside, book.binding.gutter_loss, press.inside_margin(book.page_count())});
  if (book.binding.kind == BindingKind::spiral)
    wanted.bleed.inside = std::max(wanted.bleed.inside, wanted.bleed.outside);
  if (book.binding.kind == BindingKind::perfect)
    wanted.bleed.inside = std::max(wanted.bleed.inside, book.binding.grind_off);
  return wanted;
}

PageSpace page_space(const Book &book, const WantedEdges &wanted, const Page &page) {
  const auto &[bleed, margin] = wanted;
  PageSpace space;
  const Size size = size_of(book, page);
  space.trim = {{}, {}, size.width, size.height};
  space.bleed_wanted = {bleed.top, bleed.bottom, bleed.outside, bleed.outside};
  space.margin_wanted = {margin.top, margin.bottom, margin.outside, margin.outside};
  if (page.kind != PageKind::cover) {
    set_binding(space, book, wanted, page);
  } else if (book.binding.kind == BindingKind::case_bound) {
    const Length turn_in = book.binding.turn_in;
    space.bleed_wanted = {turn_in, turn_in, turn_in, turn_in};
  }
  space.bleed = grown_by(space.trim, space.bleed_wanted, 1);
  space.safe = grown_by(space.trim, space.margin_wanted, -1);
  return space;
}

PageSpace page_space(const Book &book, const PressSheet &press, const Page &page) {
  return page_space(book, wanted_edges(book, press), page);
}

std::vector<PageSpace> page_spaces(const Book &book, const PressSheet &press) {
  const WantedEdges wanted = wanted_edges(book, press);
  std::vector<PageSpace> spaces;
  spaces.reserve(book.pages.size());
  for (const Page &page : book.pages) spaces.push_back(page_space(book, wanted, page));
  return spaces;
}

std::vector<Length> cover_folds(const Cover &cover) {
  const Length left = cover.flap + cover.panel();
  std::vector<Length> folds;
  if (cover.flap > Length{}) folds.push_back(cover.flap);
  folds.push_back(left);
  if (cover.spine > Length{}) folds.push_back(left + cover.spine);
  if (cover.flap > Length{}) folds.push_back(cover.size.width - cover.flap);
  return folds;
}

} // namespace stoneproof
