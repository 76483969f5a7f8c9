// The rules of near misses where fixtures do not reach: folds, covers, heaps of frames, other units.
#include "engine/rules/rule.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <string>

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

/// Pages of 200 x 250 mm. What is put on one later lies on top.
struct Desk {
  Book book;
  PressSheet press;

  explicit Desk(PageKind kind = PageKind::page) {
    book.trim = {200_mm, 250_mm};
    press.cut_tolerance = 1_mm;
    add_page(kind);
  }

  void add_page(PageKind kind = PageKind::page) {
    Page page;
    page.number = static_cast<int>(book.pages.size()) + 1;
    page.kind = kind;
    book.pages.push_back(page);
  }
  Frame &put(Length x, Length y, Length width, Length height) {
    Page &page = book.pages.back();
    Frame frame;
    frame.rect = {x, y, width, height};
    frame.picture = book.pictures.size();
    frame.order = page.frames.size() + page.texts.size();
    book.pictures.emplace_back();
    page.frames.push_back(frame);
    return page.frames.back();
  }
  void write(TextKind kind, Length x, Length y, Length width, Length height,
             std::string words = "The summer of the flood") {
    Page &page = book.pages.back();
    TextBlock text;
    text.kind = kind;
    text.rect = {x, y, width, height};
    text.type_size = 9_pt;
    text.text = std::move(words);
    text.order = page.frames.size() + page.texts.size();
    page.texts.push_back(text);
  }

  std::size_t count(std::string_view rule) const {
    const std::vector<std::optional<PixelSize>> sizes(book.pictures.size());
    const Evidence evidence = {book,
                               press,
                               std::vector<PictureState>(book.pictures.size()),
                               place_frames(book, sizes),
                               page_spaces(book, press),
                               {}};
    const auto all = check_rules(evidence);
    return static_cast<std::size_t>(
        std::count_if(all.begin(), all.end(), [&](const Finding &finding) { return finding.rule == rule; }));
  }
};

} // namespace

TEST_CASE("frames may lie a little under each other at a fold, and only there") {
  for (const auto &[at, found] : {std::pair(200_mm, 0), std::pair(190_mm, 1)}) {
    Desk spread(PageKind::spread);
    spread.put(20_mm, 20_mm, at - 19_mm, 60_mm);
    spread.put(at - 1_mm, 20_mm, 100_mm, 60_mm);
    CHECK(spread.count("sliver-overlap") == static_cast<std::size_t>(found));
  }
  for (const auto &[at, found] : {std::pair(210_mm, 0), std::pair(190_mm, 1)}) {
    Desk cover(PageKind::cover);
    cover.book.cover = Cover{{410_mm, 250_mm}, 10_mm, {}, {}}; // folds at 200 and 210 mm
    cover.put(20_mm, 20_mm, at - 19_mm, 60_mm);
    cover.put(at - 1_mm, 20_mm, 100_mm, 60_mm);
    CHECK(cover.count("sliver-overlap") == static_cast<std::size_t>(found));
  }
}

TEST_CASE("on a cover a title lies on its picture, and text that leaves it is asked for") {
  Desk cover(PageKind::cover);
  cover.book.cover = Cover{{410_mm, 250_mm}, 10_mm, {}, {}};
  cover.put(-3_mm, -3_mm, 416_mm, 256_mm);
  cover.write(TextKind::heading, 230_mm, 40_mm, 150_mm, 20_mm);
  cover.write(TextKind::body, 20_mm, 150_mm, 150_mm, 60_mm);
  cover.write(TextKind::spine, 201_mm, 20_mm, 8_mm, 200_mm);
  CHECK(cover.count("type-on-picture") == 0);
  cover.book.pages[0].frames[0].rect.width = 300_mm;
  CHECK(cover.count("type-on-picture") == 1);
}

TEST_CASE("words on a spine run along it") {
  Desk cover(PageKind::cover);
  cover.book.cover = Cover{{410_mm, 250_mm}, 10_mm, {}, {}};
  cover.write(TextKind::spine, 201_mm, 20_mm, 8_mm, 200_mm);
  CHECK(cover.count("overfull-text") == 0);
  cover.book.pages[0].texts[0].type_size = 60_pt;
  CHECK(cover.count("overfull-text") == 1);
}

TEST_CASE("a row that steps by less than a hair is one line, however long") {
  Desk row;
  for (int i = 0; i < 8; ++i) row.put(20_mm, 10_mm + 20_mm * i, 50_mm, 15_mm);
  CHECK(row.count("nearly-aligned") == 0);
  row.book.pages[0].frames[3].rect.x += Length::of_mm(0.1);
  CHECK(row.count("nearly-aligned") == 0);
  row.book.pages[0].frames[3].rect.x += Length::of_ticks(1);
  CHECK(row.count("nearly-aligned") == 1);
  row.book.pages[0].frames[3].rect.x = 21_mm - Length::of_ticks(1);
  CHECK(row.count("nearly-aligned") == 1);
  row.book.pages[0].frames[3].rect.x = 21_mm;
  CHECK(row.count("nearly-aligned") == 0);
}

TEST_CASE("one slid frame of a grid is one finding for each neighbour that tells it") {
  Desk grid;
  for (int row = 0; row < 4; ++row)
    for (int column = 0; column < 4; ++column)
      grid.put(10_mm + 45_mm * column, 10_mm + 55_mm * row, 40_mm, 50_mm);
  CHECK(grid.count("nearly-aligned") == 0);
  grid.book.pages[0].frames[5].rect.x += Length::of_mm(0.4);
  CHECK(grid.count("nearly-aligned") == 1);
}

TEST_CASE("a heap of frames at one place ends, and is no near miss") {
  Desk heap;
  for (int i = 0; i < 3000; ++i) heap.put(20_mm, 20_mm, 60_mm, 60_mm);
  CHECK(heap.count("sliver-overlap") == 0);
  CHECK(heap.count("nearly-aligned") == 0);
}

TEST_CASE("a caption finds its far picture, off the page or without area there is none") {
  Desk desk;
  desk.write(TextKind::caption, 20_mm, 20_mm, 60_mm, 5_mm);
  CHECK(desk.count("stray-caption") == 1);
  desk.put(-500_mm, 20_mm, 60_mm, 60_mm);
  CHECK(desk.count("stray-caption") == 1);
  desk.put(20_mm, 25_mm, 60_mm, 60_mm);
  CHECK(desk.count("stray-caption") == 0);
}

TEST_CASE("a margin needs four pages of a side to be a run, and half of all") {
  const auto stray = [](int pages, int others, Length off) {
    Desk book;
    book.book.pages.clear();
    for (int i = 0; i < pages * 2; ++i) { // left pages stay as they are
      book.add_page();
      const bool moved = i % 2 == 0 && i / 2 < others;
      book.write(TextKind::body, 20_mm, 20_mm + (moved ? off * (i / 2 + 1) : Length{}), 150_mm, 150_mm);
    }
    return book.count("stray-margin");
  };
  const Length small = Length::of_mm(0.2);
  CHECK(stray(5, 1, small) == 1);
  CHECK(stray(4, 1, small) == 0); // three are no run
  CHECK(stray(8, 4, small) == 4);
  CHECK(stray(9, 5, small) == 0); // four of nine are less than half
  CHECK(stray(5, 1, Length::of_mm(0.1)) == 0);
  CHECK(stray(5, 1, Length::of_mm(0.1) + Length::of_ticks(1)) == 1);
  CHECK(stray(5, 1, 3_mm - Length::of_ticks(1)) == 1);
  CHECK(stray(5, 1, 3_mm) == 0);
}
