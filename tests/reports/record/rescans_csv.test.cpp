// The table of what contributors are asked for, read back by Python's csv module, beside the letters.
#include "reports/record/rescans_csv.h"

#include "tests/reports/record/read_csv.h"
#include "tests/support/letter_book.h"

#include <set>

using namespace stoneproof;
using namespace stoneproof::content;
using namespace stoneproof::test;
using record::rescans_csv;

namespace {

/// Five pictures of Eleni, Żaneta and nobody; p0 stands in two frames, one of them on the cover.
Checked several() {
  Checked checked = letter_book({300, 150, 60, 60, 300});
  Book &book = checked.evidence.book;
  book.pictures[1].contributor = 1;
  book.pictures[2].original->lost = true;
  book.pictures[3].contributor.reset();
  book.pictures[4].original->kind = OriginalKind::object;
  book.pictures[3].file = "scans/say \"hello\",\nagain 夏.tif";
  Page cover;
  cover.number = 0;
  cover.kind = PageKind::cover;
  cover.frames = {frame("front", 0, 0, 0, 60, 40)};
  book.cover = Cover{{Length::of_mm(410), Length::of_mm(250)}, Length::of_mm(10), {}, {}};
  book.pages.insert(book.pages.begin(), cover);
  checked.findings = {
      found(checked, 0, "too-few-pixels", Grade::hold), found(checked, 1, "printed-screen", Grade::query),
      found(checked, 2, "too-few-pixels", Grade::query), found(checked, 3, "screenshot", Grade::query),
      found(checked, 4, "too-few-pixels", Grade::query)};
  checked.findings[0].rescue.print_no_larger = Size{Length::of_mm(50), Length::of_mm(33)};
  return checked;
}

} // namespace

TEST_CASE("the table holds a line for each picture that something is asked for") {
  const Checked checked = several();
  const Asks asks = letter_asks(checked.evidence, checked.findings);
  const auto table = read_back(rescans_csv(checked.evidence.book, asks));
  REQUIRE(table.size() == 6);
  check_columns(table, "rescans.md");

  auto large = line_of(table, "picture", "p0");
  CHECK(large["contributor"] == "eleni");
  CHECK(large["contributor_name"] == "Ελένη Καλφάτη");
  CHECK(large["language"] == "en");
  CHECK(large["file"] == "p0.tif");
  CHECK(large["original"] == "print");
  CHECK(large["original_width_mm"] == "150");
  CHECK(large["grade"] == "hold");
  CHECK(large["ask"] == "scan");
  CHECK(large["setting_ppi"] == "600");
  CHECK(large["width_px"] == "3543"); // 150 / 25.4 * 600 = 3543.3
  CHECK(large["height_px"] == "2362");
  CHECK(large["pages"] == "cover 1");
  CHECK(large["frames"] == "front f0");
  CHECK(large["printed_width_mm"] == "300");
  CHECK(large["printed_height_mm"] == "200");
  CHECK(large["largest_width_mm"] == "50");
  CHECK(large["reason"] == "too-few-pixels");

  auto dots = line_of(table, "picture", "p1");
  CHECK(dots["contributor"] == "zaneta");
  CHECK(dots["language"] == "de");
  CHECK(dots["setting_ppi"] == "600"); // its size alone would want 300
  CHECK(dots["width_px"] == "3543");
  CHECK(dots["reason"] == "printed-screen");
  CHECK(dots["largest_width_mm"].empty());

  auto lost = line_of(table, "picture", "p2");
  CHECK(lost["ask"] == "find-better");
  CHECK(lost["setting_ppi"].empty());
  CHECK(lost["width_px"].empty());

  auto nobodys = line_of(table, "picture", "p3");
  CHECK(nobodys["contributor"].empty());
  CHECK(nobodys["contributor_name"].empty());
  CHECK(nobodys["language"] == "en");
  CHECK(nobodys["file"] == "scans/say \"hello\",\nagain 夏.tif");
  CHECK(nobodys["ask"] == "first-file");

  auto object = line_of(table, "picture", "p4");
  CHECK(object["ask"] == "photograph");
  CHECK(object["setting_ppi"].empty());
  CHECK(object["width_px"] == "3544"); // 300 mm at 300 ppi are 3543.3: of an object rounded up
}

TEST_CASE("the table says what the letters say, in their order") {
  const Checked checked = several();
  const Book &book = checked.evidence.book;
  const Asks asks = letter_asks(checked.evidence, checked.findings);
  const auto table = read_back(rescans_csv(book, asks));
  std::size_t row = 1;
  for (const ContributorAsks &person : asks.people)
    for (const LetterPicture &told : letter_content(book, person).pictures) {
      const std::string id = table.at(row++).at(3);
      CHECK(id == book.pictures[told.picture].id);
      auto line = line_of(table, "picture", id);
      CHECK(line["instruction"] == told.instruction);
      CHECK(line["why"] == told.why);
      CHECK(line["how"] == told.how);
      CHECK(line["if_lost"] == told.if_lost);
    }
  CHECK(row == 5);
  CHECK(line_of(table, "picture", "p1")["instruction"].find("Scannen Sie") == 0);
}

TEST_CASE("a book that asks for nothing has the header alone") {
  const auto table = read_back(rescans_csv(small_book(), {}));
  REQUIRE(table.size() == 1);
  check_columns(table, "rescans.md");
}

TEST_CASE("every word for what is asked is described") {
  const std::string described = content_of(STONEPROOF_SOURCE_DIR "/schema/rescans.md");
  std::set<std::string_view> words;
  for (const auto &[ask, word] : ask_keywords) {
    CHECK(described.find("`" + std::string(word) + "`") != std::string::npos);
    CHECK(words.insert(word).second);
  }
  CHECK(words.size() == static_cast<std::size_t>(Ask::find_better) + 1);
}
