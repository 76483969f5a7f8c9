// The parts of a description, each read by one file. For the readers of this folder and, where it says so,
// the press reader.
#pragma once

#include "engine/book/book.h"
#include "engine/xml/element_reader.h"

#include <functional>
#include <map>
#include <string>
#include <string_view>

namespace stoneproof {

/// Names that were given, each to one thing, and which thing each names.
class Names {
public:
  /// `noun` is what messages call the thing.
  explicit Names(std::string_view noun) : noun_(noun) {}

  /// Gives a name (the attribute id of the element just read) to the thing at an index; a second time is a
  /// fault.
  void give(const std::string &id, std::size_t index, ElementReader &reader);
  /// The thing that an attribute names, if the element has it; a name that was never given is a fault.
  std::optional<std::size_t> find(std::string_view attribute, ElementReader &reader,
                                  const FaultList &faults) const;

private:
  std::string_view noun_;
  std::map<std::string, std::size_t, std::less<>> indices_;
};

/// The attributes top, bottom, outside and inside; no length negative. Also for the press sheet.
Edges read_edges(const Element &element, FaultList &faults);
/// The attributes x, y, width and height.
Rect read_rect(ElementReader &reader);

/// Whether the safe margin and the gutter loss of the book leave something of a page of this size. A size
/// that was faulty does.
bool leaves_room(const Book &book, const Size &page);

Binding read_binding(const Element &element, FaultList &faults);
Stocks read_stocks(const Element &list, FaultList &faults);
void read_contributors(const Element &list, Book &book, Names &contributors, FaultList &faults);
void read_pictures(const Element &list, Book &book, const Names &contributors, Names &pictures,
                   FaultList &faults);

/// Reads what lies on pages and on the cover. The ids of frames are unique over all that one reader reads.
class ContentReader {
public:
  ContentReader(const Names &pictures, FaultList &faults) : pictures_(pictures), faults_(faults) {}

  /// The frames and texts of a page; they lie on each other in the order in which they are written.
  void read(ElementReader &reader, Page &page);

private:
  const Names &pictures_;
  FaultList &faults_;
  Names frames_{"frame"};
  std::size_t frame_count_ = 0;
};

/// Before the pages: the cover is the first of Book::pages.
void read_cover(const Element &element, Book &book, ContentReader &content, FaultList &faults);
/// What a finished PDF tells of itself and of a page.
PrintFile read_print_file(const Element &element, FaultList &faults);
PrintPage read_print_page(const Element &element, FaultList &faults);

/// Needs the trim, the margins and the binding.
void read_pages(const Element &list, Book &book, ContentReader &content, FaultList &faults);

/// How a picture sits in its frame; `fill` when the frame has no element that says it.
Fit read_fit(ElementReader &frame, FaultList &faults);

} // namespace stoneproof
