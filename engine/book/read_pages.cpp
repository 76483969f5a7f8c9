// Reads pages, spreads and runs of blank pages. Only way in: read_pages.
// Tested in tests/engine/book/read_pages.test.cpp.
#include "engine/book/read_parts.h"
#include "engine/xml/values.h"

#include <fmt/format.h>

#include <map>

namespace stoneproof {
namespace {

constexpr int last_page_number = 99'999;

// The numbers that pages were given, and where.
class PageNumbers {
public:
  // Page numbers rise, a spread counting for two. Whether these do; if not, there is a fault.
  bool take(int first, int last, ElementReader &reader) {
    const SourcePlace place = reader.place_of("number");
    constexpr std::string_view remedy = "Number the pages in rising order; a spread counts for two.";
    if (last > last_page_number) {
      reader.fault(place, fmt::format("page {} is more than a book can have", last),
                   fmt::format("Number the pages up to {}.", last_page_number));
      return false;
    }
    if (const Run *other = run_with(first, last)) {
      reader.fault(
          place,
          fmt::format("page {} is there already, in line {}", std::max(first, other->first), other->line),
          std::string(remedy));
      return false;
    }
    const bool rises = runs_.empty() || first > latest_.last;
    if (!rises)
      reader.fault(place,
                   fmt::format("page {} comes after page {} of line {}", first, latest_.last, latest_.line),
                   std::string(remedy));
    latest_ = {first, last, reader.element().place.line};
    runs_.emplace(last, latest_);
    return rises;
  }

private:
  struct Run {
    int first = 0, last = 0, line = 0;
  };
  // The run that has one of these numbers; no two have the same.
  const Run *run_with(int first, int last) const {
    const auto found = runs_.lower_bound(first);
    return found != runs_.end() && found->second.first <= last ? &found->second : nullptr;
  }

  std::map<int, Run> runs_; // by their last number
  Run latest_;
};

class PagesReader {
public:
  PagesReader(Book &book, ContentReader &content, FaultList &faults)
      : book_(book), content_(content), faults_(faults) {}

  void read_page(const Element &element);
  void read_blanks(const Element &element);

private:
  std::optional<Size> read_trim(ElementReader &reader);
  void check_number(const Page &page, ElementReader &reader);

  Book &book_;
  ContentReader &content_;
  FaultList &faults_;
  PageNumbers numbers_;
};

void PagesReader::read_page(const Element &element) {
  ElementReader reader(element, faults_);
  Page page;
  page.place = element.place;
  if (element.name == "spread") page.kind = PageKind::spread;
  page.number = reader.required("number", parse_count);
  check_number(page, reader);
  page.trim = read_trim(reader);
  page.blank = reader.optional("blank", parse_yes_no).value_or(false);
  content_.read(reader, page);
  if (const Element *sheet = reader.maybe("sheet")) page.print = read_print_page(*sheet, faults_);
  if (page.blank && !(page.frames.empty() && page.texts.empty()))
    reader.fault(element.children.front().place, "there is something on a page that is said to be blank",
                 "Take it off, or leave blank=\"yes\" out.");
  book_.pages.push_back(std::move(page));
}

// A trim of its own must leave room for the margins, as that of the book does.
std::optional<Size> PagesReader::read_trim(ElementReader &reader) {
  const auto width = reader.optional("width", parse_positive_length);
  const auto height = reader.optional("height", parse_positive_length);
  if (reader.has("width") != reader.has("height"))
    reader.fault(reader.element().place, "the page has a width or a height but not both",
                 "Write both, or neither.");
  if (!width || !height) return std::nullopt;
  const Size trim{*width, *height};
  if (!leaves_room(book_, trim))
    reader.fault(reader.place_of("width"), "the safe margin or the gutter loss leaves nothing of this page",
                 "Make the page larger, or write the book's trim alone.");
  return trim;
}

// A spread begins on the left: when page 1 is a right page, left pages are even.
void PagesReader::check_number(const Page &page, ElementReader &reader) {
  if (page.number == 0) return; // it has its own fault already
  const bool spread = page.kind == PageKind::spread;
  numbers_.take(page.number, page.number + (spread ? 1 : 0), reader);
  const bool odd = page.number % 2 != 0;
  if (spread && odd == (book_.binding.first_page == Side::right))
    reader.fault(reader.place_of("number"),
                 fmt::format("a spread cannot begin on page {}, which is a right page", page.number),
                 "Number the spread by its left page, or mend first-page.");
}

void PagesReader::read_blanks(const Element &element) {
  ElementReader reader(element, faults_);
  Page page;
  page.place = element.place;
  page.blank = true;
  page.number = reader.required("number", parse_count);
  const int count = reader.optional("count", parse_count).value_or(1);
  if (page.number == 0) return; // it has its own fault already
  const int last = page.number + count - 1;
  if (!numbers_.take(page.number, last, reader)) return;
  for (; page.number <= last; ++page.number) book_.pages.push_back(page);
}

} // namespace

void read_pages(const Element &list, Book &book, ContentReader &content, FaultList &faults) {
  ElementReader reader(list, faults);
  PagesReader pages(book, content, faults);
  const auto elements = reader.all({"page", "spread", "blank"});
  for (const Element *element : elements)
    element->name == "blank" ? pages.read_blanks(*element) : pages.read_page(*element);
  if (elements.empty())
    reader.fault(list.place, "the book has no page", "Add at least one <page> or <spread>.");
}

} // namespace stoneproof
