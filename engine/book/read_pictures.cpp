// Reads the contributors and the pictures with their originals. Ways in: read_contributors and read_pictures.
// Tested in tests/engine/book/read_book.test.cpp.
#include "engine/book/read_parts.h"
#include "engine/xml/values.h"

namespace stoneproof {
namespace {

Original read_original(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  Original original;
  original.kind = reader.required("kind", one_of(original_words));
  const auto width = reader.optional("width", parse_positive_length);
  const auto height = reader.optional("height", parse_positive_length);
  if (width && height) original.size = Size{*width, *height};
  if (reader.has("width") != reader.has("height"))
    reader.fault(element.place, "the original has a width or a height but not both",
                 "Write both, or neither.");
  original.lost = reader.optional("lost", parse_yes_no).value_or(false);
  return original;
}

} // namespace

void read_contributors(const Element &list, Book &book, Names &contributors, FaultList &faults) {
  ElementReader reader(list, faults);
  for (const Element *element : reader.all({"contributor"})) {
    ElementReader one(*element, faults);
    Contributor contributor;
    contributor.place = element->place;
    contributor.id = one.required("id", parse_id);
    contributor.name = one.required("name", parse_line);
    contributor.contact = one.optional("contact", parse_line).value_or("");
    contributor.language = one.optional("language", parse_language);
    contributors.give(contributor.id, book.contributors.size(), one);
    book.contributors.push_back(std::move(contributor));
  }
}

void read_pictures(const Element &list, Book &book, const Names &contributors, Names &pictures,
                   FaultList &faults) {
  ElementReader reader(list, faults);
  for (const Element *element : reader.all({"picture"})) {
    ElementReader one(*element, faults);
    Picture picture;
    picture.place = element->place;
    picture.id = one.required("id", parse_id);
    picture.file = one.required("file", parse_file_name);
    picture.use = one.optional("use", one_of(use_words)).value_or(Use::photo);
    picture.profile = one.optional("profile", parse_file_name).value_or("");
    picture.contributor = contributors.find("contributor", one, faults);
    if (const Element *original = one.maybe("original")) picture.original = read_original(*original, faults);
    pictures.give(picture.id, book.pictures.size(), one);
    book.pictures.push_back(std::move(picture));
  }
}

} // namespace stoneproof
