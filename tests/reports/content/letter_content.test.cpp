// The sentences of letters, to the letter.
#include "reports/content/letter_content.h"

#include "tests/support/catch.h"
#include "tests/support/letter_book.h"

#include <algorithm>
#include <set>

using namespace stoneproof;
using namespace stoneproof::content;
using namespace stoneproof::test;

namespace {

LetterContent letter(const Checked &checked, std::size_t person = 0) {
  return letter_content(checked.evidence.book,
                        letter_asks(checked.evidence, checked.findings).people[person]);
}

} // namespace

TEST_CASE("a picture to scan again is told in four sentences") {
  Checked checked = letter_book({300});
  checked.evidence.book.pictures[0].file = "from Eleni/the wedding.jpg";
  checked.findings = {found(checked, 0, "enlarged-in-software", Grade::hold)};
  checked.findings[0].rescue.print_no_larger = Size{Length::of_mm(71.99), Length::of_mm(48)};
  const LetterContent content = letter(checked);
  CHECK(content.greeting == "Dear Ελένη Καλφάτη,");
  CHECK(content.about == "About the pictures for the book “The Żółkiewski house”");
  CHECK(content.intro.find("One of them needs your help") != std::string::npos);
  REQUIRE(content.pictures.size() == 1);
  const LetterPicture &picture = content.pictures[0];
  CHECK(picture.instruction == "Scan the paper print again at 600 dpi, and save it as TIFF.");
  CHECK(picture.why == "A program has made this file larger than the scan was, and that adds no detail.");
  CHECK(picture.how ==
        "Leave the size at 100 %, and choose nothing that is called interpolated or enhanced.");
  CHECK(picture.if_lost == "If you no longer have the original: send us the largest file you can find, or we "
                           "print the picture no larger than 7.1 × 4.8 cm.");
  CHECK(picture.caption == "On page 1, printed 30.0 × 20.0 cm.");
  CHECK(picture.file == "Your file: the wedding.jpg");
  CHECK(picture.badge == "Needed before printing");
  CHECK(picture.setting == "600 dpi");
  CHECK(content.explained.size() == 2);
}

TEST_CASE("a new scan is made for all that it is to mend, though one finding decides") {
  Checked checked = letter_book({300});
  checked.findings = {
      found(checked, 0, "too-few-pixels", Grade::hold), found(checked, 0, "printed-screen", Grade::query),
      found(checked, 0, "tilted-original", Grade::query), found(checked, 0, "clipped-shadows", Grade::query)};
  const LetterContent content = letter(checked);
  REQUIRE(content.pictures.size() == 1);
  const std::string &how = content.pictures[0].how;
  CHECK(how.find("descreening") != std::string::npos);
  CHECK(std::ranges::count(how, '.') == 2); // no more than two things at a time
}

TEST_CASE("the same in German, for who is written to in German") {
  Checked checked = letter_book({300});
  checked.evidence.book.pictures[0].contributor = 1;
  checked.findings = {found(checked, 0, "too-few-pixels", Grade::query)};
  const LetterContent content = letter(checked, 1);
  CHECK(content.language == "de");
  CHECK(content.greeting == "Guten Tag Żaneta Wróblak,");
  REQUIRE(content.pictures.size() == 1);
  CHECK(content.pictures[0].instruction ==
        "Scannen Sie den Papierabzug noch einmal mit 600 dpi und speichern Sie das Bild als TIFF.");
  CHECK(content.pictures[0].caption == "Auf Seite 1, gedruckt 30,0 × 20,0 cm.");
  CHECK(content.pictures[0].badge == "Würde das Bild verbessern");
}

TEST_CASE("every rule that asks something has its own words, and no value is left open") {
  for (const std::string_view rule :
       {"missing-picture", "unreadable-picture", "nearly-blank", "too-few-pixels", "lost-original-too-small",
        "enlarged-in-software", "saved-before", "coarse-jpeg", "printed-screen", "clipped-highlights",
        "clipped-shadows", "combed-tones", "soft-detail", "tilted-original", "screenshot", "several-pictures",
        "unaccepted-file"})
    for (const OriginalKind kind : {OriginalKind::print, OriginalKind::slide, OriginalKind::object}) {
      Checked checked = letter_book({300});
      checked.evidence.book.pictures[0].original->kind = kind;
      checked.findings = {found(checked, 0, rule, Grade::hold)};
      CAPTURE(rule);
      CHECK(find_rule(rule));
      const LetterContent content = letter(checked);
      REQUIRE(content.pictures.size() == 1);
      const LetterPicture &picture = content.pictures[0];
      for (const std::string &text :
           {picture.instruction, picture.why, picture.if_lost, picture.glance, picture.badge}) {
        CHECK_FALSE(text.empty());
        CHECK(text.find("  ") == std::string::npos); // a value that was left out
        CHECK(text.find('{') == std::string::npos);
      }
    }
}

TEST_CASE("where a picture stands: a page, one side of a spread, both, the cover, several places") {
  Checked checked = letter_book({60});
  auto &pages = checked.evidence.book.pages;
  checked.findings = {found(checked, 0, "too-few-pixels", Grade::hold)};
  const auto caption = [&] { return letter(checked).pictures[0].caption; };
  pages[1].frames = {pages[0].frames[0]};
  CHECK(caption() == "On page 1, printed 6.0 × 4.0 cm. Also in one other place.");
  pages[0].frames.clear();
  CHECK(caption() == "On page 2, printed 6.0 × 4.0 cm.");
  pages[1].frames[0].rect.x = Length::of_mm(200);
  CHECK(caption() == "On page 3, printed 6.0 × 4.0 cm.");
  pages[1].frames[0].rect.x = Length::of_mm(170);
  CHECK(caption() == "On pages 2 and 3, printed 6.0 × 4.0 cm.");
  pages[1].kind = PageKind::cover;
  CHECK(caption() == "On the cover, printed 6.0 × 4.0 cm.");
}

TEST_CASE("nobody's name, and a name with braces, are greeted") {
  Checked checked = letter_book({300});
  checked.findings = {found(checked, 0, "too-few-pixels", Grade::hold)};
  checked.evidence.book.contributors[0].name = "";
  CHECK(letter(checked).greeting == "Hello,");
  checked.evidence.book.contributors[0].name = "{name}";
  CHECK(letter(checked).greeting == "Dear {name},");
}

TEST_CASE("specks on the glass are told with the pictures to scan again, with a drawing or without") {
  const Checked checked = letter_book({60, 60, 60});
  ContributorAsks asks;
  asks.glasses = {DirtyGlass{{{20, 30, 1, 1}}, {0, 1, 2}}, DirtyGlass{{}, {1}}};
  CHECK_FALSE(asks.nothing());
  const LetterContent content = letter_content(checked.evidence.book, asks);
  REQUIRE(content.glasses.size() == 2);
  CHECK(content.glasses[0].sentence.find("The drawing shows") != std::string::npos);
  CHECK(content.glasses[0].sentence.ends_with("scan again: p0.tif, p1.tif and p2.tif."));
  CHECK(content.glasses[1].sentence.find("drawing") == std::string::npos);
  CHECK(content.glasses[1].sentence.ends_with("scan again: p1.tif."));
  CHECK(content.intro == "Thank you for your pictures. There is one thing we ask of you.");
}
