#include "reports/content/proof_content.h"

#include "tests/support/catch.h"
#include "tests/support/small_book.h"

using namespace stoneproof;
using namespace stoneproof::content;
using namespace stoneproof::test;

TEST_CASE("the verdict says what holds the book, in one line") {
  CHECK(verdict_line({2, 5, 0}) == "Held: 2 things must be mended before this book goes to the printer.");
  CHECK(verdict_line({1, 0, 0}) == "Held: 1 thing must be mended before this book goes to the printer.");
  CHECK(verdict_line({0, 1, 3}) ==
        "Clear: nothing holds this book back. 1 query is left for somebody to decide.");
  CHECK(verdict_line({0, 2, 0}) ==
        "Clear: nothing holds this book back. 2 queries are left for somebody to decide.");
  CHECK(verdict_line({0, 0, 9}) == "Clear: nothing holds this book back.");
}

TEST_CASE("a proof says so when tones and inks were not measured") {
  Checked result = checked(small_book());
  CHECK(proof_content(result.evidence, result.findings).press.find("not measured") == std::string::npos);
  result.evidence.pixels_measured = false;
  CHECK(proof_content(result.evidence, result.findings)
            .press.ends_with("Tones, inks and colours were not measured."));
}

TEST_CASE("a finished PDF is named beside its title, and a binding that nobody named told as a guess") {
  Book book = small_book();
  book.print_file = PrintFile{"house, final.pdf"};
  book.print_file->binding_guessed = true;
  Checked result = checked(book);
  const ProofContent titled = proof_content(result.evidence, result.findings);
  CHECK(titled.file == "house, final.pdf");
  CHECK(titled.job == "200 × 250 mm trim, taken for perfect bound (--binding names it), 3 pages, 0 listed "
                      "pictures, 0 frames");
  CHECK(titled.object.unknown.find(
            "this one was taken for perfect bound; --binding names another. How many") != std::string::npos);
  book.title = "house, final";
  book.print_file->binding_guessed = false;
  result = checked(book);
  const ProofContent untitled = proof_content(result.evidence, result.findings);
  CHECK(untitled.file.empty());
  CHECK(untitled.object.unknown.find("taken for") == std::string::npos);
  CHECK(untitled.job.find("trim, perfect bound, 3 pages") != std::string::npos);
  book.print_file.reset();
  result = checked(book);
  CHECK(proof_content(result.evidence, result.findings).file.empty());
}

TEST_CASE("marks are numbered in page order from top to bottom, and listed most grave first") {
  Book book = small_book();
  book.pictures = {photo("a", "a.jpg"), photo("b", "b.jpg"), photo("c", "c.jpg")};
  book.pages[0].frames = {frame("low", 0, 20, 150, 150, 80), frame("high", {}, 20, 20, 100, 100)};
  book.pages[1].frames = {frame("spread", 1, 20, 20, 170, 150)};
  const Checked result = checked(std::move(book));
  const ProofContent content = proof_content(result.evidence, result.findings);

  // Page 1: the empty frame (hold) stands above the coarse one (query); the spread: too coarse (hold); c is
  // unused (note).
  REQUIRE(content.marks.size() == 4);
  CHECK(content.counts == std::array<std::size_t, 3>{2, 1, 1});
  CHECK_FALSE(content.clear);
  CHECK(content.marks[0].subject == "Frame high");
  CHECK(content.marks[1].subject == "a.jpg");
  CHECK(content.marks[2].subject == "b.jpg");
  CHECK(content.marks[2].page == "Pages 2–3");
  CHECK(content.marks[3].subject == "c.jpg");
  CHECK(content.marks[3].page == "The book");
  for (std::size_t i = 0; i < 4; ++i) CHECK(content.marks[i].number == static_cast<int>(i) + 1);
  CHECK(content.gravest_first == std::vector<std::size_t>{0, 2, 1, 3});
  CHECK(content.surfaces[0].marks == std::vector<std::size_t>{0, 1});
  CHECK(content.surfaces[1].marks == std::vector<std::size_t>{2});
  CHECK(content.job == "200 × 250 mm trim, perfect bound, 3 pages, 3 listed pictures, 3 frames");
  CHECK(content.press.find("The printer’s own specification has the last word.") != std::string::npos);
}

TEST_CASE("what weighs most: findings of one rule and grade together, holds first, with their pages") {
  Book book = small_book();
  book.pictures = {photo("a", "a.jpg")};
  book.pages[0].frames = {frame("coarse", 0, 20, 150, 150, 80), frame("e1", {}, 20, 20, 50, 50),
                          frame("e2", {}, 100, 20, 50, 50)};
  book.pages[1].frames = {frame("e3", {}, 20, 20, 50, 50)};
  const Checked result = checked(std::move(book));
  const ProofContent content = proof_content(result.evidence, result.findings);
  REQUIRE(content.matters.size() == 2);
  CHECK(content.matters[0].grade == Grade::hold);
  CHECK(content.matters[0].count == 3);
  CHECK(content.matters[0].title == "Frame has no picture");
  CHECK(content.matters[0].where == "Pages 1 and 2–3");
  CHECK(content.marks[content.matters[0].mark].title == "Frame has no picture");
  CHECK(content.matters[1].grade == Grade::query);
  CHECK(content.matters[1].where == "Page 1");
}

TEST_CASE("many pages are told by the first of them") {
  Book book = small_book();
  book.pages.clear();
  for (int number = 1; number <= 12; ++number) {
    Page page;
    page.number = number;
    page.frames = {frame("f" + std::to_string(number), {}, 20, 20, 50, 50)};
    book.pages.push_back(page);
  }
  const Checked result = checked(std::move(book));
  CHECK(proof_content(result.evidence, result.findings).matters.at(0).where ==
        "Pages 1, 2, 3, 4, 5, 6, 7, 8, 9 and 3 more");
}

TEST_CASE("a later round knows which marks are new, and what was mended") {
  Book book = small_book();
  book.pages[0].frames = {frame("old", {}, 20, 20, 50, 50), frame("new", {}, 20, 120, 50, 50)};
  const Checked result = checked(std::move(book));
  ProofContent content = proof_content(result.evidence, result.findings);
  const auto recorded = [](const char *frame, int page, std::string message) {
    return RecordedFinding{"empty-frame", Grade::hold, page, frame, {}, {}, std::move(message)};
  };
  const RecordedRound last{"t", true, {}, {recorded("old", 7, "empty"), recorded("gone", 9, "was empty")}};
  RecordedRound now{"t", true, {}, {}};
  for (const Finding &finding : result.findings)
    now.findings.push_back(
        recorded(result.evidence.book.pages[0].frames[*finding.frame].id.c_str(), 1, "empty"));
  tell_round(content, last, now);
  CHECK(content.round == "Since the last round: 1 new, 1 standing, 1 mended.");
  REQUIRE(content.marks.size() == 2);
  CHECK_FALSE(content.marks[0].fresh);
  CHECK(content.marks[1].fresh);
  REQUIRE(content.mended.size() == 1);
  CHECK(content.mended[0].page == "Page 9");
  CHECK(content.mended[0].title == "Frame has no picture");
  CHECK(content.mended[0].grade == "Hold");
  CHECK(content.mended[0].message == "was empty");
}

TEST_CASE("the place of a turned frame is told by its corners, any other by its box alone") {
  Book book = small_book();
  Frame turned = frame("turned", {}, 40, 40, 80, 50);
  turned.turn.degrees = 12;
  book.pages[0].frames = {frame("straight", {}, 40, 150, 80, 50)};
  book.pages[1].frames = {turned};
  const Checked result = checked(std::move(book));
  const ProofContent content = proof_content(result.evidence, result.findings);
  REQUIRE(content.marks.size() == 2);
  CHECK_FALSE(content.marks[0].corners);
  REQUIRE(content.marks[1].corners);
  CHECK(*content.marks[1].corners == result.evidence.frames[1].corners);
}
