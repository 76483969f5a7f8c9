// Books in a mirror.
#pragma once

#include "tests/rules/fixture.h"
#include "tests/support/catch.h"

#include <algorithm>

namespace stoneproof::test {

struct MirrorFit {
  Length width;
  Fit operator()(PictureAt at) const {
    at.rect.x = width - at.rect.right();
    return at;
  }
  template <class Other>
  Fit operator()(Other fit) const {
    return fit;
  }
};

inline Mirror flipped(Mirror mirror) {
  REQUIRE(mirror != Mirror::vertical);
  return mirror == Mirror::none ? Mirror::horizontal : Mirror::none;
}

inline void mirror_print(PrintPage &print, Length width) {
  const auto mirror = [&](Rect &rect) { rect.x = width - rect.right(); };
  mirror(print.boxes.media);
  for (auto *box :
       {&print.boxes.crop, &print.boxes.bleed, &print.boxes.trim, &print.boxes.art, &print.painted})
    if (*box) mirror(**box);
  for (ThinLine &line : print.lines) mirror(line.rect);
  for (PageNote &note : print.notes) mirror(note.rect);
  for (Rect &rect : print.hidden_pictures) mirror(rect);
}

/// Everything on each page the other way round.
inline void mirror_pages(Scene &scene) {
  for (Page &page : scene.book.pages) {
    const Length width = page_space(scene.book, scene.press, page).trim.width;
    for (Frame &frame : page.frames) {
      frame.rect.x = width - frame.rect.right();
      frame.turn.degrees = -frame.turn.degrees;
      frame.mirror = flipped(frame.mirror);
      frame.fit = std::visit(MirrorFit{width}, frame.fit);
    }
    for (TextBlock &text : page.texts) text.rect.x = width - text.rect.right();
    if (page.print) mirror_print(*page.print, width);
  }
}

/// The book as seen in a mirror: bound at the other side.
inline Scene in_a_mirror(Scene scene) {
  mirror_pages(scene);
  Binding &binding = scene.book.binding;
  binding.first_page = binding.first_page == Side::right ? Side::left : Side::right;
  return scene;
}

/// The book in a mirror and read from its end: the sides of its pages stay what they are, and what faced each
/// other does so again. It must have every page from 1 to an even one.
inline Scene from_the_end(Scene scene) {
  mirror_pages(scene);
  auto &pages = scene.book.pages;
  const auto first = pages.begin() + (scene.book.cover ? 1 : 0);
  std::reverse(first, pages.end());
  const int after = static_cast<int>(scene.book.page_count()) + 1;
  for (auto page = first; page != pages.end(); ++page)
    page->number = after - page->number - (page->kind == PageKind::spread ? 1 : 0);
  return scene;
}

inline std::vector<Finding> sides_swapped(std::vector<Finding> findings) {
  for (Finding &finding : findings) {
    for (PageSide &side : finding.sides) {
      if (side == PageSide::left)
        side = PageSide::right;
      else if (side == PageSide::right)
        side = PageSide::left;
    }
    std::sort(finding.sides.begin(), finding.sides.end());
  }
  return findings;
}

} // namespace stoneproof::test
