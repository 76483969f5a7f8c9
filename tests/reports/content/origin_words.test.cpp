// Where a picture comes from, in words: print, the bed of a scanner, another file.
#include "reports/content/origin_words.h"

#include "reports/content/sentences.h"
#include "tests/support/catch.h"
#include "tests/support/small_book.h"

using namespace stoneproof;
using namespace stoneproof::content;
using namespace stoneproof::test;

namespace {

/// Two pictures of 1200 x 800 px, each in a frame of 4 x 8/3 in: 300 ppi.
Checked two_frames() {
  Book book = small_book();
  book.pictures = {photo("quay", "quay.jpg"), photo("quay-small", "quay small.jpg")};
  book.pages[0].frames = {frame("f", 0, 20, 20, 101.6, 67.8)};
  book.pages[1].frames = {frame("g", 1, 20, 20, 101.6, 67.8)};
  Checked checked = test::checked(std::move(book));
  checked.evidence.shown.resize(2);
  return checked;
}

Finding about_first(std::string_view rule) {
  Finding finding;
  finding.rule = rule;
  finding.page = finding.frame = finding.picture = 0;
  return finding;
}

} // namespace

TEST_CASE("a printed screen is told as it stands on the page, and on the original where that is another") {
  Checked checked = two_frames();
  Evidence &evidence = checked.evidence;
  evidence.shown[0].emplace().detail.printed = {Certainty::firm, 1 / 2.5, 45, true, 5, 0};
  Finding finding = about_first("printed-screen");
  finding.measured = Ruling{120};
  // 1200 px of 150 mm are 203.2 ppi: 81.3 lines an inch.
  CHECK(message(evidence, finding) == "Was scanned from print: its dots stand at 120 lines an inch on this "
                                      "page (81 on the original), turned by "
                                      "45°. The press’s own dots will make patterns with them (moiré).");
  CHECK(remedy(evidence, finding).starts_with("Scan it again at 600 ppi or more"));
  evidence.book.pictures[0].original->size = Size{Length::of_mm(40), Length::of_mm(30)}; // 762 ppi
  CHECK(remedy(evidence, finding).starts_with("The scan is fine enough to take the dots out"));
  evidence.book.pictures[0].original->lost = true;
  CHECK(remedy(evidence, finding).starts_with("The original is lost."));
  finding.measured = {};
  CHECK(message(evidence, finding) ==
        "Was scanned from print: its dots show, and the press’s own dots will make "
        "patterns with them (moiré).");
}

TEST_CASE("a strip of bed is told with its width and the edges that it runs along") {
  Checked checked = two_frames();
  Evidence &evidence = checked.evidence;
  Bed bed{Certainty::firm, false, 0.1, {24, 0, 1176, 776}, {}};
  evidence.pictures[0].bed = bed;
  Finding finding = about_first("bed-showing");
  finding.measured = Length::of_mm(2.03);
  CHECK(message(evidence, finding) ==
        "A black strip of the scanner’s bed of 2.03 mm shows along the picture’s lower and left edges.");
  CHECK(remedy(evidence, finding) ==
        "Show a part of the picture that ends inside the strip, or cut it off in the picture.");
  evidence.pictures[0].bed = Bed{Certainty::firm, true, 0.1, {0, 24, 1200, 776}, {}};
  CHECK(message(evidence, finding) == "A white strip of 2.03 mm shows along the picture’s upper edge: the "
                                      "scanner’s lid, or the print’s own white edge.");
  CHECK(remedy(evidence, finding).ends_with("If the white edge is the print’s own and wanted, leave it."));
}

TEST_CASE("a tilt is told with its direction") {
  Checked checked = two_frames();
  Finding finding = about_first("tilted-original");
  finding.measured = Angle{1.74};
  CHECK(message(checked.evidence, finding) ==
        "The original lay askew on the scanner: it is turned clockwise by 1.7°.");
  finding.measured = Angle{-0.6};
  CHECK(message(checked.evidence, finding) ==
        "The original lay askew on the scanner: it is turned anticlockwise by 0.6°.");
}

TEST_CASE("of two copies the better one is named with its place and pixels") {
  Checked checked = two_frames();
  Evidence &evidence = checked.evidence;
  evidence.pictures[1].facts->size = {2400, 1600};
  evidence.copies = {{{0, 1, {}, 1, 1, 1}, BetterCopy::other}};
  Finding finding = about_first("near-copy");
  finding.with_picture = 1;
  CHECK(message(evidence, finding) ==
        "Shows the same as quay small.jpg (pages 2–3), which is the better copy: 2400 × "
        "1600 pixels against 1200 × 800 pixels here.");
  evidence.copies[0].better = BetterCopy::alike;
  CHECK(message(evidence, finding) ==
        "Shows the same as quay small.jpg (pages 2–3). Neither file is the better one.");
  evidence.frames.pop_back();
  CHECK(message(evidence, finding) ==
        "Shows the same as quay small.jpg (in no frame). Neither file is the better one.");
}

TEST_CASE("facts of where a file comes from are told only where they are sure") {
  CHECK(past_fact({Certainty::firm, JpegPastKind::was_jpeg, {60, 58, 62, true}, 0, 0}) ==
        "its pixels were those of a JPEG of quality 58 to 62");
  CHECK(past_fact({Certainty::hint, JpegPastKind::was_jpeg, {60, 58, 62, true}, 0, 0}).empty());
  CHECK(printed_fact({Certainty::firm, 0.4, 45, true, 5, 0}) ==
        "scanned from print: a line of dots every 2.5 pixels, turned by 45°");
  CHECK(printed_fact({Certainty::firm, 0.5, 45, false, 5, 0}) == "scanned from print: its dots show");
  CHECK(printed_fact({Certainty::hint, 0.4, 45, true, 3, 0}).empty());
  CHECK(bed_fact({Certainty::firm, true, 0.125, {}, -1.25}) ==
        "12.5 % of it is the scanner’s white lid, or the white edge of the print; the original is turned "
        "anticlockwise by 1.2°");
  CHECK(bed_fact({Certainty::firm, false, 0.1, {}, 0.2}) ==
        "10 % of it is the black of the scanner’s glass or lid");
  CHECK(bed_fact({Certainty::no, false, 0, {}, {}}).empty());
  CHECK(copy_fact({"b c.jpg", false, true, false}) == "shows the same as b c.jpg, which is the better copy");
  CHECK(copy_fact({"b c.jpg", false, false, true}) == "shows the same as b c.jpg, and is the better copy");
  CHECK(copy_fact({"b c.jpg", false, false, false}) ==
        "shows the same as b c.jpg; neither is the better copy");
  CHECK(copy_fact({"b c.jpg", true, false, false}) == "the same file as b c.jpg, to the byte");
}
