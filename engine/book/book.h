// The book as values: what the layout says, before any picture file has been opened.
#pragma once

#include "engine/book/print_file.h"
#include "engine/units/geometry.h"
#include "engine/xml/source_place.h"

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace stoneproof {

/// One length for each edge of a page. Inside is the edge at the binding, outside the one across from it.
struct Edges {
  Length top, bottom, outside, inside;
  friend constexpr bool operator==(const Edges &, const Edges &) = default;
};

enum class BindingKind { saddle, perfect, case_bound, spiral, layflat };
enum class Side { left, right };

/// Where a description leaves a measure of a bound case out, these common ones stand for it (schema/book.md
/// names their sources).
struct Binding {
  BindingKind kind = BindingKind::perfect;
  Side first_page = Side::right;
  Length gutter_loss;           ///< what the binding swallows of each page, measured from the inner trim edge
  std::optional<int> signature; ///< pages of one folded sheet; none: the press sheet's page multiple
  Length grind_off; ///< what is milled off the back of the block, beyond the inner trim edge, before it is
                    ///< glued
  Length glue;      ///< width of the strip by which the first and the last page are glued to the cover
  Length board = Length::of_mm(2.5);      ///< thickness of one board
  std::optional<Length> board_width;      ///< none: reckoned (engine/binding/cover_sheet.h)
  Length square = Length::of_mm(3);       ///< how far a board passes the block at head, tail and front
  Length turn_in = Length::of_mm(19);     ///< what is folded round the boards on every side
  Length hinge = Length::of_mm(8);        ///< gap between spine piece and board
  Length spine_lining = Length::of_mm(0); ///< thickness that linings add to the back
};

/// A paper, by the figures that tell how thick a leaf of it is: one or more of them.
struct Stock {
  std::optional<Length> caliper;        ///< thickness of one leaf
  std::optional<double> grammage;       ///< g/m2
  std::optional<double> bulk;           ///< cm3/g; tells a thickness together with the grammage
  std::optional<double> pages_per_inch; ///< two pages a leaf
  SourcePlace place;
};

struct Stocks {
  std::optional<Stock> block, cover, endpaper;
};

/// The sheet of the cover as it was laid out, seen from outside: back flap, back, spine, front, front flap.
/// Its frames and texts are those of the page of kind cover.
struct Cover {
  Size size; ///< as it is seen on the finished book, laid flat: without bleed or turn-in
  Length spine, flap;
  SourcePlace place;

  /// Front or back without its flap.
  Length panel() const { return (size.width - spine - flap * 2) / 2; }
};

struct Contributor {
  std::string id, name, contact;
  SourcePlace place;
  std::optional<std::string> language = {}; ///< BCP 47 tag of letters to them; none: that of the book
};

enum class Use { photo, line_art, document, clipping };
enum class OriginalKind { print, slide, negative, document, clipping, object };

/// The physical thing that was scanned.
struct Original {
  OriginalKind kind = OriginalKind::print;
  std::optional<Size> size; ///< as it lies upright, the way the picture is seen
  bool lost = false;        ///< nobody can scan it again
};

struct Picture {
  std::string id;
  std::string file; ///< as written: a path relative to the folder of the description, or absolute
  Use use = Use::photo;
  std::optional<std::size_t> contributor; ///< index into Book::contributors
  std::optional<Original> original;
  SourcePlace place;
  std::string profile = {}; ///< file of the ICC profile of its colours, where it has none itself; empty: none
};

enum class Mirror { none, horizontal, vertical };

/// The whole frame is covered; what hangs over is cut, as near to the focus point as the edges allow.
/// The focus is a share (0 to 1) of the picture's width and height as it is seen.
struct Fill {
  double focus_x = 0.5, focus_y = 0.5;
  bool focus_said = false; ///< the description names the focus point
};
/// The whole picture is shown, centred, as large as the frame allows; the rest of the frame stays paper.
struct Inside {};
/// The frame shows exactly this part of the picture, stretched to the frame where the shapes differ.
struct CropShare {
  double x = 0, y = 0, width = 1, height = 1; ///< shares of the picture as it is seen
};
struct CropPixels {
  PixelRect part; ///< pixels of the picture as it is seen
};
/// The picture lies on this rectangle of the page and the frame clips it. Both turn about the frame's centre.
struct PictureAt {
  Rect rect;
};
using Fit = std::variant<Fill, Inside, CropShare, CropPixels, PictureAt>;

struct Frame {
  std::string id;
  Rect rect; ///< before the turn, from the top left corner of the page's (or spread's) trim
  Turn turn; ///< about the rectangle's centre; the picture turns with the frame
  Mirror mirror = Mirror::none;
  std::optional<std::size_t> picture; ///< index into Book::pictures; none: a frame without a picture
  Fit fit = Fill{};
  bool across_gutter = false; ///< the frame is meant to run across the gutter of a spread
  std::size_t order = 0;      ///< among the frames and texts of its page: what comes later lies on top
  SourcePlace place;
};

enum class TextKind { caption, body, heading, page_number, spine };

struct TextBlock {
  TextKind kind = TextKind::body;
  Rect rect;
  Length type_size;
  std::string text;      ///< UTF-8; a newline starts a new line
  std::size_t order = 0; ///< as of a frame
  SourcePlace place;
};

/// A page; a spread: two facing pages laid out as one surface of twice the trim width; the cover laid flat.
enum class PageKind { page, spread, cover };

struct Page {
  int number = 1; ///< of the page; of a spread its left page, the right one being number + 1; of the cover 0
  PageKind kind = PageKind::page;
  bool blank = false;       ///< meant to be empty
  std::optional<Size> trim; ///< of one page, where it is not that of the book
  std::vector<Frame> frames;
  std::vector<TextBlock> texts;
  SourcePlace place;
  std::optional<PrintPage> print; ///< there when the book was read from a finished PDF
};

struct Book {
  std::filesystem::path source; ///< the description's own file; picture files are relative to its folder
  std::optional<std::filesystem::path> pictures_in; ///< the folder of the picture files, where it is another
  std::string title;
  std::string language; ///< BCP 47 tag, e.g. "en" or "pl"
  Size trim;            ///< of one page
  Edges bleed, safe_margin;
  Binding binding;
  Stocks stocks;
  std::optional<Cover> cover; ///< there when `pages` begins with one of kind cover
  std::vector<Contributor> contributors;
  std::vector<Picture> pictures;
  std::vector<Page> pages;
  std::optional<PrintFile> print_file; ///< there when the book was read from a finished PDF

  /// Pages of the block; a spread counts for two.
  std::size_t page_count() const {
    std::size_t count = 0;
    for (const Page &page : pages) count += page.kind == PageKind::spread ? 2 : page.kind == PageKind::page;
    return count;
  }
  /// Where a file lies that the description names.
  std::filesystem::path path_of(const std::string &file) const {
    return pictures_in.value_or(source.parent_path()) / std::filesystem::path(file);
  }
  std::filesystem::path path_of(const Picture &picture) const { return path_of(picture.file); }
};

/// The words of the description for each enumerator; reading and writing share these tables.
template <class E>
struct Word {
  E value;
  std::string_view word;
};
inline constexpr Word<BindingKind> binding_words[] = {{BindingKind::saddle, "saddle"},
                                                      {BindingKind::perfect, "perfect"},
                                                      {BindingKind::case_bound, "case"},
                                                      {BindingKind::spiral, "spiral"},
                                                      {BindingKind::layflat, "layflat"}};
inline constexpr Word<Side> side_words[] = {{Side::left, "left"}, {Side::right, "right"}};
inline constexpr Word<Use> use_words[] = {{Use::photo, "photo"},
                                          {Use::line_art, "line-art"},
                                          {Use::document, "document"},
                                          {Use::clipping, "clipping"}};
inline constexpr Word<OriginalKind> original_words[] = {
    {OriginalKind::print, "print"},       {OriginalKind::slide, "slide"},
    {OriginalKind::negative, "negative"}, {OriginalKind::document, "document"},
    {OriginalKind::clipping, "clipping"}, {OriginalKind::object, "object"}};
inline constexpr Word<Mirror> mirror_words[] = {
    {Mirror::none, "none"}, {Mirror::horizontal, "horizontal"}, {Mirror::vertical, "vertical"}};
inline constexpr Word<TextKind> text_words[] = {{TextKind::caption, "caption"},
                                                {TextKind::body, "body"},
                                                {TextKind::heading, "heading"},
                                                {TextKind::page_number, "page-number"},
                                                {TextKind::spine, "spine"}};

/// The word for a value. Every enumerator stands in its table (tested).
template <class E, std::size_t N>
constexpr std::string_view word_of(const Word<E> (&words)[N], E value) {
  for (const auto &entry : words)
    if (entry.value == value) return entry.word;
  return "?";
}

} // namespace stoneproof
