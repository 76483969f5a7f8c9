// What the boxes, colours and sizes of a finished PDF's pages come to. The only ways in are the functions of
// print_page.h; tested by the fixtures of the rules that use them.
#include "engine/rules/print_page.h"

#include <algorithm>

namespace stoneproof {

namespace {

/// Whether a box lies in another, but for rounding.
bool inside(const Rect &inner, const Rect &outer) {
  const Rect room = outer.grown(layout_rounding);
  return inner.left() >= room.left() && inner.top() >= room.top() && inner.right() <= room.right() &&
         inner.bottom() <= room.bottom();
}

bool is_paper(const Size &size, Length width, Length height) {
  const Length slack = Length::of_mm(0.5);
  const auto near = [&](Length a, Length b) { return std::max(a, b) - std::min(a, b) <= slack; };
  return (near(size.width, width) && near(size.height, height)) ||
         (near(size.width, height) && near(size.height, width));
}

bool is_office_paper(const Size &size) {
  return is_paper(size, Length::of_mm(210), Length::of_mm(297)) ||
         is_paper(size, Length::of_in(8.5), Length::of_in(11));
}

} // namespace

std::optional<BoxFault> box_fault(const PageBoxes &boxes) {
  if (boxes.trim && boxes.art) return BoxFault::trim_and_art;
  const auto &trim = boxes.trim ? boxes.trim : boxes.art;
  if (trim && boxes.bleed && !inside(*trim, *boxes.bleed)) return BoxFault::trim_beyond_bleed;
  for (const auto &box : {trim, boxes.bleed, boxes.crop})
    if (box && !inside(*box, boxes.media)) return BoxFault::beyond_media;
  for (const auto &box : {trim, boxes.bleed})
    if (box && boxes.crop && !inside(*box, *boxes.crop)) return BoxFault::cropped;
  return std::nullopt;
}

std::optional<ColourModel> unaccepted_paint(const PressSheet &press, const PaintedIn &painted) {
  if (painted.rgb && !press.accepts(ColourModel::rgb)) return ColourModel::rgb;
  if (painted.cmyk && !press.accepts(ColourModel::cmyk)) return ColourModel::cmyk;
  if (painted.gray && !press.accepts(ColourModel::gray)) return ColourModel::gray;
  if (painted.spot && !press.accepts(ColourModel::other)) return ColourModel::other;
  return std::nullopt;
}

bool shows_nothing(const Page &page) {
  if (!page.frames.empty() || !page.texts.empty()) return false;
  return !page.print || !(page.print->painted || page.print->broken || page.print->cut_short);
}

std::vector<std::size_t> empty_print_pages(const Book &book) {
  std::vector<std::size_t> empty;
  for (std::size_t index = 0; index < book.pages.size(); ++index) {
    const Page &page = book.pages[index];
    if (page.print && page.kind != PageKind::cover && !page.blank && shows_nothing(page))
      empty.push_back(index);
  }
  return empty;
}

bool sheet_lacks_bleed(const PageSpace &space, const PrintPage &print, PageSide side) {
  return reach_past(print.boxes.media, space.trim).at(side) < space.bleed_wanted.at(side) - layout_rounding;
}

bool is_turned(const Size &size, const Size &of_book) {
  const auto near = [](Length a, Length b) { return std::max(a, b) - std::min(a, b) <= layout_rounding; };
  return near(size.width, of_book.height) && near(size.height, of_book.width) &&
         !near(of_book.width, of_book.height);
}

bool is_office_page(const Book &book, std::size_t page) {
  const auto &trim = book.pages[page].trim;
  return trim && is_office_paper(*trim) && !is_office_paper(book.trim);
}

} // namespace stoneproof
