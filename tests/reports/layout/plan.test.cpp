// The scanning plan laid out: whole as text for a small book, and what must hold of any. A change of the text
// that is meant is accepted by a person who has looked: copy the new text, which the failing test names, over
// small.plan.txt.
#include "reports/layout/plan.h"

#include "reports/layout/style.h"
#include "tests/reports/layout/document_text.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"
#include "tests/support/plan_book.h"

#include <filesystem>

using namespace stoneproof;
using namespace stoneproof::layout;
using namespace stoneproof::test;

namespace {

Document laid_plan(const Book &book, const Files &files = {}) {
  return plan_document(content::plan_content(book, built_in_press_sheet(), plan_of(book, files)), type(), {});
}

/// Every word stands within the margins, whole, and only the foot below the last line of a sheet.
void check_inside(const Document &document) {
  for (const DocumentPage &page : document.pages)
    for (const Item &item : page.items) {
      const auto *text = std::get_if<TextItem>(&item);
      if (!text) continue;
      CAPTURE(page.label, text->text);
      CHECK(text->at.x >= style::margin);
      CHECK(text->at.x + type().width(text->face, text->size, text->text) <=
            page.size.width - style::margin + Length::of_mm(0.01));
      const bool foot = text->face == Face::label && text->size == style::label.size;
      CHECK(text->at.y <= page.size.height - (foot ? Length::of_mm(8) : style::foot));
      CHECK(text->at.y - text->size >= Length{});
    }
}

/// A box to tick is a square that is not filled.
std::size_t boxes_of(const Document &document) {
  std::size_t boxes = 0;
  for (const DocumentPage &page : document.pages)
    for (const Item &item : page.items)
      if (const auto *shape = std::get_if<ShapeItem>(&item))
        boxes += !shape->fill && shape->corners.size() == 4;
  return boxes;
}

Book large_book(std::size_t pictures) {
  Book book = small_book();
  book.contributors = {{"eleni", "Ελένη Καλφάτη", "", {}}};
  for (std::size_t i = 0; i < pictures; ++i) {
    book.pictures.push_back(original("p" + std::to_string(i), OriginalKind::print, 150, 100));
    book.pictures.back().contributor = 0;
    const double width = 60 + static_cast<double>(i % 7) * 40;
    book.pages[0].frames.push_back(frame("f" + std::to_string(i), i, 0, 0, width, width * 2 / 3));
  }
  return book;
}

} // namespace

TEST_CASE("the small plan is laid out as a person has seen and accepted it") {
  const std::string laid = DocumentText::of(laid_plan(plan_book_of_all(), {{0, {{600, 400}}}}));
  const std::filesystem::path golden =
      std::filesystem::path(STONEPROOF_SOURCE_DIR) / "tests/reports/layout/small.plan.txt";
  const auto fresh = std::filesystem::temp_directory_path() / "small.plan.txt";
  if (laid != content_of(golden)) write_file(fresh, laid);
  CAPTURE(fresh);
  CHECK(laid == content_of(golden));
}

TEST_CASE("every original of a long plan has its row and its box, and nothing runs off a sheet") {
  for (const std::size_t pictures : {0u, 1u, 13u, 400u}) {
    const Document document = laid_plan(large_book(pictures));
    check_inside(document);
    CHECK(boxes_of(document) == pictures);
    std::string all;
    for (const DocumentPage &page : document.pages) all += text_of(page);
    for (std::size_t i = 0; i < pictures; ++i)
      CHECK(all.find("\np" + std::to_string(i) + ".tif\n") != std::string::npos);
    CHECK(text_of(document.pages.back()).find("How to scan") == 0);
  }
}

TEST_CASE("a pile that goes on says so, and never begins at the foot of a sheet without a row") {
  const Document document = laid_plan(large_book(120));
  std::size_t continued = 0;
  for (std::size_t i = 1; i + 1 < document.pages.size(); ++i) {
    const DocumentPage &page = document.pages[i];
    continued += text_of(page).find("Flatbed scanner, continued") != std::string::npos;
    Length last_heading, last_row;
    for (const Item &item : page.items) {
      if (const auto *text = std::get_if<TextItem>(&item); text && text->size == style::pile_setting.size)
        last_heading = std::max(last_heading, text->at.y);
      if (const auto *shape = std::get_if<ShapeItem>(&item))
        last_row = std::max(last_row, shape->corners[0].y);
    }
    CHECK(last_row > last_heading);
  }
  CHECK(continued > 0);
}

TEST_CASE("each person begins on a sheet of their own, and the table leads there") {
  const Document document = laid_plan(plan_book_of_all());
  const auto &links = document.pages[0].links;
  REQUIRE(links.size() == 3);
  const char *names[] = {"Ελένη Καλφάτη", "Żaneta Wróblak-Śliwińska", "No owner named"};
  for (std::size_t i = 0; i < 3; ++i) {
    REQUIRE(links[i].page < document.pages.size());
    CHECK(text_of(document.pages[links[i].page]).find("Scanning plan for\n" + std::string(names[i]) + "\n") ==
          0);
  }
}

TEST_CASE("names that run on stay on the sheet") {
  Book book = plan_book_of_all();
  const std::string word(300, 'w');
  std::string words;
  for (int i = 0; i < 100; ++i) words += "Żółkiewska ";
  book.title = words;
  book.contributors[0].name = words;
  book.contributors[0].contact = words;
  book.contributors[1].name = word;
  for (Picture &picture : book.pictures) picture.id = picture.file = word;
  for (Page &page : book.pages)
    for (Frame &each : page.frames) each.id = word;
  check_inside(laid_plan(book));
}
