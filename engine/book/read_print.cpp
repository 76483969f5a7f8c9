// Reads what the description of a finished PDF tells of the file and its pages. Ways in: read_print_file and
// read_print_page. Tested in tests/engine/book/write_book.test.cpp.
#include "engine/book/read_parts.h"
#include "engine/xml/values.h"

#include <fmt/format.h>

#include <utility>

namespace stoneproof {

namespace {

PrintFont read_font(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  PrintFont font;
  font.name = reader.required("name", parse_line);
  font.embedded = reader.required("embedded", parse_yes_no);
  font.first_page = reader.required("first-page", parse_count);
  return font;
}

Rect read_own_rect(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  return read_rect(reader);
}

ThinLine read_thin_line(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  return {reader.required("thickness", parse_length_from_zero), read_rect(reader)};
}

PageNote read_note(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  PageNote note;
  note.kind = reader.required("kind", parse_line);
  note.prints = reader.required("prints", parse_yes_no);
  note.rect = read_rect(reader);
  return note;
}

/// The five kinds of box, each at most once, the media's always.
class BoxesReader {
public:
  BoxesReader(ElementReader &sheet, FaultList &faults) : sheet_(sheet), faults_(faults) {}

  void read(const Element &element) {
    ElementReader reader(element, faults_);
    const std::string kind = reader.required("kind", parse_line);
    const Rect rect = read_rect(reader);
    std::optional<Rect> *const place = place_of(kind);
    if (!place && !kind.empty())
      reader.fault(reader.place_of("kind"), fmt::format("there is no {} box", in_quotes(kind)),
                   "Write media, crop, bleed, trim or art.");
    if (!place) return;
    if (*place)
      reader.fault(element.place, fmt::format("the page has its {} box already", kind), "Keep one of them.");
    *place = rect;
  }

  PageBoxes boxes() {
    if (!media_)
      sheet_.fault(sheet_.element().place, "the page has no media box", "Add <box kind=\"media\" .../>.");
    boxes_.media = media_.value_or(Rect{});
    return boxes_;
  }

private:
  /// Null: there is no such kind.
  std::optional<Rect> *place_of(std::string_view kind) {
    const std::pair<std::string_view, std::optional<Rect> *> places[] = {{"media", &media_},
                                                                         {"crop", &boxes_.crop},
                                                                         {"bleed", &boxes_.bleed},
                                                                         {"trim", &boxes_.trim},
                                                                         {"art", &boxes_.art}};
    for (const auto &[name, place] : places)
      if (name == kind) return place;
    return nullptr;
  }

  ElementReader &sheet_;
  FaultList &faults_;
  std::optional<Rect> media_;
  PageBoxes boxes_;
};

} // namespace

PrintFile read_print_file(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  PrintFile file;
  file.file = reader.required("file", parse_file_name);
  file.version = reader.required("version", parse_line);
  file.encrypted = reader.required("encrypted", parse_yes_no);
  file.mended = reader.optional("mended", parse_yes_no).value_or(false);
  file.cut_short = reader.optional("cut-short", parse_yes_no).value_or(false);
  file.output_intent = reader.optional("output-intent", parse_line).value_or("");
  for (const Element *font : reader.all({"font"})) file.fonts.push_back(read_font(*font, faults));
  return file;
}

PrintPage read_print_page(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  PrintPage page;
  page.label = reader.optional("label", parse_line).value_or("");
  const auto flag = [&](std::string_view name) {
    return reader.optional(name, parse_yes_no).value_or(false);
  };
  page.transparent = flag("transparent");
  page.broken = flag("broken");
  page.cut_short = flag("cut-short");
  page.painted_in = {flag("rgb"), flag("cmyk"), flag("gray"), flag("spot")};
  BoxesReader boxes(reader, faults);
  for (const Element *part : reader.all({"box", "painted", "thin-line", "note", "hidden-picture"})) {
    if (part->name == "box")
      boxes.read(*part);
    else if (part->name == "painted" && page.painted)
      reader.fault(part->place, "the page has its painted place already", "Keep one of them.");
    else if (part->name == "painted")
      page.painted = read_own_rect(*part, faults);
    else if (part->name == "thin-line")
      page.lines.push_back(read_thin_line(*part, faults));
    else if (part->name == "note")
      page.notes.push_back(read_note(*part, faults));
    else
      page.hidden_pictures.push_back(read_own_rect(*part, faults));
  }
  page.boxes = boxes.boxes();
  return page;
}

} // namespace stoneproof
