// The parts of the proof that are not drawings of pages: first sheet, table, index, pictures, press sheet,
// method.
#include "reports/layout/findings_table.h"
#include "reports/layout/front.h"
#include "reports/layout/method_sheets.h"
#include "reports/layout/page_index.h"
#include "reports/layout/picture_sheets.h"
#include "reports/layout/style.h"
#include "tests/reports/layout/check_inside.h"
#include "tests/reports/layout/document_text.h"
#include "tests/support/catch.h"
#include "tests/support/small_book.h"

#include <algorithm>
#include <set>

using namespace stoneproof;
using namespace stoneproof::layout;
using namespace stoneproof::test;

namespace {

void check_inside(const DocumentPage &page) {
  test::check_inside(page, Length::of_mm(0.5), Length::of_mm(1));
}

/// No two lines of text lie on each other.
void check_apart(const DocumentPage &page) {
  std::vector<Rect> boxes;
  for (const Item &item : page.items)
    if (const auto *text = std::get_if<TextItem>(&item))
      boxes.push_back({text->at.x, text->at.y - text->size * 0.7,
                       type().width(text->face, text->size, text->text), text->size * 0.7});
  for (std::size_t i = 0; i < boxes.size(); ++i)
    for (std::size_t j = i + 1; j < boxes.size(); ++j) {
      CAPTURE(i, j, text_of(page));
      CHECK_FALSE(shared_part(boxes[i], boxes[j]));
    }
}

Checked pages(int count, int frames_on_each = 1) {
  Book book = small_book();
  book.pictures = {photo("p", "summer.jpg")};
  book.pages.clear();
  for (int number = 1; number <= count; ++number) {
    Page page;
    page.number = number;
    for (int i = 0; i < frames_on_each; ++i)
      page.frames.push_back(
          frame("f" + std::to_string(number) + "-" + std::to_string(i), 0, 20, 20 + i * 12.0, 120, 10));
    book.pages.push_back(page);
  }
  return checked(std::move(book));
}

content::ProofContent content_of_pages(const Checked &checked) {
  return content::proof_content(checked.evidence, checked.findings);
}

} // namespace

TEST_CASE("the first sheet is one sheet, however much there is to say") {
  content::ProofContent content;
  content.title = std::string(400, 'W');
  for (int i = 0; i < 80; ++i) content.title += " and another branch of the family";
  content.job = content.press = content.verdict = content.title;
  content.counts = {123'456, 123'456, 123'456};
  content.round = "Since the last round: 1234 new, 12345 standing, 123456 mended.";
  for (std::size_t i = 0; i < 40; ++i)
    content.matters.push_back({Grade::hold, 100'000,
                               "A fault whose name is far longer than any " + content.title,
                               "Pages " + content.title, i});
  const std::vector<Section> sections(8, Section{"A part of the proof", 12'345});
  const DocumentPage page = lay_out_front(content, sections, {{3, 9}}, type());
  check_inside(page);
  check_apart(page);
  CHECK(std::ranges::count(page.links, std::size_t{9}, &Link::page) == 1);
  CHECK(text_of(page).find("kinds of fault more") != std::string::npos);
}

TEST_CASE("the first sheet names the file, in small type, however long its name") {
  content::ProofContent content;
  content.title = "untitled";
  content.file = "Dom przy młynie.pdf";
  CHECK(text_of(lay_out_front(content, {}, {}, type()))
            .find("Layout proof of Dom przy młynie.pdf\nuntitled\n") != std::string::npos);
  content.file = std::string(400, 'W') + ".pdf";
  const DocumentPage page = lay_out_front(content, {}, {}, type());
  check_inside(page);
  check_apart(page);
  CHECK(text_of(page).find("WWW.pdf\n") != std::string::npos);
  content.file.clear();
  CHECK(text_of(lay_out_front(content, {}, {}, type())).find("Layout proof\nuntitled\n") !=
        std::string::npos);
}

TEST_CASE("there is room to sign, with three answers") {
  const DocumentPage page = lay_out_front({}, {}, {}, type());
  for (const char *words :
       {"Approved\n", "Approved as marked\n", "New proof wanted\n", "Name\n", "Date\n", "Signature\n"})
    CHECK(text_of(page).find(words) != std::string::npos);
}

TEST_CASE("the table says which marks are new, and what was mended stands after it") {
  const Checked checked = pages(2);
  content::ProofContent content = content_of_pages(checked);
  REQUIRE(!content.marks.empty());
  content.marks[0].fresh = true;
  for (int i = 0; i < 60; ++i)
    content.mended.push_back({"Hold", "Too few pixels for the printed size", "Page " + std::to_string(i),
                              "Prints at 120 ppi; a photo needs at least 200 ppi."});
  std::vector<DocumentPage> sheets = lay_out_findings(content, type()).sheets;
  for (DocumentPage &sheet : lay_out_mended(content, type())) sheets.push_back(std::move(sheet));
  std::string all;
  for (const DocumentPage &sheet : sheets) {
    check_inside(sheet);
    all += text_of(sheet);
  }
  CHECK(all.find("\nnew\n") != std::string::npos);
  CHECK(all.find("Mended since the last round\n") != std::string::npos);
  for (int i = 0; i < 60; ++i) CHECK(all.find("Page " + std::to_string(i) + "\n") != std::string::npos);
}

TEST_CASE("nothing found and nothing mended gives no table") {
  CHECK(lay_out_findings({}, type()).sheets.empty());
  CHECK(lay_out_mended({}, type()).empty());
}

TEST_CASE("every page stands once in the index, apart from the others and on its sheet") {
  for (const int count : {1, 7, 230}) {
    CAPTURE(count);
    const Checked checked = pages(count);
    const auto content = content_of_pages(checked);
    const PageIndex index = lay_out_index(content, checked, ImageOf(1), type());
    REQUIRE(index.places.size() == static_cast<std::size_t>(count));
    std::set<std::size_t> surfaces;
    for (const IndexPlace &place : index.places) {
      surfaces.insert(place.surface);
      CHECK(place.area.right() <= style::sheet.width - style::margin + Length::of_mm(0.01));
      CHECK(place.area.bottom() <= style::sheet.height - style::foot + Length::of_mm(0.01));
    }
    CHECK(surfaces.size() == static_cast<std::size_t>(count));
    for (std::size_t i = 1; i < index.places.size(); ++i)
      for (std::size_t j = i - std::min<std::size_t>(i, 12); j < i; ++j)
        if (index.places[i].sheet == index.places[j].sheet) {
          const auto shared = shared_part(index.places[i].area, index.places[j].area);
          CHECK((!shared || shared->width < Length::of_mm(0.01)));
        }
    for (const DocumentPage &sheet : index.sheets) check_inside(sheet);
  }
}

TEST_CASE("pages of any size find room in the index") {
  for (const auto &[width, height] :
       {std::pair{50.0, 50.0}, {1000.0, 1000.0}, {1000.0, 60.0}, {60.0, 1000.0}}) {
    CAPTURE(width, height);
    Checked checked = pages(5);
    Book book = checked.evidence.book;
    book.trim = {Length::of_mm(width), Length::of_mm(height)};
    checked = test::checked(std::move(book));
    const PageIndex index = lay_out_index(content_of_pages(checked), checked, ImageOf(1), type());
    for (const DocumentPage &sheet : index.sheets) {
      check_inside(sheet);
      check_apart(sheet);
    }
  }
}

TEST_CASE("a page's state is told by its gravest mark, in words and in a line") {
  Book book = small_book();
  book.pages[0].frames = {frame("a", {}, 20, 20, 50, 50), frame("b", {}, 20, 90, 50, 50)};
  const Checked checked = test::checked(std::move(book));
  const PageIndex index = lay_out_index(content_of_pages(checked), checked, {}, type());
  REQUIRE(index.sheets.size() == 1);
  CHECK(text_of(index.sheets[0]).find("Page 1\n2 holds\n") != std::string::npos);
  CHECK(text_of(index.sheets[0]).find("Pages 2–3\n") != std::string::npos);
  const auto hold_lines = std::ranges::count_if(index.sheets[0].items, [](const Item &item) {
    const auto *line = std::get_if<LineItem>(&item);
    return line && line->stroke.width == style::grade_line(Grade::hold).width && line->stroke.dash.empty() &&
           line->stroke.ink == style::mark;
  });
  CHECK(hold_lines == 1);
}

TEST_CASE("each picture is shown beside a patch that is as large as in print") {
  Checked checked = pages(3);
  checked.copies[0] = SmallCopy{{0, 0, 1200, 800}, 300, 200, {}};
  checked.patches[0] = Patch{{{475, 275, 250, 250}, 250, 250, {}}, 0};
  const auto content = content_of_pages(checked);
  const PictureSheets sheets = lay_out_pictures(content, checked, {0}, {1}, type());
  REQUIRE(sheets.sheets.size() == 1);
  CHECK(sheets.uses.size() == 3);
  bool found = false;
  for (const Item &item : sheets.sheets[0].items)
    if (const auto *picture = std::get_if<PictureItem>(&item); picture && picture->image == 1) {
      found = true;
      const Size printed = printed_size(*checked.patches[0], checked.evidence);
      CHECK(picture->corners[2].x - picture->corners[0].x == printed.width);
      CHECK(picture->corners[2].y - picture->corners[0].y == printed.height);
      CHECK_FALSE(picture->alternative.empty());
    }
  CHECK(found);
  check_inside(sheets.sheets[0]);
  check_apart(sheets.sheets[0]);
}

TEST_CASE("pictures with much and with nothing to tell keep to their rows") {
  Checked checked = pages(30, 2);
  Book book = checked.evidence.book;
  book.contributors = {{"c", std::string(200, 'M'), "", {}}};
  for (int i = 0; i < 12; ++i) {
    Picture picture = photo("q" + std::to_string(i), std::string(300, 'W') + ".jpg");
    picture.contributor = 0;
    book.pictures.push_back(picture);
  }
  checked = test::checked(std::move(book));
  const auto content = content_of_pages(checked);
  const PictureSheets sheets = lay_out_pictures(content, checked, ImageOf(13), ImageOf(13), type());
  CHECK(sheets.places.size() == 13);
  std::string all;
  for (const DocumentPage &sheet : sheets.sheets) {
    check_inside(sheet);
    check_apart(sheet);
    all += text_of(sheet);
  }
  CHECK(all.find("and in 55 frames more") != std::string::npos);
  CHECK(all.find("No frame shows it.") != std::string::npos);
}

TEST_CASE("a picture with more marks than its row has room for names the first of them") {
  Checked checked = pages(40, 18); // every frame is too coarse
  const auto content = content_of_pages(checked);
  REQUIRE(content.marks.size() > 700);
  const PictureSheets sheets = lay_out_pictures(content, checked, ImageOf(1), ImageOf(1), type());
  for (const DocumentPage &sheet : sheets.sheets) check_inside(sheet);
  REQUIRE(sheets.sheets.size() == 1);
  CHECK(text_of(sheets.sheets[0]).find("more\n") != std::string::npos);
}

TEST_CASE("press sheet and method are laid out within their sheets") {
  Checked checked = pages(4, 3);
  auto profile = std::make_shared<PressProfile>();
  profile->file = std::string(200, 'x') + ".icc";
  checked.evidence.press.profile = profile;
  const auto content = content_of_pages(checked);
  for (const auto &sheets : {lay_out_press(content, type()), lay_out_method(content.method, type())}) {
    REQUIRE(!sheets.empty());
    for (const DocumentPage &sheet : sheets) {
      check_inside(sheet);
      check_apart(sheet);
    }
  }
}

TEST_CASE("the press sheet of a finished PDF, and one of many groups, keep to their columns") {
  Book book = small_book();
  book.print_file = PrintFile{};
  auto content = content_of_pages(checked(std::move(book)));
  REQUIRE(content.requirements.size() == 4);
  const auto check_sheets = [&](std::size_t sheets) {
    const auto laid = lay_out_press(content, type());
    CHECK(laid.size() == sheets);
    std::string all;
    for (const DocumentPage &sheet : laid) {
      check_inside(sheet);
      check_apart(sheet);
      for (const Item &item : sheet.items)
        if (const auto *line = std::get_if<LineItem>(&item)) {
          CHECK(line->to.x <= sheet.size.width - style::margin + Length::of_mm(0.01));
          CHECK(line->to.y <= sheet.size.height - style::foot + Length::of_mm(0.01));
        }
      all += text_of(sheet);
    }
    for (const content::RequirementGroup &group : content.requirements)
      CHECK(all.find(group.heading + "\n") != std::string::npos);
  };
  check_sheets(1);
  const auto groups = content.requirements;
  for (int i = 0; i < 3; ++i)
    content.requirements.insert(content.requirements.end(), groups.begin(), groups.end());
  check_sheets(2);
}

TEST_CASE("a book in which every rule speaks has all of them explained") {
  content::MethodWords method;
  method.parts = {{"The marks", "Words."}, {"Limits", "Words."}};
  for (const Rule *rule : all_rules())
    method.rules.push_back({std::string(rule->title), "12 times", std::string(rule->measure)});
  std::string all;
  for (const DocumentPage &sheet : lay_out_method(method, type())) {
    check_inside(sheet);
    check_apart(sheet);
    all += text_of(sheet);
  }
  std::size_t told = 0;
  for (std::size_t at = all.find("12 times\n"); at != std::string::npos; at = all.find("12 times\n", at + 1))
    ++told;
  CHECK(told == all_rules().size());
}
