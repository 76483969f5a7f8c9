#include "reports/content/object_words.h"

#include "tests/support/catch.h"
#include "tests/support/small_book.h"

#include <algorithm>
#include <functional>

using namespace stoneproof;
using namespace stoneproof::content;

namespace {

/// The small book with so many single pages, its paper told by caliper.
Evidence evidence_of(BindingKind kind, int pages, std::optional<double> caliper_mm,
                     const std::function<void(Book &)> &change = {}) {
  Book book = test::small_book();
  book.binding.kind = kind;
  book.pages.clear();
  for (int number = 1; number <= pages; ++number) book.pages.push_back(Page{.number = number});
  if (caliper_mm) book.stocks.block = Stock{.caliper = Length::of_mm(*caliper_mm)};
  if (change) change(book);
  return test::checked(std::move(book)).evidence;
}

const Reckoning &named(const ObjectWords &words, std::string_view name) {
  const auto found = std::ranges::find(words.reckonings, name, &Reckoning::name);
  REQUIRE(found != words.reckonings.end());
  return *found;
}

bool tells(const std::string &text, std::string_view part) { return text.find(part) != std::string::npos; }

} // namespace

// GPO Government Paper Specification Standards (February 1999), A55, 90 g/m2: 0.120 mm and 0.013 mm
// tolerance.
TEST_CASE("the spine of 128 pages at 0.12 mm is told with leaves, leaf and band") {
  const auto words = object_words(evidence_of(BindingKind::layflat, 128, 0.12));
  CHECK(named(words, "Block").figure == "7.68 mm ± 0.84 mm");
  CHECK(tells(named(words, "Block").how, "64 leaves × 0.12 mm; tolerance 64 × 0.013 mm."));
  CHECK(named(words, "Spine").figure == "7.68 mm ± 0.84 mm");
}

TEST_CASE("thickness is told as it was reckoned") {
  const auto of = [](Stock stock) {
    return named(object_words(evidence_of(BindingKind::perfect, 160, {},
                                          [&](Book &book) { book.stocks.block = stock; })),
                 "Leaf of the block");
  };
  CHECK(of({.grammage = 120, .bulk = 0.9}).figure == "0.108 mm");
  CHECK(tells(of({.grammage = 120, .bulk = 0.9}).how, "120 g/m² × 0.9 cm³/g ÷ 1000"));
  CHECK(of({.pages_per_inch = 400}).figure == "0.127 mm");
  CHECK(tells(of({.pages_per_inch = 400}).how, "400 pages per inch"));
}

TEST_CASE("a case is told as the sum of its parts, and with what was laid out") {
  // The worked case: turn-in 19, boards 213, hinges 8, spine 17, height 280, squares 3.
  const auto words = object_words(evidence_of(BindingKind::case_bound, 200, 0.12, [](Book &book) {
    book.trim = {Length::of_mm(210), Length::of_mm(280)};
    book.binding.board_width = Length::of_mm(213);
    book.cover = Cover{{Length::of_mm(459), Length::of_mm(286)}, Length::of_mm(17), {}, {}};
    book.pages.insert(book.pages.begin(), Page{.number = 0, .kind = PageKind::cover});
  }));
  CHECK(named(words, "Spine piece").figure == "17 mm ± 1.3 mm");
  CHECK(named(words, "Spine piece").how == "Block 12 mm + two boards 5 mm.");
  CHECK(named(words, "Cover sheet").figure == "497 × 324 mm");
  CHECK(tells(named(words, "Cover sheet").how, "2 × turn-in 19 + 2 × board 213 + 2 × hinge 8 + spine 17"));
  CHECK(tells(named(words, "Cover sheet").how, "Laid out: 459 × 286 mm, spine 17 mm."));
}

TEST_CASE("blanks and signatures are told in runs") {
  const auto words = object_words(
      evidence_of(BindingKind::perfect, 98, 0.1, [](Book &book) { book.binding.signature = 16; }));
  CHECK(named(words, "Pages").figure == "98 pages");
  CHECK(words.unknown.empty());
  const auto odd = object_words(
      evidence_of(BindingKind::case_bound, 97, 0.1, [](Book &book) { book.binding.signature = 16; }));
  CHECK(named(odd, "Pages").figure == "97 pages and 3 blanks at the end");
  REQUIRE(odd.signatures.size() == 2);
  CHECK(odd.signatures[0].signatures == "1 to 6");
  CHECK(odd.signatures[0].size == "16 pages");
  CHECK(odd.signatures[0].pages == "1–96");
  CHECK(odd.signatures[0].blanks.empty());
  CHECK(odd.signatures[1].signatures == "7");
  CHECK(odd.signatures[1].pages == "97–100");
  CHECK(odd.signatures[1].blanks == "last 3 blank");
}

TEST_CASE("creep is told sheet by sheet") {
  const auto words = object_words(evidence_of(BindingKind::saddle, 32, 0.1));
  CHECK(named(words, "Creep").figure == "up to 0.7 mm");
  REQUIRE(words.creep.size() == 8);
  CHECK(words.creep[0].sheet == "1, outermost");
  CHECK(words.creep[0].pages == "1–2 and 31–32");
  CHECK(words.creep[0].shift == "0 mm");
  CHECK(words.creep[7].sheet == "8, innermost");
  CHECK(words.creep[7].pages == "15–18");
  CHECK(words.creep[7].shift == "0.7 mm");
}

TEST_CASE(
    "without a signature that is described none are listed, and pages that are meant to be blank are told") {
  const auto words = object_words(evidence_of(BindingKind::perfect, 100, 0.1, [](Book &book) {
    book.pages[97].blank = book.pages[98].blank = true;
  }));
  CHECK(words.signatures.empty());
  CHECK(tells(words.unknown, "How many pages a folded sheet has is not known"));
  CHECK(tells(named(words, "Pages").how, "2 of them are meant to be blank."));
}

TEST_CASE("what is not described is said to be unknown") {
  const auto words = object_words(evidence_of(BindingKind::perfect, 32, {}));
  CHECK(tells(words.unknown, "neither the spine nor the cover"));
  CHECK(std::ranges::find(words.reckonings, "Spine", &Reckoning::name) == words.reckonings.end());
  CHECK(tells(object_words(evidence_of(BindingKind::saddle, 32, {})).unknown, "creep"));
}
