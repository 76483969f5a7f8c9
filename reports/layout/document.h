// A laid-out document as values: pages of positioned text, lines, shapes and pictures. The layout makes it;
// the PDF writer draws it and decides nothing. x runs to the right and y down, from the page's top left
// corner.
#pragma once

#include "engine/units/geometry.h"
#include "reports/type/face.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace stoneproof::layout {

/// An sRGB colour.
struct Ink {
  std::uint8_t red = 0, green = 0, blue = 0;
  friend constexpr bool operator==(const Ink &, const Ink &) = default;
};

struct Stroke {
  Ink ink;
  Length width;
  std::vector<Length> dash; ///< lengths of ink and gap in turn; empty: a whole line
};

/// One line of text. `at` is where its baseline begins.
struct TextItem {
  Point at;
  Face face = Face::text;
  Length size;
  Ink ink;
  std::string text;  ///< UTF-8, no control characters
  bool down = false; ///< turned a quarter clockwise, so that it runs from top to bottom, as on a spine
};

struct LineItem {
  Point from, to;
  Stroke stroke;
};

/// A closed shape of straight edges, filled, outlined or both.
struct ShapeItem {
  std::vector<Point> corners;
  std::optional<Ink> fill;
  std::optional<Stroke> stroke;
  double opacity = 1; ///< of the fill, 0 to 1
};

/// A picture whose corners (top left, top right, bottom right, bottom left of the image) lie on `corners`,
/// shown only inside `clip`.
struct PictureItem {
  std::size_t image = 0; ///< index into Document::images
  Corners corners;
  std::vector<Point> clip; ///< a convex shape
  /// What a reader who cannot see the picture is told. The picture is then a figure of its own, unless it
  /// lies in one that says it all.
  std::string alternative;
};

/// A page of the user's own PDF, as it is there; nothing shows where it cannot be taken from it.
struct OwnPageItem {
  std::size_t page = 0; ///< of that PDF, counted from 0
  Point origin;         ///< where the top left corner of its trim lies
  double factor = 1;    ///< of its size
  Rect clip;
};

using Item = std::variant<TextItem, LineItem, ShapeItem, PictureItem, OwnPageItem>;

/// What a part of a page is to a program that reads it aloud or draws its contents out. Rows that follow each
/// other are a table, and a row of column headers begins a new one; list items that follow each other are a
/// list.
enum class Role {
  heading1, ///< of the document
  heading2, ///< of a sheet
  heading3, ///< of a part of a sheet
  paragraph,
  row,           ///< holds headers and cells
  column_header, ///< of the cells below it
  row_header,    ///< of the cells after it
  cell,
  list_item,
  figure ///< a drawing as a whole, read as its alternative
};

/// What rows are made of.
constexpr bool is_cell(Role role) {
  return role == Role::column_header || role == Role::row_header || role == Role::cell;
}

/// A part of a page: items that are drawn one after the other, but for those of the elements in it. Elements
/// stand in reading order. An item in no element, or straight in a row, is decoration and not read.
struct Element {
  Role role = Role::paragraph;
  std::optional<std::size_t> parent; ///< index into the page's elements, before this one; none: the page
  std::size_t first = 0, end = 0;    ///< indexes into the page's items
  std::string alternative;           ///< of a figure: what a reader who cannot see it is told
};

/// A place to click that leads to another page of the document.
struct Link {
  Rect area;
  std::size_t page = 0; ///< index into Document::pages
};

/// A note that a PDF viewer lists and opens.
struct Note {
  Rect area;
  std::string title, text;
};

struct DocumentPage {
  Size size;                       ///< the media box
  std::optional<Rect> bleed, trim; ///< boxes of what the page shows; none: the media box
  std::string label;               ///< page label as a viewer shows it
  std::vector<Item> items;         ///< drawn in this order
  std::vector<Element> elements;   ///< what the items are
  std::vector<Link> links;
  std::vector<Note> notes;
};

struct Image {
  int width = 0, height = 0;
  std::vector<std::uint8_t> jpeg; ///< a whole baseline JPEG file, 8-bit RGB
};

struct Bookmark {
  std::string title;
  std::size_t page = 0;
  int level = 0; ///< 0 is the top; never more than one deeper than the bookmark before it
};

/// A file that goes with the document, inside it.
struct Attachment {
  std::string name;        ///< of the file, without a folder
  std::string description; ///< for a viewer's list
  std::string media_type;  ///< as registered (RFC 6838), like application/json
  std::string bytes;
};

struct Document {
  std::string title, subject, language;
  std::string fingerprint; ///< of the inputs; two documents from different inputs get different PDF ids
  std::optional<std::int64_t> made_at; ///< seconds since 1970-01-01 UTC; none: the document carries no date
  std::vector<Image> images;
  std::vector<DocumentPage> pages;
  std::vector<Bookmark> bookmarks;
  std::vector<Attachment> attachments; ///< no two of one name
  bool foreign_pages = false;          ///< pages of another PDF are shown: then it is no archive file
};

} // namespace stoneproof::layout
