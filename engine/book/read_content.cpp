// Reads frames and texts of pages and covers. Only way in: ContentReader.
// Tested in tests/engine/book/read_book.test.cpp.
#include "engine/book/read_parts.h"
#include "engine/xml/values.h"

namespace stoneproof {
namespace {

Frame read_frame(const Element &element, const Names &pictures, FaultList &faults, ElementReader &reader) {
  Frame frame;
  frame.place = element.place;
  frame.id = reader.required("id", parse_id);
  frame.picture = pictures.find("picture", reader, faults);
  frame.rect = read_rect(reader);
  frame.turn = reader.optional("turn", parse_turn).value_or(Turn{});
  frame.mirror = reader.optional("mirror", one_of(mirror_words)).value_or(Mirror::none);
  frame.across_gutter = reader.optional("across-gutter", parse_yes_no).value_or(false);
  frame.fit = read_fit(reader, faults);
  return frame;
}

// The lines of a text. Line ends and white space that lay out the XML are one space each; an empty line
// starts a new line. Empty lines at the beginning and the end do not count.
std::string lines_of(std::string_view text) {
  std::string lines;
  bool new_line = false; // an empty line came since the last one with text
  while (true) {
    const std::size_t end = text.find('\n');
    const std::string line = collapsed(text.substr(0, end));
    if (line.empty()) {
      new_line = true;
    } else {
      if (!lines.empty()) lines += new_line ? '\n' : ' ';
      lines += line;
      new_line = false;
    }
    if (end == std::string_view::npos) return lines;
    text.remove_prefix(end + 1);
  }
}

TextBlock read_text(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  TextBlock block;
  block.place = element.place;
  block.kind = reader.optional("kind", one_of(text_words)).value_or(TextKind::body);
  block.rect = read_rect(reader);
  block.type_size = reader.required("size", parse_positive_length);
  block.text = lines_of(reader.text());
  return block;
}

} // namespace

void ContentReader::read(ElementReader &reader, Page &page) {
  std::size_t order = 0;
  for (const Element *element : reader.all({"frame", "text"})) {
    if (element->name == "text") {
      page.texts.push_back(read_text(*element, faults_));
      page.texts.back().order = order++;
      continue;
    }
    ElementReader frame_reader(*element, faults_);
    page.frames.push_back(read_frame(*element, pictures_, faults_, frame_reader));
    page.frames.back().order = order++;
    frames_.give(page.frames.back().id, frame_count_++, frame_reader);
  }
}

} // namespace stoneproof
