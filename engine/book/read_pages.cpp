// Reads pages and spreads with their frames and texts. Only way in: read_pages.
// Tested in tests/engine/book/read_book.test.cpp.
#include "engine/book/read_parts.h"
#include "engine/xml/values.h"

#include <fmt/format.h>

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

class PagesReader {
public:
  PagesReader(const Binding &binding, const Names &pictures, FaultList &faults)
      : binding_(binding), pictures_(pictures), faults_(faults) {}

  Page read(const Element &element) {
    ElementReader reader(element, faults_);
    Page page;
    page.place = element.place;
    if (element.name == "spread") page.kind = PageKind::spread;
    page.number = reader.required("number", parse_count);
    check_number(page, reader);
    read_content(reader, page);
    return page;
  }

private:
  void check_number(const Page &page, ElementReader &reader);
  void read_content(ElementReader &reader, Page &page);

  const Binding &binding_;
  const Names &pictures_;
  FaultList &faults_;
  Names frames_{"frame"};
  std::size_t frame_count_ = 0;
  int last_number_ = 0;
};

// Frames and texts lie on each other in the order in which they are written.
void PagesReader::read_content(ElementReader &reader, Page &page) {
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

// Page numbers rise, a spread counting for two, and a spread begins on the left: when page 1 is a right page,
// left pages are even.
void PagesReader::check_number(const Page &page, ElementReader &reader) {
  if (page.number == 0) return; // it has its own fault already
  const SourcePlace place = reader.place_of("number");
  if (page.number <= last_number_)
    reader.fault(place, fmt::format("page {} comes after page {}", page.number, last_number_),
                 "Number the pages in rising order; a spread counts for two.");
  const bool odd = page.number % 2 != 0;
  if (page.kind == PageKind::spread && odd == (binding_.first_page == Side::right))
    reader.fault(place, fmt::format("a spread cannot begin on page {}, which is a right page", page.number),
                 "Number the spread by its left page, or mend first-page.");
  last_number_ = page.number + (page.kind == PageKind::spread ? 1 : 0);
}

} // namespace

void read_pages(const Element &list, Book &book, const Names &pictures, FaultList &faults) {
  ElementReader reader(list, faults);
  PagesReader pages(book.binding, pictures, faults);
  for (const Element *element : reader.all({"page", "spread"})) book.pages.push_back(pages.read(*element));
  if (book.pages.empty())
    reader.fault(list.place, "the book has no page", "Add at least one <page> or <spread>.");
}

} // namespace stoneproof
