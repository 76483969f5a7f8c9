#include "reports/layout/proof.h"

#include "reports/layout/style.h"
#include "tests/reports/layout/document_text.h"
#include "tests/support/catch.h"
#include "tests/support/small_book.h"

#include <algorithm>
#include <set>

using namespace stoneproof;
using namespace stoneproof::layout;
using namespace stoneproof::test;

namespace {

Document proof_of(Book book, PixelSize size = {1200, 800}) {
  Checked result = checked(std::move(book), size);
  const auto content = content::proof_content(result.evidence, result.findings);
  return proof_document(content, std::move(result), type(), {});
}

/// Up to 400 small frames without a picture, apart from each other and well inside the page.
Book crowded(std::size_t frames) {
  Book book = small_book();
  for (std::size_t i = 0; i < frames; ++i)
    book.pages[0].frames.push_back(frame("f" + std::to_string(i), {}, 20 + static_cast<double>(i % 20) * 8,
                                         15 + static_cast<double>(i / 20) * 11, 6, 8));
  return book;
}

bool on_sheet(const DocumentPage &page, const Point &p) {
  return p.x >= Length{} && p.y >= Length{} && p.x <= page.size.width && p.y <= page.size.height;
}

/// Every word, line and note of a page stands on the sheet, whole.
void check_inside(const DocumentPage &page) {
  for (const Note &note : page.notes)
    CHECK((on_sheet(page, {note.area.left(), note.area.top()}) &&
           on_sheet(page, {note.area.right(), note.area.bottom()})));
  for (const Item &item : page.items)
    if (const auto *line = std::get_if<LineItem>(&item))
      CHECK((on_sheet(page, line->from) && on_sheet(page, line->to)));
  for (const Item &item : page.items) {
    const auto *text = std::get_if<TextItem>(&item);
    if (!text) continue;
    CAPTURE(text->text);
    CHECK(text->at.x >= Length{});
    CHECK(text->at.x + type().width(text->face, text->size, text->text) <= page.size.width);
    CHECK(text->at.y <= page.size.height - Length::of_mm(8));
    CHECK(text->at.y - text->size >= Length{});
  }
}

} // namespace

TEST_CASE("a clear book says so and shows every page") {
  const Document document = proof_of(small_book());
  CHECK(text_of(document.pages[0]).find("Clear: nothing holds this book back.") != std::string::npos);
  CHECK(text_of(document.pages[1]).find("Pages at a glance") != std::string::npos);
  CHECK(text_of(document.pages[2]).find("Nothing was found here.") != std::string::npos);
  CHECK(text_of(document.pages[3]).find("Pages 2–3") != std::string::npos);
  CHECK(document.title == "Layout proof of The Żółkiewski house");
}

TEST_CASE("the first sheet names every part by the number of its sheet, and leads there") {
  Book book = crowded(30);
  book.pictures = {photo("p", "unused.jpg")};
  const Document document = proof_of(std::move(book));
  std::size_t parts = 0;
  for (const Bookmark &mark : document.bookmarks) {
    if (mark.level > 0 || mark.page == 0) continue;
    ++parts;
    CAPTURE(mark.title, mark.page);
    CHECK(text_of(document.pages[0]).find(mark.title + "\n" + document.pages[mark.page].label + "\n") !=
          std::string::npos);
    CHECK(std::ranges::count(document.pages[0].links, mark.page, &Link::page) >= 1);
  }
  CHECK(parts == 7);
}

TEST_CASE("a page leads to the index and the index to the page") {
  const Document document = proof_of(small_book());
  const auto leads = [&](std::size_t from, std::size_t to) {
    return std::ranges::count(document.pages[from].links, to, &Link::page);
  };
  CHECK(leads(1, 2) == 1);
  CHECK(leads(1, 3) == 1);
  CHECK(leads(2, 1) == 1);
  CHECK(leads(3, 1) == 1);
}

TEST_CASE("a picture on its page leads to what is told of it, and from there back") {
  Book book = small_book();
  book.pictures = {photo("p", "p.jpg"), photo("q", "q.jpg")};
  book.pages[1].frames = {frame("f", 1, 20, 20, 160, 100)};
  const Document document = proof_of(std::move(book));
  const auto sheet_with = [&](std::string_view words) {
    for (std::size_t i = 0; i < document.pages.size(); ++i)
      if (text_of(document.pages[i]).find(words) != std::string::npos) return i;
    return document.pages.size();
  };
  const std::size_t page = sheet_with("shown at"), pictures = sheet_with("At true size");
  const std::size_t spread = page + 1;
  REQUIRE(pictures < document.pages.size());
  CHECK(std::ranges::count(document.pages[spread].links, pictures, &Link::page) == 1);
  CHECK(std::ranges::count(document.pages[pictures].links, spread, &Link::page) == 1);
}

TEST_CASE("page boxes are those of the book page as it is drawn") {
  const Document document = proof_of(small_book());
  const DocumentPage &page = document.pages[2];
  REQUIRE(page.trim);
  REQUIRE(page.bleed);
  CHECK(page.trim->width / page.trim->height == Approx(200.0 / 250.0));
  const double scale = page.trim->width.mm() / 200;
  CHECK(page.trim->top().mm() - page.bleed->top().mm() == Approx(3 * scale));
  CHECK(page.bleed->left().mm() ==
        Approx(page.trim->left().mm())); // no bleed at the binding of a right-hand page
}

TEST_CASE("every mark is told once in the table, once beside its drawing, and once as a note") {
  for (const std::size_t frames : {1u, 9u, 40u, 120u, 400u}) {
    CAPTURE(frames);
    const Document document = proof_of(crowded(frames));
    std::multiset<std::string> notes;
    std::size_t rows = 0;
    for (const DocumentPage &page : document.pages) {
      for (const Note &note : page.notes) notes.insert(note.title);
      const bool table = text_of(page).find("What to do\n") != std::string::npos;
      for (const Link &link : page.links) {
        REQUIRE(link.page < document.pages.size());
        if (!table) continue;
        ++rows;
        CHECK(!document.pages[link.page].notes.empty());
      }
      check_inside(page);
    }
    CHECK(rows == frames);
    std::size_t back = 0;
    for (const DocumentPage &page : document.pages)
      if (text_of(page).find("shown at") != std::string::npos)
        back += static_cast<std::size_t>(std::ranges::count_if(page.links, [&](const Link &link) {
          return text_of(document.pages[link.page]).find("What to do\n") != std::string::npos;
        }));
    CHECK(back == frames);
    CHECK(notes.size() == frames);
    for (std::size_t i = 1; i <= frames; ++i)
      CHECK(notes.count(std::to_string(i) + " · Hold · Frame has no picture") == 1);
  }
}

TEST_CASE("a mark that is about no page has its note in the table") {
  Book book = small_book();
  book.pictures = {photo("p", "unused.jpg")};
  const Document document = proof_of(std::move(book));
  REQUIRE(document.pages[1].notes.size() == 1);
  CHECK(document.pages[1].notes[0].title == "1 · Note · Picture is listed and not used");
}

TEST_CASE("notes, which stand where the tags stand, never overlap") {
  const Document document = proof_of(crowded(400));
  for (const DocumentPage &page : document.pages)
    for (std::size_t i = 0; i < page.notes.size(); ++i)
      for (std::size_t j = i + 1; j < page.notes.size(); ++j)
        CHECK_FALSE(shared_part(page.notes[i].area, page.notes[j].area));
}

TEST_CASE("odd books stay on their sheets") {
  SECTION("tiny trim") {
    Book book = crowded(3);
    book.trim = {Length::of_mm(50), Length::of_mm(50)};
    for (const DocumentPage &page : proof_of(std::move(book)).pages) check_inside(page);
  }
  SECTION("a metre square") {
    Book book = crowded(3);
    book.trim = {Length::of_mm(1000), Length::of_mm(1000)};
    for (const DocumentPage &page : proof_of(std::move(book)).pages) check_inside(page);
  }
  SECTION("long names without a space") {
    Book book = small_book();
    book.title = std::string(300, 'W');
    book.pictures = {photo("p", std::string(400, 'M') + ".jpg")};
    book.pages[0].frames = {frame("f", 0, 20, 20, 160, 100)};
    for (const DocumentPage &page : proof_of(std::move(book)).pages) check_inside(page);
  }
  SECTION("a text longer than a sheet, in the safe margin") {
    Book book = small_book();
    std::string words;
    for (int i = 0; i < 900; ++i) words += "and so on ";
    book.pages[0].texts = {{TextKind::body,
                            {Length::of_mm(20), Length::of_mm(2), Length::of_mm(150), Length::of_mm(200)},
                            Length::of_pt(9),
                            words,
                            {}}};
    for (const DocumentPage &page : proof_of(std::move(book)).pages) check_inside(page);
  }
  SECTION("a frame far off the page") {
    Book book = small_book();
    book.pages[0].frames = {frame("far", {}, 5000, 5000, 100, 100)};
    for (const DocumentPage &page : proof_of(std::move(book)).pages) check_inside(page);
  }
}

TEST_CASE("bookmarks lead to the pages of the book") {
  const Document document = proof_of(crowded(2));
  std::vector<std::string> titles;
  for (const Bookmark &mark : document.bookmarks)
    titles.push_back(std::string(static_cast<std::size_t>(mark.level) * 2, ' ') + mark.title);
  CHECK(titles == std::vector<std::string>{"The verdict", "What was found", "Pages at a glance",
                                           "Page by page", "  Page 1 (2 marks)", "  Pages 2–3",
                                           "The book as an object", "The press sheet", "How it was checked"});
}

TEST_CASE("small copies are asked for at the density of the proof's own paper") {
  Book book = small_book();
  book.pages.pop_back();
  // 200 x 250 mm with 3 mm bleed at top and bottom, drawn into the room left for it: the scale times 144 ppi.
  const double scale = copy_density(book).ppi() / style::drawing_density.ppi();
  CHECK(scale > 0.5);
  CHECK(scale < 0.7);
  book.trim = {Length::of_mm(60), Length::of_mm(60)};
  CHECK(copy_density(book).ppi() == style::drawing_density.ppi());
}
