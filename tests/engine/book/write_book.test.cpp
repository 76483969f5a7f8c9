// A book that is written and read again is the same book.
#include "engine/book/read.h"
#include "engine/book/write.h"
#include "tests/engine/book/random_book.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::test;

TEST_CASE("writing what was read changes nothing any more, and the values are the same") {
  constexpr std::uint64_t seed = 77;
  Chance chance(seed);
  int books = 0;
  for (int i = 0; i < 300; ++i) {
    std::string text;
    write_file(RandomBook(chance).make(), text);
    const auto first = parse_book(SourceText("book.xml", text));
    if (!first) continue;
    ++books;
    const std::string written = book_text(*first.value);
    const auto second = parse_book(SourceText("book.xml", written));
    INFO(written);
    for (const SourceFault &fault : second.faults) UNSCOPED_INFO(with_caret(fault));
    REQUIRE(second);
    CHECK(book_text(*second.value) == written);
    const Book &a = *first.value, &b = *second.value;
    CHECK(a.title == b.title);
    CHECK(a.trim == b.trim);
    CHECK(a.bleed == b.bleed);
    CHECK(a.binding.gutter_loss == b.binding.gutter_loss);
    CHECK(a.binding.signature == b.binding.signature);
    CHECK(a.cover.has_value() == b.cover.has_value());
    CHECK(a.print_file.has_value() == b.print_file.has_value());
    REQUIRE(a.pages.size() == b.pages.size());
    for (std::size_t page = 0; page < a.pages.size(); ++page) {
      REQUIRE(a.pages[page].frames.size() == b.pages[page].frames.size());
      REQUIRE(a.pages[page].texts.size() == b.pages[page].texts.size());
      CHECK(a.pages[page].trim == b.pages[page].trim);
      for (std::size_t frame = 0; frame < a.pages[page].frames.size(); ++frame) {
        const Frame &one = a.pages[page].frames[frame], &other = b.pages[page].frames[frame];
        CHECK(one.rect == other.rect);
        CHECK(one.turn == other.turn);
        CHECK(one.picture == other.picture);
        CHECK(one.order == other.order);
        CHECK(one.fit.index() == other.fit.index());
        if (const auto *crop = std::get_if<CropShare>(&one.fit))
          CHECK(crop->width == Approx(std::get<CropShare>(other.fit).width).epsilon(1e-15));
      }
      for (std::size_t block = 0; block < a.pages[page].texts.size(); ++block) {
        CHECK(a.pages[page].texts[block].text == b.pages[page].texts[block].text);
        CHECK(a.pages[page].texts[block].order == b.pages[page].texts[block].order);
      }
      REQUIRE(a.pages[page].print.has_value() == b.pages[page].print.has_value());
      if (!a.pages[page].print) continue;
      CHECK(a.pages[page].print->boxes.media == b.pages[page].print->boxes.media);
      CHECK(a.pages[page].print->painted == b.pages[page].print->painted);
      CHECK(a.pages[page].print->lines.size() == b.pages[page].print->lines.size());
      CHECK(a.pages[page].print->transparent == b.pages[page].print->transparent);
    }
  }
  CHECK(books > 200);
}
