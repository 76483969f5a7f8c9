// Letters laid out: whole as text for a small one, and what must hold of any. A change of the text that is
// meant is accepted by a person who has looked: copy the new text, which the failing test names, over
// small.letter.txt.
#include "reports/layout/letter.h"

#include "reports/layout/style.h"
#include "tests/reports/layout/document_text.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"
#include "tests/support/letter_book.h"

#include <filesystem>

using namespace stoneproof;
using namespace stoneproof::layout;
using namespace stoneproof::test;

namespace {

/// So many pictures, of all kinds of faults, with small copies of three shapes and none of every fourth.
Checked many(std::size_t pictures) {
  constexpr std::string_view rules[] = {"too-few-pixels", "missing-picture", "screenshot",
                                        "printed-screen", "clipped-shadows", "unaccepted-file"};
  Checked checked = letter_book(std::vector<double>(pictures, 300));
  for (std::size_t i = 0; i < pictures; ++i) {
    checked.findings.push_back(found(checked, i, rules[i % std::size(rules)], Grade::hold));
    const double height = i % 3 == 0 ? 800 : i % 3 == 1 ? 2400 : 20;
    if (i % 4 != 3) checked.copies[i] = SmallCopy{{0, 0, 1200, height}, 300, 200, {}};
  }
  return checked;
}

Document laid(const Checked &checked, std::optional<content::DirtyGlass> glass = {}) {
  auto asks = content::letter_asks(checked.evidence, checked.findings).people[0];
  if (glass) asks.glasses.push_back(*glass);
  return letter_document(content::letter_content(checked.evidence.book, asks), checked.copies, type(), {});
}

struct Box {
  double left, top, right, bottom;
  bool meets(const Box &other) const {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }
};

/// Every word and picture stands on the sheet within its margins, and no two lines of text overlap.
void check_page(const DocumentPage &page) {
  std::vector<Box> lines;
  for (const Item &item : page.items) {
    if (const auto *picture = std::get_if<PictureItem>(&item))
      for (const Point &corner : picture->corners) {
        CHECK(corner.x >= style::letter_margin);
        CHECK(corner.y <= page.size.height - style::foot);
      }
    const auto *text = std::get_if<TextItem>(&item);
    if (!text) continue;
    CAPTURE(page.label, text->text);
    const Length right = text->at.x + type().width(text->face, text->size, text->text);
    const bool foot = text->size == style::plan_label.size && text->at.y > page.size.height - style::foot;
    CHECK(text->at.x >= style::letter_margin);
    CHECK(right <= page.size.width - (foot ? style::margin : style::letter_margin) + Length::of_mm(0.01));
    CHECK(text->at.y <= page.size.height - (foot ? Length::of_mm(8) : style::foot));
    CHECK(text->size >= style::plan_label.size);
    const Box box{text->at.x.mm(), (text->at.y - text->size * 0.7).mm(), right.mm(), text->at.y.mm()};
    for (const Box &other : lines) CHECK_FALSE(box.meets(other));
    lines.push_back(box);
  }
}

} // namespace

TEST_CASE("the small letter is laid out as a person has seen and accepted it") {
  const std::string laid_out =
      DocumentText::of(laid(many(3), content::DirtyGlass{{{20, 30, 1, 2}, {200, 290, 1, 1}}, {0, 1, 2}}));
  const std::filesystem::path golden =
      std::filesystem::path(STONEPROOF_SOURCE_DIR) / "tests/reports/layout/small.letter.txt";
  const auto fresh = std::filesystem::temp_directory_path() / "small.letter.txt";
  if (laid_out != content_of(golden)) write_file(fresh, laid_out);
  CAPTURE(fresh);
  CHECK(laid_out == content_of(golden));
}

TEST_CASE("every picture of a letter is told once with its file, and nothing runs off or overlaps") {
  for (const std::size_t pictures : {1u, 2u, 3u, 8u, 14u, 60u}) {
    const Document document = laid(many(pictures));
    std::string all;
    for (const DocumentPage &page : document.pages) {
      CHECK(page.size == style::letter_sheet);
      check_page(page);
      all += text_of(page);
    }
    for (std::size_t i = 0; i < pictures; ++i) {
      const std::string number = "\n" + std::to_string(i + 1) + " · Needed before printing\n";
      const auto at = all.find(number);
      CAPTURE(pictures, number);
      CHECK(at != std::string::npos);
      CHECK(all.find(number, at + 1) == std::string::npos);
      CHECK(all.find("p" + std::to_string(i) + ".tif\n") != std::string::npos);
    }
    const std::string back = text_of(document.pages.back());
    CHECK(back.find("Before you scan") == 0);
    CHECK(back.find("Reply slip") != std::string::npos);
    CHECK(back.find("conservator") != std::string::npos);
  }
}

TEST_CASE("one page tells what to do with fourteen pictures, and a short letter needs no list") {
  const std::string first = text_of(laid(many(14)).pages[0]);
  CHECK(first.find("What to do, at a glance") != std::string::npos);
  CHECK(first.find("\n14\n") != std::string::npos);
  const Document two = laid(many(2));
  CHECK(two.pages.size() == 2);
  CHECK(text_of(two.pages[0]).find("at a glance") == std::string::npos);
}

TEST_CASE("any name is laid out: very long, of one word, from right to left, empty") {
  for (const std::string &name :
       {std::string(300, 'W'), std::string("Żaneta Wróblak-Śliwińska ") + std::string(100, 'x'),
        std::string("שרה כהן-לוי"), std::string()}) {
    Checked checked = many(3);
    checked.evidence.book.contributors[0].name = name;
    checked.evidence.book.title = name + name;
    checked.evidence.book.pictures[0].file = "a/" + std::string(200, 'm') + ".jpg";
    for (const DocumentPage &page : laid(checked).pages) check_page(page);
  }
}

TEST_CASE("specks are circled where they lie on the glass, and stay on it") {
  const Document document = laid(
      many(1),
      content::DirtyGlass{{{108, 148.5, 0, 0}, {-50, 9000, 1, 1}, {53, 0, 2, 2}, {5e300, 0, 1, 1}}, {0}});
  std::vector<Point> centres;
  std::optional<Rect> glass;
  for (const Item &item : document.pages[0].items)
    if (const auto *shape = std::get_if<ShapeItem>(&item)) {
      const Point &corner = shape->corners[0];
      if (shape->corners.size() == 4 && shape->fill == style::gap_fill && !glass)
        glass = Rect{corner.x, corner.y, shape->corners[2].x - corner.x, shape->corners[2].y - corner.y};
      if (shape->corners.size() > 4 && shape->fill)
        centres.push_back({corner.x - Length::of_mm(0.4), corner.y});
    }
  REQUIRE(glass);
  REQUIRE(centres.size() == 4);
  CHECK(std::abs((centres[0].x - glass->x).mm() - glass->width.mm() / 2) < 0.01);
  CHECK(std::abs((centres[0].y - glass->y).mm() - glass->height.mm() / 2) < 0.01);
  // A quarter from the left of the scan, which lay face down: from above a quarter from the right.
  CHECK(std::abs((centres[2].x - glass->x).mm() - glass->width.mm() * 3 / 4) < 0.01);
  for (const Point &centre : centres) {
    CHECK(centre.x >= glass->x - Length::of_mm(0.01));
    CHECK(centre.y <= glass->y + glass->height + Length::of_mm(0.01));
  }
}
