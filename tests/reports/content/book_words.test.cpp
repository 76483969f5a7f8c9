// What is said of the book as an object, to the byte.
#include "reports/content/book_words.h"
#include "reports/content/sentences.h"
#include "tests/support/catch.h"
#include "tests/support/small_book.h"

#include <algorithm>

using namespace stoneproof;
using namespace stoneproof::content;
using namespace stoneproof::test;

namespace {

struct Told {
  std::string message, remedy;
};

/// The findings of a rule in a book, in words.
std::vector<Told> all_told(const Book &book, std::string_view rule,
                           PressSheet press = built_in_press_sheet()) {
  Evidence evidence = checked(book).evidence;
  evidence.press = std::move(press);
  evidence.spaces = page_spaces(evidence.book, evidence.press);
  evidence.bound = bind(evidence.book, evidence.press);
  std::vector<Told> told;
  for (const Finding &finding : check_rules(evidence))
    if (finding.rule == rule) told.push_back({message(evidence, finding), remedy(evidence, finding)});
  return told;
}

Told tell(const Book &book, std::string_view rule, PressSheet press = built_in_press_sheet()) {
  const auto told = all_told(book, rule, std::move(press));
  REQUIRE(told.size() == 1);
  return told[0];
}

/// Trim 200 x 250 mm; so many pages, blank but for the first and the last.
Book book_of(BindingKind kind, int pages) {
  Book book = small_book();
  book.binding.kind = kind;
  book.pages.clear();
  for (int number = 1; number <= pages; ++number) {
    Page page;
    page.number = number;
    page.blank = number > 1 && number < pages;
    if (!page.blank)
      page.texts.emplace_back().rect = {Length::of_mm(50), Length::of_mm(50), Length::of_mm(50),
                                        Length::of_mm(20)};
    book.pages.push_back(page);
  }
  return book;
}

TextBlock line(double x, double width, TextKind kind = TextKind::body) {
  TextBlock text;
  text.kind = kind;
  text.rect = {Length::of_mm(x), Length::of_mm(50), Length::of_mm(width), Length::of_mm(20)};
  text.type_size = Length::of_pt(10);
  text.text = "Words";
  return text;
}

void add_cover(Book &book, double width, double height, double spine) {
  book.cover.emplace();
  book.cover->size = {Length::of_mm(width), Length::of_mm(height)};
  book.cover->spine = Length::of_mm(spine);
  Page page;
  page.kind = PageKind::cover;
  page.number = 0;
  book.pages.insert(book.pages.begin(), page);
}

} // namespace

TEST_CASE("a page count that is off names the blanks and where they fall") {
  const Told off = tell(book_of(BindingKind::case_bound, 27), "page-count-off");
  CHECK(off.message ==
        "The book has 27 pages, no multiple of 4 as a case bound book wants: 1 blank page would "
        "be left at the end, after page 27 of the block, to make 28.");
  CHECK(off.remedy == "Add 1 page, blank if so meant, or take 3 out.");
  CHECK(tell(book_of(BindingKind::saddle, 68), "page-count-off").message ==
        "The book has 68 pages; a stapled book has at most 64 with this printer, a multiple of 4.");
  CHECK(tell(book_of(BindingKind::perfect, 20), "page-count-off").message ==
        "The book has 20 pages; a glued book has at least 32 with this printer, a multiple of 2.");
}

TEST_CASE("a binding that nobody named is no fact") {
  Book book = book_of(BindingKind::perfect, 20);
  book.print_file = PrintFile{};
  CHECK(tell(book, "page-count-off").message.find("taken") == std::string::npos);
  book.print_file->binding_guessed = true;
  const Told off = tell(book, "page-count-off");
  CHECK(off.message ==
        "The book has 20 pages; a glued book, for which it was taken, has at least 32 with this "
        "printer, a multiple of 2.");
  CHECK(off.remedy ==
        "If it is bound otherwise, name that with --binding, as saddle for a stapled book. Else add "
        "pages, blank if so meant.");
}

TEST_CASE("what is left over after whole signatures") {
  Book book = book_of(BindingKind::case_bound, 44);
  book.binding.signature = 24;
  CHECK(
      tell(book, "signature-left-over").message ==
      "44 pages make 1 whole signature of 24 pages, and 20 are left, which do not fold as one usual sheet of "
      "4, 8, 12, 16, 24 or 32.");
  book = book_of(BindingKind::case_bound, 28);
  for (std::size_t i = 25; i < 28; ++i) {
    book.pages[i].texts.clear();
    book.pages[i].blank = true;
  }
  book.pages[24].texts.push_back(line(50, 50));
  book.pages[24].blank = false;
  CHECK(tell(book, "signature-left-over").message ==
        "The book ends with 3 blank pages; more than 2 are better used or left out.");
}

TEST_CASE("missing pages") {
  Book book = book_of(BindingKind::saddle, 12);
  book.pages[4].number = 6;
  book.pages.resize(5);
  CHECK(tell(book, "pages-missing").message ==
        "Page 6 comes after page 4: page 5 is missing. Without it every page that follows lies on the wrong "
        "side.");
  book.pages[4].number = 7;
  CHECK(tell(book, "pages-missing").message == "Page 7 comes after page 4: pages 5 and 6 are missing.");
  book.pages[4].number = 8;
  CHECK(
      tell(book, "pages-missing").message ==
      "Page 8 comes after page 4: pages 5 to 7 are missing. Without them every page that follows lies on the "
      "wrong side.");
}

TEST_CASE("both sides of a contradiction are named") {
  Book book = book_of(BindingKind::perfect, 40);
  Stock &block = book.stocks.block.emplace();
  block.caliper = Length::of_mm(0.12);
  block.grammage = 90;
  block.bulk = 1.6;
  CHECK(
      tell(book, "contradicting-stock").message ==
      "The paper of the pages: the caliper says 0.12 mm, but 90 g/m² × 1.6 cm³/g is 0.144 mm. They are 0.024 "
      "mm apart; 0.013 mm is allowed. On 20 leaves that makes 0.48 mm.");
  book.pages[2].trim = Size{Length::of_mm(200), Length::of_mm(249.5)};
  CHECK(tell(book, "mixed-trim").message == "The page is 200 × 249.5 mm; the book is 200 × 250 mm.");
  book.pages[2].trim.reset();
  book.pages[0].trim = Size{Length::of_mm(250), Length::of_mm(200)};
  CHECK(tell(book, "mixed-trim").message ==
        "The page is 250 × 200 mm: it has the book’s size, but lies turned by 90°.");
  CHECK(tell(book, "mixed-trim").remedy == "Turn the page, so that it stands as the others do.");
}

TEST_CASE("the spine and the cover are told with both figures") {
  Book book = book_of(BindingKind::perfect, 40);
  book.stocks.block.emplace().caliper = Length::of_mm(0.1);
  book.stocks.cover.emplace().caliper = Length::of_mm(0.3);
  add_cover(book, 404, 252, 3);
  CHECK(
      tell(book, "spine-off").message ==
      "The spine was laid out 3 mm wide; 20 leaves of 0.1 mm and what comes to them make 2.6 mm ± 0.26 mm.");
  CHECK(
      tell(book, "cover-size-off").message ==
      "The cover was laid out 404 × 252 mm; this book needs 402.6 × 250 mm with a spine of 2.6 mm ± 0.26 mm, "
      "bleed or turn-in not counted.");
  book.pages[0].texts = {line(200.8, 2, TextKind::spine)};
  CHECK(tell(book, "narrow-spine-text").message ==
        "The spine is only 2.6 mm wide (laid out 3 mm); text wants 6 mm.");
  book.stocks.block.reset();
  CHECK(
      tell(book, "cover-size-off").message ==
      "The cover was laid out 404 × 252 mm; this book needs 403 × 250 mm with the spine as it was laid out, "
      "bleed or turn-in not counted.");
  book.binding.kind = BindingKind::saddle;
  CHECK(tell(book, "spine-off").message == "The cover has a spine of 3 mm; a stapled book has none.");
  CHECK(tell(book, "narrow-spine-text").message ==
        "There is text for the spine, but this binding has no spine to print on.");
}

TEST_CASE("text near the folds of a cover") {
  Book book = book_of(BindingKind::perfect, 40);
  add_cover(book, 410, 250, 10);
  book.pages[0].texts = {line(201, 8, TextKind::spine)};
  CHECK(
      tell(book, "narrow-spine-text").message ==
      "Stands 1 mm from the edge of the spine, which is 10 mm wide; 1.5 mm are to be clear on either side.");
  book.pages[0].texts = {line(199, 12, TextKind::spine)};
  CHECK(tell(book, "narrow-spine-text").message ==
        "Runs 1 mm over the edge of the spine, which is 10 mm wide; 1.5 mm are to be clear on either side.");
  book.pages[0].texts = {line(150, 55)};
  CHECK(tell(book, "over-cover-fold").message == "Runs 5 mm over a fold of the cover.");
  book.pages[0].texts.clear();
  book.pages[0].frames = {frame("f", {}, 100, 50, 99.5, 50)};
  CHECK(tell(book, "over-cover-fold").message ==
        "Ends 0.5 mm beside a fold of the cover, which may wander by 1 mm.");
}

TEST_CASE("creep is told with what is left") {
  Book book = book_of(BindingKind::saddle, 16);
  book.stocks.block.emplace().caliper = Length::of_mm(0.2);
  book.pages[7].texts = {line(1.5, 50)}; // the innermost sheet: 3 x 0.2 = 0.6 mm
  CHECK(tell(book, "creep-at-trim").message == "As the inner pages are cut shorter, it comes to 0.9 mm from "
                                               "the front edge; the cut may wander by 1 mm.");
  book.pages[7].texts = {line(5, 50)};
  CHECK(tell(book, "creep-at-trim").message == "As the inner pages are cut shorter, it comes to 4.4 mm from "
                                               "the front edge; the safe margin is 5 mm. No "
                                               "other text in the book is left with less.");
  book.pages[7].texts = {line(143.5, 50)}; // 6.5 mm from the binding, which swallows 6
  PressSheet press = built_in_press_sheet();
  press.creep_compensated = true;
  CHECK(tell(book, "creep-at-trim", press).message ==
        "Moved back against the creep, it comes to 5.9 mm from the inner edge; the binding swallows 6 mm.");
}

TEST_CASE("what the binding swallows") {
  Book book = small_book(); // 6 mm
  book.pictures = {photo("p", "p.jpg")};
  book.pages[0].texts = {line(2, 50)};
  const Told told = tell(book, "lost-in-gutter");
  CHECK(told.message == "Stands 2 mm from the inner edge; the binding swallows 6 mm.");
  CHECK(told.remedy == "Move it out by at least 4 mm.");
  book.pages[0].texts.clear();
  book.pages[1].texts = {line(190, 50)};
  CHECK(tell(book, "lost-in-gutter").message ==
        "Runs 10 mm over the fold; the binding swallows 6 mm of each page.");
  book.pages[1].texts.clear();
  book.pages[1].frames = {frame("f", 0, 100, 50, 200, 100)};
  CHECK(tell(book, "lost-in-gutter").message ==
        "The binding swallows a strip of 12 mm of this picture, at most 6 mm on either side of the fold.");
  book.pages[1].frames[0].fit = Fill{0.51, 0.5, true};
  const auto both = all_told(book, "lost-in-gutter");
  REQUIRE(both.size() == 2);
  CHECK(both[0].message ==
        "The point of the picture that matters lies 2 mm from the fold; the binding swallows 6 "
        "mm.");
}

TEST_CASE("halves that do not meet") {
  Book book = book_of(BindingKind::saddle, 8);
  book.pictures = {photo("p", "p.jpg")};
  const auto of = [&](double begins, double y, double height) {
    book.pages[1].frames = {frame("left", 0, 50, 20, 150, 200)};
    book.pages[1].frames[0].fit = CropShare{0, 0, 0.5, 1};
    book.pages[2].frames = {frame("right", 0, 0, y, height * 3 / 4, height)};
    book.pages[2].frames[0].fit = CropShare{begins, 0, 0.5, 1};
    return tell(book, "halves-apart").message;
  };
  CHECK(of(0.5, 23, 200) == "Lies 3 mm lower than its other half, frame left.");
  CHECK(of(0.5, 17, 200) == "Lies 3 mm higher than its other half, frame left.");
  CHECK(of(0.45, 20, 200) ==
        "A strip of 3 mm is shown both here and in the other half, frame left, more than the "
        "binding swallows.");
  CHECK(of(0.51, 20, 200) == "A strip of 3 mm is shown neither here nor in the other half, frame left.");
  CHECK(of(0.5, 20, 220) == "Its other half, frame left, has another scale: 10 % apart.");
}
