// The edges of one page, spread or cover, in its own coordinates: the origin is the trim's top left corner.
// The trim of a case is the edge of its boards, and its bleed is the turn-in.
#pragma once

#include "engine/book/book.h"
#include "engine/press/press_sheet.h"

#include <optional>
#include <vector>

namespace stoneproof {

/// Layout programs round what they write to a hundredth of a millimetre or a thousandth of an inch; two edges
/// that differ by no more than this are the same edge. Less than any knife keeps; our own choice.
inline constexpr Length layout_rounding = Length::of_ticks(Length::ticks_per_mm / 20);

/// The four sides of a surface as it lies before the reader, and the fold of a spread.
enum class PageSide { top, bottom, left, right, fold };
/// The sides that are cut or bound; the fold is not among them.
inline constexpr PageSide page_sides[] = {PageSide::top, PageSide::bottom, PageSide::left, PageSide::right};

/// One length for each side: how far a box passes an edge there (negative: how far it stays inside).
struct Reach {
  Length top, bottom, left, right;
  constexpr Length at(PageSide side) const {
    switch (side) {
    case PageSide::top: return top;
    case PageSide::bottom: return bottom;
    case PageSide::left: return left;
    case PageSide::right: return right;
    case PageSide::fold: break; // no edge of the surface
    }
    return {};
  }
  friend constexpr bool operator==(const Reach &, const Reach &) = default;
};

/// How far `box` passes the sides of `edge`.
constexpr Reach reach_past(const Rect &box, const Rect &edge) {
  return {edge.top() - box.top(), box.bottom() - edge.bottom(), edge.left() - box.left(),
          box.right() - edge.right()};
}

struct PageSpace {
  Rect trim, bleed;
  Rect safe;           ///< inside every safe margin; of a spread, the outer ones
  Reach bleed_wanted;  ///< the bleed asked for at each side: the larger of the book's and the press sheet's
  Reach margin_wanted; ///< likewise the safe margin; at the binding no less than the gutter loss
  Length fold_margin;  ///< of a spread: the safe margin wanted on either side of the fold
  std::optional<Length> fold;    ///< of a spread: where the two pages meet
  std::optional<PageSide> bound; ///< of a single page: its side at the binding
  Length gutter_loss; ///< what the binding swallows on either side of the fold, or at the bound side

  /// The word for a side: "top", "bottom", "outside" or "inside".
  constexpr std::string_view name_of(PageSide side) const {
    if (side == PageSide::top) return "top";
    if (side == PageSide::bottom) return "bottom";
    return side == PageSide::fold || bound == side ? "inside" : "outside";
  }
};

/// Whether page `number` lies on the left or the right of an open book. Page 1 is the first page.
constexpr Side side_of(int number, Side first_page) {
  const bool odd = number % 2 != 0;
  return odd == (first_page == Side::right) ? Side::right : Side::left;
}

constexpr Edges larger(const Edges &a, const Edges &b) {
  return {std::max(a.top, b.top), std::max(a.bottom, b.bottom), std::max(a.outside, b.outside),
          std::max(a.inside, b.inside)};
}

/// What the book and the press sheet ask together, the larger of the two.
struct WantedEdges {
  Edges bleed, margin;
};

/// At the inner edge the binding decides. The margin is no less than what the binding swallows, nor than what
/// the press sheet asks of so many pages. The bleed: a spiral block is cut there as at the front; of a
/// perfect bound one the grind-off goes; else what was asked for.
WantedEdges wanted_edges(const Book &book, const PressSheet &press);

/// The space of one of the book's pages, spreads, or its cover.
PageSpace page_space(const Book &book, const WantedEdges &wanted, const Page &page);
PageSpace page_space(const Book &book, const PressSheet &press, const Page &page);

/// One for each of Book::pages.
std::vector<PageSpace> page_spaces(const Book &book, const PressSheet &press);

/// Where the cover folds, from left to right: the front edges where it has flaps, and either edge of the
/// spine, which are one where it has no width.
std::vector<Length> cover_folds(const Cover &cover);

} // namespace stoneproof
