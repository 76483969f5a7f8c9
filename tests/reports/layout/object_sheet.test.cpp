#include "reports/layout/object_sheet.h"

#include "reports/layout/creep_mark.h"
#include "tests/reports/layout/check_inside.h"
#include "tests/reports/layout/document_text.h"
#include "tests/support/catch.h"
#include "tests/support/small_book.h"

#include <functional>
#include <set>

using namespace stoneproof;
using namespace stoneproof::layout;
using namespace stoneproof::test;

namespace {

Evidence evidence_of(BindingKind kind, int pages, const std::function<void(Book &)> &change = {}) {
  Book book = test::small_book();
  book.binding.kind = kind;
  book.pages.clear();
  for (int number = 1; number <= pages; ++number) book.pages.push_back(Page{.number = number});
  book.stocks.block = Stock{.caliper = Length::of_mm(0.1)};
  if (change) change(book);
  return test::checked(std::move(book)).evidence;
}

std::vector<DocumentPage> sheets_of_object(const Evidence &evidence) {
  return lay_out_object(content::object_words(evidence), evidence, type());
}

std::multiset<std::string> words_on(const DocumentPage &page) {
  std::multiset<std::string> words;
  for (const Item &item : page.items)
    if (const auto *text = std::get_if<TextItem>(&item)) words.insert(text->text);
  return words;
}

void check_inside(const DocumentPage &page) { test::check_inside(page, Length::of_mm(1), Length::of_mm(4)); }

/// The lines that creep draws on a page.
std::vector<LineItem> creep_lines(const Evidence &evidence, std::size_t page, std::size_t block_page) {
  DocumentPage sheet;
  Canvas canvas(type(), sheet);
  draw_creep(canvas, evidence, page, block_page, scale_on_sheet(evidence.spaces[page]));
  std::vector<LineItem> lines;
  for (const Item &item : sheet.items)
    if (const auto *line = std::get_if<LineItem>(&item)) lines.push_back(*line);
  return lines;
}

} // namespace

TEST_CASE("the cover is drawn to scale with every measure, and the measures add up") {
  const Evidence evidence = evidence_of(BindingKind::case_bound, 120, [](Book &book) {
    book.trim = {Length::of_mm(210), Length::of_mm(280)};
    book.binding.board_width = Length::of_mm(213);
    book.stocks.block = Stock{.caliper = Length::of_mm(0.2)};
  });
  const auto sheets = sheets_of_object(evidence);
  REQUIRE(sheets.size() == 2);
  const auto words = words_on(sheets[1]);
  CHECK(words.count("497 mm") == 1);
  CHECK(words.count("324 mm") == 1);
  CHECK(words.count("213 mm") == 2);
  CHECK(words.count("8 mm") == 2);
  CHECK(words.count("17 mm") == 1);
  CHECK(words.count("19 mm") == 4);
  CHECK(words.count("286 mm") == 1);
  CHECK(words.count("Back board") == 1);
  CHECK(words.count("Front board") == 1);
  for (const auto &sheet : sheets) check_inside(sheet);
}

TEST_CASE("the title of a spine runs down inside it") {
  Book book = test::small_book();
  book.cover = Cover{{Length::of_mm(410), Length::of_mm(250)}, Length::of_mm(10), {}, {}};
  Page cover{.number = 0, .kind = PageKind::cover};
  cover.texts.push_back({TextKind::spine,
                         {Length::of_mm(200), Length::of_mm(40), Length::of_mm(10), Length::of_mm(100)},
                         Length::of_pt(12),
                         "The house",
                         0,
                         {}});
  book.pages.insert(book.pages.begin(), cover);
  const Checked checked = test::checked(std::move(book));
  DocumentPage sheet;
  Canvas canvas(type(), sheet);
  const Scale scale = scale_on_sheet(checked.evidence.spaces[0]);
  draw_book_page(canvas, checked, {}, 0, 0, scale);
  const Rect spine =
      scale(Rect{Length::of_mm(200), Length::of_mm(40), Length::of_mm(10), Length::of_mm(100)});
  bool found = false;
  for (const Item &item : sheet.items)
    if (const auto *text = std::get_if<TextItem>(&item)) {
      found = true;
      CHECK(text->down);
      CHECK(text->text == "The house");
      CHECK(text->at.x > spine.left());
      CHECK(text->at.x < spine.right());
      CHECK(text->at.y > spine.top());
      CHECK(text->at.y + type().width(text->face, text->size, text->text) < spine.bottom());
    }
  CHECK(found);
}

TEST_CASE("nothing runs off the sheets, however many pages there are") {
  for (const BindingKind kind : {BindingKind::saddle, BindingKind::perfect, BindingKind::case_bound,
                                 BindingKind::spiral, BindingKind::layflat})
    for (const int pages : {1, 2, 7, 64, 500}) {
      const Evidence evidence = evidence_of(kind, pages, [](Book &book) { book.binding.signature = 16; });
      CAPTURE(static_cast<int>(kind), pages);
      for (const auto &sheet : sheets_of_object(evidence)) check_inside(sheet);
    }
}

TEST_CASE("creep is drawn outwards by side, with the knife's line moved in by as much") {
  const Evidence evidence = evidence_of(BindingKind::saddle, 16);
  CHECK(creep_lines(evidence, 0, 1).empty()); // the outermost sheet
  for (const std::size_t page : {std::size_t{6}, std::size_t{7}}) {
    const PageSpace &space = evidence.spaces[page];
    const Scale scale = scale_on_sheet(space);
    const bool right = space.bound == PageSide::left;
    const auto lines = creep_lines(evidence, page, page + 1);
    REQUIRE(lines.size() == 4);
    CHECK((lines[0].to.x > lines[0].from.x) == right);
    const Length front = scale(Point{right ? space.trim.right() : space.trim.left(), {}}).x;
    const Length knife = Length::of_mm(0.3) * scale.factor;
    CHECK(lines[3].from.x == (right ? front - knife : front + knife));
  }
}

TEST_CASE("creep that the printer takes back is drawn inwards, without a knife's line") {
  Evidence evidence = evidence_of(BindingKind::saddle, 16);
  evidence.press.creep_compensated = true;
  const auto lines = creep_lines(evidence, 7, 8);
  REQUIRE(lines.size() == 3);
  CHECK((lines[0].to.x < lines[0].from.x) == (evidence.spaces[7].bound == PageSide::left));
}

TEST_CASE("both halves of a spread creep their own way") {
  const Evidence evidence = evidence_of(BindingKind::saddle, 16, [](Book &book) {
    book.pages.erase(book.pages.begin() + 7, book.pages.begin() + 9);
    book.pages.insert(book.pages.begin() + 7, Page{.number = 8, .kind = PageKind::spread});
  });
  const auto lines = creep_lines(evidence, 7, 8);
  REQUIRE(lines.size() == 8);
  CHECK(lines[0].to.x < lines[0].from.x);
  CHECK(lines[4].to.x > lines[4].from.x);
}
