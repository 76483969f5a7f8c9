// Reads the cover. Only way in: read_cover. Tested in tests/engine/book/read_object.test.cpp.
#include "engine/book/read_parts.h"
#include "engine/xml/values.h"

namespace stoneproof {
namespace {

// Front, back and safe margin need room. A size that was faulty is no ground for further faults.
void check_room(const Cover &cover, const Edges &safe, ElementReader &reader) {
  if (cover.size.width <= Length() || cover.size.height <= Length()) return;
  if (cover.panel() <= Length())
    reader.fault(reader.place_of("width"), "the spine and the flaps leave nothing for front and back",
                 "Write the width of the whole cover: two flaps, front, back and spine.");
  if (safe.top + safe.bottom >= cover.size.height || safe.outside * 2 >= cover.size.width)
    reader.fault(reader.place_of("height"), "the safe margin leaves nothing of the cover",
                 "Write the size of the whole cover, laid flat.");
}

} // namespace

void read_cover(const Element &element, Book &book, ContentReader &content, FaultList &faults) {
  ElementReader reader(element, faults);
  Cover cover;
  cover.place = element.place;
  cover.size.width = reader.required("width", parse_positive_length);
  cover.size.height = reader.required("height", parse_positive_length);
  cover.spine = reader.optional("spine", parse_length_from_zero).value_or(Length());
  cover.flap = reader.optional("flap", parse_length_from_zero).value_or(Length());
  check_room(cover, book.safe_margin, reader);
  Page page;
  page.kind = PageKind::cover;
  page.number = 0;
  page.place = element.place;
  content.read(reader, page);
  book.cover = cover;
  book.pages.push_back(std::move(page));
}

} // namespace stoneproof
