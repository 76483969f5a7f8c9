// Reads a description from its root down. Ways in: read_book and parse_book.
// Tested in tests/engine/book/read_book.test.cpp and, against the schema, in schema.test.cpp beside it.
#include "engine/book/read.h"
#include "engine/book/read_parts.h"
#include "engine/xml/values.h"

#include <fmt/format.h>

#include <variant>

namespace stoneproof {
namespace {

Size read_trim(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  Size trim;
  trim.width = reader.required("width", parse_positive_length);
  trim.height = reader.required("height", parse_positive_length);
  return trim;
}

// The safe margin, the gutter loss and the hinge must leave something of the page. Needs a trim that was read
// without fault.
void check_room(const Book &book, const Element &safe_margin, const Element &binding, FaultList &faults) {
  if (book.trim.width <= Length() || book.trim.height <= Length()) return;
  const Edges &safe = book.safe_margin;
  if (safe.top + safe.bottom >= book.trim.height || safe.inside + safe.outside >= book.trim.width)
    faults.add(safe_margin.place, "the safe margin leaves nothing of the page",
               "Make it smaller than the trim size.");
  if (book.binding.gutter_loss >= book.trim.width)
    faults.add(binding.place, "the gutter loss leaves nothing of the page",
               "Make it smaller than the trim width.");
  if (book.binding.hinge >= book.trim.width)
    faults.add(binding.place, "the hinge leaves nothing of the board",
               "Make it smaller than the trim width.");
}

Book read_root(const Element &root, FaultList &faults) {
  ElementReader reader(root, faults);
  Book book;
  book.title = reader.required("title", parse_line);
  book.language = reader.required("language", parse_language);
  if (const Element *trim = reader.one("trim")) book.trim = read_trim(*trim, faults);
  if (const Element *bleed = reader.one("bleed")) book.bleed = read_edges(*bleed, faults);
  const Element *safe_margin = reader.one("safe-margin");
  if (safe_margin) book.safe_margin = read_edges(*safe_margin, faults);
  const Element *binding = reader.one("binding");
  if (binding) book.binding = read_binding(*binding, faults);
  if (safe_margin && binding) check_room(book, *safe_margin, *binding, faults);
  if (const Element *print = reader.maybe("print-file")) book.print_file = read_print_file(*print, faults);
  if (const Element *stocks = reader.maybe("stocks")) book.stocks = read_stocks(*stocks, faults);
  Names contributors("contributor"), pictures("picture");
  if (const Element *list = reader.maybe("contributors"))
    read_contributors(*list, book, contributors, faults);
  if (const Element *list = reader.maybe("pictures"))
    read_pictures(*list, book, contributors, pictures, faults);
  ContentReader content(pictures, faults);
  if (const Element *cover = reader.maybe("cover")) read_cover(*cover, book, content, faults);
  if (const Element *list = reader.one("pages")) read_pages(*list, book, content, faults);
  return book;
}

Reading<Book> read_root(std::variant<Document, SourceFault> document) {
  if (auto *fault = std::get_if<SourceFault>(&document)) return {std::nullopt, {std::move(*fault)}};
  const Document &read = std::get<Document>(document);
  FaultList faults(read.source);
  if (!check_root(read, "book", book_namespace, faults)) return {std::nullopt, faults.sorted()};
  Book book = read_root(read.root, faults);
  if (!faults.empty()) return {std::nullopt, faults.sorted()};
  book.source = read.source.name();
  return {std::move(book), {}};
}

} // namespace

Reading<Book> read_book(const std::filesystem::path &file) { return read_root(read_document(file)); }
Reading<Book> parse_book(SourceText source) { return read_root(parse_document(std::move(source))); }

} // namespace stoneproof
