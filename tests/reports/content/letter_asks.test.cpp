// Which one thing a contributor is asked to do, in cases worked by hand.
#include "reports/content/letter_asks.h"

#include "tests/support/catch.h"
#include "tests/support/letter_book.h"

using namespace stoneproof;
using namespace stoneproof::content;
using namespace stoneproof::test;

namespace {

using Found = std::vector<std::pair<std::string_view, Grade>>;

/// What is asked for one picture, an original of 150 x 100 mm printed 300 mm wide: twice its size.
std::vector<PictureAsk> asked(const Found &found_rules, const std::optional<Original> &original) {
  Checked checked = letter_book({300});
  checked.evidence.book.pictures[0].original = original;
  for (const auto &[rule, grade] : found_rules) checked.findings.push_back(found(checked, 0, rule, grade));
  return letter_asks(checked.evidence, checked.findings).people[0].pictures;
}

Original of(OriginalKind kind, double width = 150, double height = 100) {
  return {kind, Size{Length::of_mm(width), Length::of_mm(height)}, false};
}

} // namespace

TEST_CASE("one thing is asked for a picture, whatever is found of it") {
  const Original print = of(OriginalKind::print);
  Original lost = print, unmeasured = print;
  lost.lost = true;
  unmeasured.size.reset();
  struct Case {
    Found found;
    std::optional<Original> original;
    Ask ask;
    Grade grade;
    std::string_view why;
    std::optional<int> setting;
  };
  const Grade hold = Grade::hold, query = Grade::query, note = Grade::note;
  for (const Case &c : std::vector<Case>{
           // Twice its size at 300 ppi wants 600.
           {{{"too-few-pixels", hold}}, print, Ask::scan, hold, "too-few-pixels", 600},
           // 15 x 10 mm printed 300 mm wide wants 6000: beyond every usual setting, so the highest,
           // elsewhere.
           {{{"too-few-pixels", hold}},
            of(OriginalKind::print, 15, 10),
            Ask::scan_by_service,
            hold,
            "too-few-pixels",
            4800},
           // 36 x 24 mm: 300 x 300 / 36 = 2500, the next usual setting is 3200.
           {{{"soft-detail", query}},
            of(OriginalKind::slide, 36, 24),
            Ask::scan_film,
            query,
            "soft-detail",
            3200},
           {{{"too-few-pixels", hold}},
            of(OriginalKind::object),
            Ask::photograph,
            hold,
            "too-few-pixels",
            {}},
           {{{"too-few-pixels", hold}}, unmeasured, Ask::measure, hold, "too-few-pixels", {}},
           {{{"lost-original-too-small", hold}}, lost, Ask::find_better, hold, "lost-original-too-small", {}},
           {{{"coarse-jpeg", hold}}, std::nullopt, Ask::first_file, hold, "coarse-jpeg", {}},
           {{{"screenshot", query}}, print, Ask::first_file, query, "screenshot", 600},
           {{{"unaccepted-file", query}}, print, Ask::save_as_tiff, query, "unaccepted-file", 600},
           {{{"several-pictures", query}}, print, Ask::own_file, query, "several-pictures", 600},
           {{{"missing-picture", hold}}, print, Ask::send_file, hold, "missing-picture", 600},
           {{{"unreadable-picture", hold}}, print, Ask::send_again, hold, "unreadable-picture", 600},
           // A new scan mends the others too, and the gravest of what it is asked for says why.
           {{{"unaccepted-file", query}, {"soft-detail", query}, {"coarse-jpeg", hold}},
            print,
            Ask::scan,
            hold,
            "coarse-jpeg",
            600},
           {{{"unaccepted-file", query}, {"coarse-jpeg", query}, {"too-few-pixels", query}},
            print,
            Ask::scan,
            query,
            "too-few-pixels",
            600},
           // What nobody can open is not judged further.
           {{{"coarse-jpeg", hold}, {"nearly-blank", query}},
            print,
            Ask::send_again,
            hold,
            "nearly-blank",
            600},
           // A note asks nothing, and does not tell why.
           {{{"saved-before", note}, {"clipped-shadows", query}},
            print,
            Ask::scan,
            query,
            "clipped-shadows",
            600},
       }) {
    const auto pictures = asked(c.found, c.original);
    CAPTURE(c.found.front().first, static_cast<int>(c.ask));
    REQUIRE(pictures.size() == 1);
    CHECK(pictures[0].ask == c.ask);
    CHECK(pictures[0].grade == c.grade);
    CHECK(pictures[0].rule == c.why);
    CHECK(pictures[0].setting == c.setting);
  }
}

TEST_CASE("layout, inks and profiles are the book maker's own business, and a note asks nothing") {
  for (const std::string_view rule :
       {"short-bleed", "uneven-stretch", "inside-safe-margin", "across-gutter", "no-profile", "too-much-ink",
        "low-contrast", "bed-showing", "near-copy"})
    CHECK(asked({{rule, Grade::hold}}, of(OriginalKind::print)).empty());
  CHECK(asked({{"too-few-pixels", Grade::note}}, of(OriginalKind::print)).empty());
}

TEST_CASE("printed dots want a fine scan even where the print is small") {
  Checked checked = letter_book({150}); // as large as the original: 300 would do
  checked.findings = {found(checked, 0, "printed-screen", Grade::query)};
  const Asks asks = letter_asks(checked.evidence, checked.findings);
  CHECK(asks.people[0].pictures[0].setting == 600);
}

TEST_CASE("pictures stand by the size of their print, whoever is graver; those of nobody stand apart") {
  Checked checked = letter_book({60, 150, 90, 120});
  checked.evidence.book.pictures[3].contributor.reset();
  checked.findings = {
      found(checked, 0, "too-few-pixels", Grade::hold), found(checked, 3, "too-few-pixels", Grade::hold),
      found(checked, 1, "too-few-pixels", Grade::query), found(checked, 2, "soft-detail", Grade::query)};
  const Asks asks = letter_asks(checked.evidence, checked.findings);
  REQUIRE(asks.people.size() == 2);
  REQUIRE(asks.people[0].pictures.size() == 3);
  CHECK(asks.people[0].pictures[0].picture == 1);
  CHECK(asks.people[0].pictures[1].picture == 2);
  CHECK(asks.people[0].pictures[2].picture == 0);
  CHECK(asks.people[1].nothing());
  REQUIRE(asks.nobody.pictures.size() == 1);
  CHECK(asks.nobody.pictures[0].picture == 3);
  CHECK_FALSE(asks.nobody.contributor);
}

TEST_CASE("a picture shown twice is asked for once, at the setting of the hardest frame") {
  Checked checked = letter_book({75, 300});
  checked.evidence.book.pages[0].frames[1].picture = 0;
  checked.findings = {found(checked, 0, "too-few-pixels", Grade::query),
                      found(checked, 0, "too-few-pixels", Grade::hold)};
  checked.findings[0].rescue.print_no_larger = Size{Length::of_mm(60), Length::of_mm(40)};
  checked.findings[1].rescue.print_no_larger = Size{Length::of_mm(50), Length::of_mm(33)};
  const auto pictures = letter_asks(checked.evidence, checked.findings).people[0].pictures;
  REQUIRE(pictures.size() == 1);
  CHECK(pictures[0].frames.size() == 2);
  CHECK(pictures[0].setting == 600);
  CHECK(pictures[0].printed.width == Length::of_mm(300));
  CHECK(pictures[0].no_larger->width == Length::of_mm(50));
}

TEST_CASE("a dirty glass is told to everybody whose pictures show it, and these are scanned again") {
  Checked checked = letter_book({60, 60, 60, 60, 60});
  auto &pictures = checked.evidence.book.pictures;
  pictures[1].contributor = 1;
  pictures[2].original->lost = true; // can only be retouched
  const Size area{Length::of_mm(210), Length::of_mm(300)};
  Glass glass{{0, 1, 2, 3}, area, {}};
  glass.spots = {{GlassSpotKind::speck, 0.1, 0.2, 0.11, 0.21, 9, {0, 1, 2}, Certainty::firm},
                 {GlassSpotKind::speck, 0.5, 0.5, 0.51, 0.51, 9, {3}, Certainty::hint}};
  checked.evidence.glasses = {glass};
  Finding finding = found(checked, 0, "dirty-glass", Grade::query);
  finding.glass = 0;
  finding.same_picture = {{0, 0}, {0, 1}, {0, 2}, {0, 3}};
  checked.findings = {finding, found(checked, 4, "screenshot", Grade::query)};
  const Asks asks = letter_asks(checked.evidence, checked.findings);
  for (const std::size_t person : {0u, 1u}) {
    REQUIRE(asks.people[person].glasses.size() == 1);
    const DirtyGlass &dirty = asks.people[person].glasses[0];
    CHECK(dirty.pictures == std::vector<std::size_t>{person});
    REQUIRE(dirty.spots.size() == 1);
    CHECK(std::abs(dirty.spots[0].x_mm - 21) < 0.01);
    CHECK(std::abs(dirty.spots[0].y_mm - 60) < 0.01);
    CHECK(std::abs(dirty.spots[0].height_mm - 3) < 0.01);
    CHECK(asks.people[person].pictures[0].rule == "dirty-glass");
    CHECK(asks.people[person].pictures[0].ask == Ask::scan);
  }
  CHECK(asks.people[0].pictures.size() == 2); // the one that was scanned on it, and the copy of a screen
}
