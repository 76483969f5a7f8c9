// The flat cover, creep, and the whole object, by cases that are reckoned by hand.
#include "tests/engine/binding/bound_things.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

constexpr Edges bleed = {Length::of_ticks(Length::ticks_per_mm * 3),
                         Length::of_ticks(Length::ticks_per_mm * 4),
                         Length::of_ticks(Length::ticks_per_mm * 5), Length{}};

std::optional<CoverSheet> cover_with(const Book &book, double spine) {
  Spine given;
  given.width.length = mm(spine);
  return cover_sheet(book, given, bleed);
}

} // namespace

TEST_CASE("a paper cover: hand-worked, trim 200 x 250 mm, bleed 3 top, 4 bottom, 5 outside") {
  struct Case {
    BindingKind kind;
    double spine, flap, visible, sheet;
    const char *arithmetic;
  };
  const Case cases[] = {
      {BindingKind::perfect, 0, 0, 400, 410, "2 x 200; + 2 x 5"},
      {BindingKind::perfect, 7.68, 0, 407.68, 417.68, "2 x 200 + 7.68; + 2 x 5"},
      {BindingKind::perfect, 10, 60, 530, 540, "2 x 200 + 10 + 2 x 60; + 2 x 5"},
      {BindingKind::layflat, 8, 0, 408, 418, "2 x 200 + 8; + 2 x 5"},
      {BindingKind::saddle, 5, 0, 400, 410, "only a fold: 2 x 200; + 2 x 5"},
      {BindingKind::saddle, 5, 50, 500, 510, "2 x 200 + 2 x 50; + 2 x 5"},
      {BindingKind::spiral, 5, 0, 400, 410, "the wire parts front and back: 2 x 200; + 2 x 5"},
  };
  for (const Case &each : cases) {
    CAPTURE(each.arithmetic);
    Book book = book_of(each.kind, 0);
    if (each.flap > 0) {
      book.cover.emplace();
      book.cover->flap = mm(each.flap);
    }
    const auto cover = cover_with(book, each.spine);
    REQUIRE(cover);
    CHECK(cover->visible == Size{mm(each.visible), mm(250)});
    CHECK(cover->sheet == Size{mm(each.sheet), mm(257)}); // 250 + 3 + 4
    CHECK(cover->panel == mm(200));
    CHECK(cover->board == Length{});
  }
}

TEST_CASE("a case: hand-worked") {
  struct Case {
    double board, hinge, spine, height, square, turn_in, width_mm, height_mm;
    const char *arithmetic;
  };
  const Case cases[] = {
      {213, 8, 17, 280, 3, 19, 497, 324, "2 x (19 + 213 + 8) + 17; 280 + 2 x (19 + 3)"},
      {213, 8, 17, 280, 3, 0, 459, 286, "2 x (213 + 8) + 17; 280 + 2 x 3"},
      {150, 7, 0, 210, 3.175, 15, 344, 246.35, "2 x (15 + 150 + 7); 210 + 2 x (15 + 3.175)"},
      {213, 0, 17, 280, 0, 0, 443, 280, "2 x 213 + 17; 280"},
  };
  for (const Case &each : cases) {
    CAPTURE(each.arithmetic);
    CHECK(case_sheet(mm(each.board), mm(each.hinge), mm(each.spine), mm(each.height), mm(each.square),
                     mm(each.turn_in)) == Size{mm(each.width_mm), mm(each.height_mm)});
  }
}

TEST_CASE("a case of a book: the binder's board goes before the reckoned one, and bleed is the turn-in") {
  Book book = book_of(BindingKind::case_bound, 0);
  CHECK(board_width(book) == mm(197.5)); // 200 + 3 - (8 - 2.5)
  auto cover = cover_with(book, 6.2);
  REQUIRE(cover);
  CHECK(cover->visible == Size{mm(417.2), mm(256)}); // 2 x (197.5 + 8) + 6.2; 250 + 2 x 3
  CHECK(cover->sheet == Size{mm(455.2), mm(294)});   // + 2 x 19
  CHECK(cover->panel == mm(205.5));
  CHECK(cover->past == Edges{mm(19), mm(19), mm(19), mm(19)});
  book.binding.board_width = mm(199);
  CHECK(cover_with(book, 6.2)->visible.width == mm(420.2)); // 2 x (199 + 8) + 6.2
}

TEST_CASE("a cover with a back wants to know its spine") {
  CHECK_FALSE(cover_sheet(book_of(BindingKind::perfect, 0), std::nullopt, bleed));
  CHECK_FALSE(cover_sheet(book_of(BindingKind::case_bound, 0), std::nullopt, bleed));
  CHECK_FALSE(cover_sheet(book_of(BindingKind::layflat, 0), std::nullopt, bleed));
  CHECK(cover_sheet(book_of(BindingKind::saddle, 0), std::nullopt, bleed));
  CHECK(cover_sheet(book_of(BindingKind::spiral, 0), std::nullopt, bleed));
}

TEST_CASE("creep: hand-worked") {
  struct Case {
    std::size_t page, pages, sheet;
    double leaf, creep;
    const char *arithmetic;
  };
  const Case cases[] = {
      {1, 4, 0, 0.1, 0, "the only sheet"},
      {2, 4, 0, 0.1, 0, "the only sheet"},
      {4, 4, 0, 0.1, 0, "the only sheet"},
      {1, 8, 0, 0.1, 0, "outermost: 1, 2, 7, 8"},
      {3, 8, 1, 0.1, 0.1, "innermost: 3, 4, 5, 6"},
      {6, 8, 1, 0.1, 0.1, "innermost: 3, 4, 5, 6"},
      {7, 8, 0, 0.1, 0, "outermost: 1, 2, 7, 8"},
      {5, 16, 2, 0.1, 0.2, "2 sheets outside: 1-2, 3-4"},
      {12, 16, 2, 0.1, 0.2, "its mate: 17 - 12 = 5"},
      {8, 16, 3, 0.1, 0.3, "3 x 0.1"},
      {16, 32, 7, 0.1, 0.7, "7 x 0.1"},
      {24, 48, 11, 0.12, 1.32, "11 x 0.12"},
      {33, 64, 15, 0.1, 1.5, "its mate: 65 - 33 = 32; 15 x 0.1"},
      {64, 64, 0, 0.1, 0, "its mate: 65 - 64 = 1"},
  };
  for (const Case &each : cases) {
    CAPTURE(each.page, each.pages, each.arithmetic);
    CHECK(sheet_of(each.page, each.pages) == each.sheet);
    CHECK(creep_of(each.page, each.pages, mm(each.leaf)).mm() == Approx(each.creep).margin(1e-6));
  }
  CHECK(sheets_of(0) == 0);
  CHECK(sheets_of(4) == 1);
  CHECK(sheets_of(64) == 16);
}

TEST_CASE("every sheet of a stapled book holds four pages, and mates share one") {
  for (std::size_t pages = 4; pages <= 96; pages += 4) {
    std::vector<std::size_t> held(sheets_of(pages));
    for (std::size_t page = 1; page <= pages; ++page) {
      CAPTURE(page, pages);
      REQUIRE(sheet_of(page, pages) < held.size());
      ++held[sheet_of(page, pages)];
      REQUIRE(sheet_of(page, pages) == sheet_of(pages + 1 - page, pages));
    }
    for (const std::size_t count : held) REQUIRE(count == 4);
  }
}

TEST_CASE("a stapled book folds by four whatever the press sheet says, as one signature") {
  struct Case {
    std::size_t pages;
    int multiple;
    std::size_t total, by;
    const char *arithmetic;
  };
  const Case cases[] = {{10, 1, 12, 4, "10 + 2"},
                        {10, 2, 12, 4, "10 + 2"},
                        {10, 6, 12, 12, "4 and 6 ask for 12: 10 + 2"},
                        {14, 6, 24, 12, "14 + 10"},
                        {17, 8, 24, 8, "17 + 7"}};
  for (const Case &each : cases) {
    CAPTURE(each.arithmetic);
    const BoundBook bound = bind(book_of(BindingKind::saddle, each.pages), sheet_of(each.multiple));
    CHECK(bound.multiple == each.by);
    CHECK(bound.plan.total() == each.total);
    CHECK(bound.plan.signatures.size() == 1);
  }
}

TEST_CASE("the object as a whole") {
  Book book = book_of(BindingKind::saddle, 15);
  CHECK_FALSE(bind(book, sheet_of()).creeps); // no paper is told
  book.stocks.block = paper(0.1);
  const BoundBook stapled = bind(book, sheet_of());
  CHECK(stapled.creeps);
  CHECK(stapled.creep(1) == Length{});
  CHECK(stapled.creep(8) == mm(0.3)); // of 16 pages, 4 sheets
  CHECK_FALSE(stapled.spine);
  CHECK(stapled.cover->visible.width == mm(400));

  book.binding.kind = BindingKind::perfect;
  CHECK(bind(book, sheet_of()).plan.signatures.empty()); // nobody told how the book is gathered
  CHECK(bind(book, sheet_of()).plan.total() == 16);
  book.binding.signature = 8;
  const BoundBook glued = bind(book, sheet_of());
  CHECK(glued.creep(8) == Length{});
  CHECK(glued.signature == 8);
  CHECK(glued.plan.signatures.size() == 2);
  CHECK(glued.spine->pages == 16); // the blank counts for the thickness
  CHECK(glued.spine->width.length == mm(0.8));
  CHECK(glued.cover->visible.width == mm(400.8));
  CHECK(glued.cover->past == Edges{mm(3), mm(3), mm(3), mm(3)}); // the book's bleed, the sheet asks for none

  book.stocks.block.reset();
  const BoundBook unknown = bind(book, sheet_of());
  CHECK_FALSE(unknown.leaf);
  CHECK_FALSE(unknown.spine);
  CHECK_FALSE(unknown.cover);
}

TEST_CASE("a book of no pages is bound without harm") {
  for (const auto &[kind, word] : binding_words) {
    CAPTURE(word);
    const BoundBook bound = bind(book_of(kind, 0), sheet_of());
    CHECK(bound.plan.total() == 0);
    CHECK(bound.signature >= 1);
  }
}

TEST_CASE("a cover among the pages is no page of the block, and a spread is two") {
  Book book = book_of(BindingKind::perfect, 4);
  book.pages[0].kind = PageKind::cover;
  book.pages[2].kind = PageKind::spread;
  CHECK(bind(book, sheet_of()).plan.pages == 4);
}
