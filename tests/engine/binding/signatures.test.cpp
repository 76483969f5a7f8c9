// Blanks and signatures, by cases that are reckoned by hand and by what must hold for every plan.
#include "engine/binding/signatures.h"
#include "tests/engine/binding/bound_things.h"
#include "tests/support/catch.h"

#include <numeric>

using namespace stoneproof;
using namespace stoneproof::test;

TEST_CASE("blanks to a multiple: hand-worked") {
  struct Case {
    std::size_t pages, multiple, blanks;
    const char *arithmetic;
  };
  const Case cases[] = {
      {0, 4, 0, "0 = 0 x 4"},
      {1, 1, 0, "1 = 1 x 1"},
      {1, 4, 3, "1 + 3 = 1 x 4"},
      {2, 4, 2, "2 + 2 = 1 x 4"},
      {3, 4, 1, "3 + 1 = 1 x 4"},
      {4, 4, 0, "4 = 1 x 4"},
      {5, 4, 3, "5 + 3 = 2 x 4"},
      {30, 4, 2, "30 + 2 = 8 x 4"},
      {46, 4, 2, "46 + 2 = 12 x 4"},
      {97, 4, 3, "97 + 3 = 25 x 4"},
      {98, 4, 2, "98 + 2 = 25 x 4"},
      {98, 8, 6, "98 + 6 = 13 x 8"},
      {98, 16, 14, "98 + 14 = 7 x 16"},
      {98, 32, 30, "98 + 30 = 4 x 32"},
      {100, 4, 0, "100 = 25 x 4"},
      {100, 8, 4, "100 + 4 = 13 x 8"},
      {100, 16, 12, "100 + 12 = 7 x 16"},
      {100, 32, 28, "100 + 28 = 4 x 32"},
      {128, 32, 0, "128 = 4 x 32"},
      {130, 4, 2, "130 + 2 = 33 x 4"},
      {130, 8, 6, "130 + 6 = 17 x 8"},
      {130, 16, 14, "130 + 14 = 9 x 16"},
      {130, 32, 30, "130 + 30 = 5 x 32"},
      {7, 6, 5, "7 + 5 = 2 x 6"},
      {99'999, 32, 1, "99999 + 1 = 3125 x 32"},
      {1, 99'999, 99'998, "1 + 99998 = 1 x 99999"},
  };
  for (const Case &each : cases) {
    CAPTURE(each.pages, each.multiple, each.arithmetic);
    CHECK(blanks_to_multiple(each.pages, each.multiple) == each.blanks);
  }
}

TEST_CASE("plans of signatures: hand-worked") {
  struct Case {
    std::size_t pages, signature, multiple, blanks, signatures, last, blank_in_last;
    const char *arithmetic;
  };
  const Case cases[] = {
      {128, 16, 4, 0, 8, 16, 0, "8 x 16"},
      {100, 16, 4, 0, 7, 4, 0, "6 x 16 + 4"},
      {98, 16, 4, 2, 7, 4, 2, "98 + 2 = 6 x 16 + 4"},
      {97, 16, 4, 3, 7, 4, 3, "97 + 3 = 6 x 16 + 4"},
      {104, 32, 8, 0, 4, 8, 0, "3 x 32 + 8"},
      {130, 32, 16, 14, 5, 16, 14, "130 + 14 = 4 x 32 + 16"},
      {130, 32, 32, 30, 5, 32, 30, "130 + 30 = 5 x 32"},
      {38, 16, 2, 0, 3, 6, 0, "2 x 16 + 6"},
      {37, 16, 2, 1, 3, 6, 1, "37 + 1 = 2 x 16 + 6"},
      {37, 16, 1, 1, 3, 6, 1, "a leaf has two pages: 37 + 1 = 2 x 16 + 6"},
      {9, 6, 3, 3, 2, 6, 3, "3 and 2 ask for 6: 9 + 3 = 2 x 6"},
      {10, 4, 8, 6, 4, 4, 4, "a signature below the multiple: 10 + 6 = 4 x 4, the last one blank"},
      {3, 16, 4, 1, 1, 4, 1, "3 + 1 = 4, less than one signature"},
      {1, 16, 4, 3, 1, 4, 3, "1 + 3 = 4"},
      {1, 2, 2, 1, 1, 2, 1, "1 + 1 = 2, one leaf"},
      {20, 16, 4, 0, 2, 4, 0, "16 + 4"},
      {48, 24, 4, 0, 2, 24, 0, "2 x 24"},
      {46, 24, 4, 2, 2, 24, 2, "46 + 2 = 2 x 24"},
  };
  for (const Case &each : cases) {
    CAPTURE(each.pages, each.signature, each.multiple, each.arithmetic);
    const SignaturePlan plan = signature_plan(each.pages, each.signature, each.multiple);
    CHECK(plan.blanks == each.blanks);
    REQUIRE(plan.signatures.size() == each.signatures);
    CHECK(plan.signatures.back().pages == each.last);
    CHECK(plan.signatures.back().blanks == each.blank_in_last);
    CHECK(plan.signatures.back().last() == plan.total());
  }
  CHECK(signature_plan(0, 16, 4).signatures.empty());
  CHECK(signature_plan(0, 16, 4).total() == 0);
}

TEST_CASE("blanks make the multiple, are fewest, and lie at the end of consecutive signatures") {
  for (std::size_t pages = 0; pages <= 130; ++pages)
    for (const std::size_t multiple : {1u, 2u, 3u, 4u, 6u, 8u, 16u, 32u})
      for (const std::size_t signature : {2u, 4u, 6u, 8u, 16u, 24u, 32u}) {
        CAPTURE(pages, multiple, signature);
        const SignaturePlan plan = signature_plan(pages, signature, multiple);
        REQUIRE(plan.total() % multiple == 0);
        REQUIRE(plan.total() % 2 == 0);
        for (std::size_t fewer = 0; fewer < plan.blanks; ++fewer)
          REQUIRE(((pages + fewer) % multiple != 0 || (pages + fewer) % 2 != 0));
        std::size_t next = 1, blanks = 0;
        for (const Signature &each : plan.signatures) {
          REQUIRE(each.first == next);
          REQUIRE((each.pages == signature || &each == &plan.signatures.back()));
          REQUIRE(each.blanks == (each.last() > pages ? std::min(each.pages, each.last() - pages) : 0));
          next = each.last() + 1;
          blanks += each.blanks;
        }
        REQUIRE(next == plan.total() + 1);
        REQUIRE(blanks == plan.blanks);
      }
}

TEST_CASE("usual signatures are those of the style manuals") {
  for (std::size_t pages = 0; pages <= 80; ++pages) {
    CAPTURE(pages);
    const bool named = pages == 4 || pages == 8 || pages == 12 || pages == 16 || pages == 24 || pages == 32;
    CHECK(is_usual_signature(pages) == named);
  }
}

TEST_CASE("blanks at the end are counted from the end, through spreads, and not beyond a page that is used") {
  Book book = book_of(BindingKind::perfect, 6);
  CHECK(blanks_described_at_end(book) == 0);
  book.pages[1].blank = book.pages[4].blank = book.pages[5].blank = true;
  CHECK(blanks_described_at_end(book) == 2);
  book.pages[5].kind = PageKind::spread;
  CHECK(blanks_described_at_end(book) == 3);
  book.pages[5].blank = false;
  CHECK(blanks_described_at_end(book) == 0);
  for (Page &page : book.pages) page.blank = true;
  book.pages[0].kind = PageKind::cover;
  CHECK(blanks_described_at_end(book) == 6); // four pages and a spread; the cover is none of them
}
