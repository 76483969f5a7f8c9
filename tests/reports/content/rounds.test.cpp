// What is new, standing and mended between two rounds, whatever happened to pages and frames.
#include "reports/content/rounds.h"

#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::content;

namespace {

using Places = std::vector<std::size_t>;

RecordedFinding in_frame(std::string rule, int page, std::string frame, std::string picture) {
  return {std::move(rule), Grade::hold, page, std::move(frame), {}, std::move(picture), "m"};
}

RecordedRound round_of(std::vector<RecordedFinding> findings) {
  RecordedRound round{"The mill", true, {}, std::move(findings)};
  for (const RecordedFinding &finding : round.findings)
    if (finding.frame) round.frames.push_back(*finding.frame);
  return round;
}

} // namespace

TEST_CASE("a finding that is gone is mended, one that came is new, the others stand") {
  const RecordedRound before = round_of(
                          {in_frame("short-bleed", 4, "a", "p"), in_frame("too-few-pixels", 4, "b", "q")}),
                      now = round_of(
                          {in_frame("too-few-pixels", 4, "b", "q"), in_frame("near-trim", 5, "c", "r")});
  const Rounds rounds = compare_rounds(before, now);
  CHECK(rounds.fresh == Places{1});
  CHECK(rounds.standing == Places{0});
  CHECK(rounds.mended == Places{0});
  CHECK(round_words(rounds) == "1 new, 1 standing, 1 mended");
}

TEST_CASE("renumbered pages, renamed frames and exchanged pictures leave a finding standing") {
  const RecordedRound before = round_of({in_frame("too-few-pixels", 4, "b", "q")});
  for (const RecordedFinding &later :
       {in_frame("too-few-pixels", 12, "b", "q"), in_frame("too-few-pixels", 12, "b", "rescan"),
        in_frame("too-few-pixels", 9, "other", "q")}) {
    CAPTURE(*later.page, *later.frame, *later.picture);
    CHECK(compare_rounds(before, round_of({later})).standing == Places{0});
  }
  const Rounds moved = compare_rounds(before, round_of({in_frame("too-few-pixels", 4, "c", "r")}));
  CHECK(moved.fresh == Places{0});
  CHECK(moved.mended == Places{0});
}

TEST_CASE("the same rule twice on one frame is matched twice, and the nearest first") {
  const RecordedRound before = round_of(
                          {in_frame("short-bleed", 4, "a", "p"), in_frame("short-bleed", 4, "b", "p")}),
                      now = round_of({in_frame("short-bleed", 4, "b", "p")});
  const Rounds rounds = compare_rounds(before, now);
  CHECK(rounds.standing == Places{0});
  CHECK(rounds.mended == Places{0}); // a's, though b shows the same picture
}

TEST_CASE("texts are known by their words, pages by their number, the book by the rule") {
  const RecordedFinding text{"small-type", Grade::query, 3, {}, "The end", {}, "m"},
      page{"empty-page", Grade::query, 7, {}, {}, {}, "m"},
      book{"page-count-off", Grade::hold, {}, {}, {}, {}, "m"};
  const RecordedRound before = round_of({text, page, book});
  RecordedFinding moved_text = text, renumbered = page, other_text = text;
  moved_text.page = 5, renumbered.page = 9, other_text.text = "The beginning";
  CHECK(compare_rounds(before, round_of({moved_text, renumbered, book})).standing == Places{0, 1, 2});
  CHECK(compare_rounds(before, round_of({other_text})).fresh == Places{0});
  // Of two empty pages the one that kept its number stands for itself.
  RecordedFinding second = page;
  second.page = 11;
  const Rounds rounds = compare_rounds(round_of({page, second}), round_of({second}));
  CHECK(rounds.mended == Places{0});
}

TEST_CASE("a round against itself has all standing, and reversed what was new is mended") {
  const RecordedRound a = round_of({in_frame("x-y", 1, "a", "p"), in_frame("x-y", 1, "b", "p"),
                                    in_frame("z", 2, "c", "q")}),
                      b = round_of({in_frame("x-y", 1, "b", "p"), in_frame("w", 2, "c", "q")});
  CHECK(compare_rounds(a, a).standing.size() == 3);
  const Rounds forth = compare_rounds(a, b), back = compare_rounds(b, a);
  CHECK(forth.fresh == back.mended);
  CHECK(forth.mended == back.fresh);
}

TEST_CASE("records of two books are told by title and frames") {
  RecordedRound before = round_of({in_frame("x-y", 1, "a", "p")}), now = before;
  CHECK(same_book(before, now));
  now.title = "The mill, second edition";
  CHECK(same_book(before, now));
  now.frames = {"z"};
  CHECK_FALSE(same_book(before, now));
}

TEST_CASE("a quick round says nothing of what only pixels show") {
  const auto found = [](const char *rule) {
    return RecordedFinding{rule, Grade::query, 1, "f", "p", {}, "words"};
  };
  const RecordedRound before{"t", false, {"f"}, {found("soft-detail"), found("short-bleed")}};
  RecordedRound now{"t", false, {"f"}, {}, false};
  const Rounds quick = compare_rounds(before, now);
  CHECK(quick.unlooked == std::vector<std::size_t>{0});
  CHECK(quick.mended == std::vector<std::size_t>{1});
  CHECK(round_words(quick) == "0 new, 0 standing, 1 mended, 1 not looked at");
  now.pixels_measured = true;
  const Rounds whole = compare_rounds(before, now);
  CHECK(whole.unlooked.empty());
  CHECK(whole.mended == std::vector<std::size_t>{0, 1});
}
