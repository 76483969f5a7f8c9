#include "reports/content/plan_content.h"

#include "engine/press/read.h"
#include "reports/content/figures.h"
#include "tests/support/catch.h"
#include "tests/support/plan_book.h"

using namespace stoneproof;
using namespace stoneproof::content;
using namespace stoneproof::test;

namespace {

PlanContent content_of_plan(const Book &book, const Files &files = {}) {
  return plan_content(book, built_in_press_sheet(), plan_of(book, files));
}

const PlanRow &only_row(const PlanContent &content) {
  REQUIRE(content.people.size() == 1);
  REQUIRE(content.people[0].piles.size() == 1);
  REQUIRE(content.people[0].piles[0].rows.size() == 1);
  return content.people[0].piles[0].rows[0];
}

Book one_original(OriginalKind kind, double width, double height, double frame_width, double frame_height) {
  Book book = small_book();
  book.pictures = {original("p", kind, width, height)};
  book.pages[0].frames = {frame("f", 0, 0, 0, frame_width, frame_height)};
  return book;
}

} // namespace

TEST_CASE("sizes of files are rounded up, in units that people know") {
  CHECK(file_size(1) == "0.1 MB");
  CHECK(file_size(100'000) == "0.1 MB");
  CHECK(file_size(100'001) == "0.2 MB");
  CHECK(file_size(9'900'000) == "9.9 MB");
  CHECK(file_size(9'900'001) == "10 MB");
  CHECK(file_size(10'000'001) == "11 MB");
  CHECK(file_size(999'000'000) == "999 MB");
  CHECK(file_size(999'000'001) == "1 GB");
  CHECK(file_size(1'000'000'001) == "1.1 GB");
  CHECK(file_size(6'700'000'000) == "6.7 GB");
}

TEST_CASE("piles go by person, device and rising setting") {
  const PlanContent content = content_of_plan(plan_book_of_all());
  std::string piles;
  for (const PersonPlan &person : content.people) {
    piles += person.name + "\n";
    for (const PlanPile &pile : person.piles) {
      piles += "  " + pile.device + " " + pile.setting + ", " + pile.amount + ":";
      for (const PlanRow &row : pile.rows) piles += " " + row.name;
      piles += "\n";
    }
  }
  CHECK(piles == "Ελένη Καλφάτη\n"
                 "  Flatbed scanner 300 ppi, 2 originals, 11 MB: mill letter\n"
                 "  Flatbed scanner 600 ppi, 1 original, 26 MB: wedding\n"
                 "  Flatbed scanner 3200 ppi, 1 original, 31 MB: locket\n"
                 "  Film scanner 1600 ppi, 1 original, 11 MB: slide\n"
                 "  Camera , 1 original, 0.5 MB: watch\n"
                 "Żaneta Wróblak-Śliwińska\n"
                 "  Film scanner 4800 ppi, 1 original, 93 MB: negative\n"
                 "No owner named\n"
                 "  To be measured first , 1 original: unknown\n");
}

TEST_CASE("the front tells totals, people and what must be decided") {
  const PlanContent content = content_of_plan(plan_book_of_all());
  CHECK(content.verdict == "7 originals to scan or photograph: about 171 MB of files.");
  CHECK(content.counts ==
        "4 on a flatbed scanner, 2 of film, 1 with a camera. 2 cannot be reckoned yet. 1 is lost and "
        "lacks a file that is good enough.");
  CHECK(content.film ==
        "2 images of film are to be scanned, 2 of them 35 mm or smaller. The scanner must truly resolve "
        "up to 4800 ppi and take images up to 36 × 24 mm. Sizes are those of the image, without its "
        "mount.");
  CHECK(content.unused == "Shown in no frame, so not planned: spare.tif.");
  CHECK(content.press ==
        "Reckoned by the press sheet “Common practice” (built in). The printer’s own specification "
        "has the last word.");
  std::string table;
  for (const PersonLine &line : content.table)
    table += line.name + "|" + line.flatbed + "|" + line.film + "|" + line.camera + "|" + line.open + "|" +
             line.ready + "|" + line.bytes + "\n";
  CHECK(table == "Ελένη Καλφάτη|4|1|1|–|–|78 MB\n"
                 "Żaneta Wróblak-Śliwińska|–|1|–|1|–|93 MB\n"
                 "No owner named|–|–|–|2|–|–\n");
  std::string troubles;
  for (const PlanTrouble &trouble : content.troubles)
    troubles += trouble.name + "|" + trouble.owner + "|" + trouble.where + "\n  " + trouble.what + "\n  " +
                trouble.remedy + "\n";
  CHECK(troubles ==
        "locket|Ελένη Καλφάτη|Page 1, frame locket\n"
        "  A print of 25 × 25 mm would need 3000 ppi; a usual flatbed scanner is good for 2400 ppi.\n"
        "  Have it done by a scanning service, or print it no larger than 203 × 203 mm (now 254 × 254 mm).\n"
        "negative|Żaneta Wróblak-Śliwińska|Pages 2–3, frame negative\n"
        "  A negative of 36 × 24 mm would need 7620 ppi; usual scanners end at 4800 ppi.\n"
        "  Print it no larger than 576 × 384 mm (now 914 × 610 mm), or choose another picture.\n"
        "lost|Żaneta Wróblak-Śliwińska|Page 1, frame lost\n"
        "  The original is lost, and there is no file.\n"
        "  Ask whether anybody has a file or another print; else choose another picture.\n"
        "unknown||Page 1, frame unknown\n"
        "  The book does not tell how large the original is.\n"
        "  Measure it and put its size into the description. The part shown must come out with at least 1200 "
        "× 800 px.\n"
        "cropped||Page 1, frame cropped\n"
        "  The crop is told in pixels of a file that is not there.\n"
        "  Tell the crop in per cent, or put the file in its place.\n");
}

TEST_CASE("a row says what it is, where it is printed and what comes out") {
  Book book = one_original(OriginalKind::print, 152.4, 101.6, 76.2, 50.8);
  book.pages[1].frames = {frame("g", 0, 0, 0, 304.8, 203.2)};
  const PlanRow row = only_row(content_of_plan(book));
  CHECK(row.name == "p");
  CHECK(row.file == "p.tif");
  CHECK(row.original == "Print, 152 × 102 mm");
  CHECK(row.uses == std::vector<std::string>{"Pages 2–3: 305 × 203 mm", "Page 1: 76 × 51 mm"});
  CHECK(row.pixels == "3600 × 2400 px");
  CHECK(row.bytes == "26 MB");
  CHECK(row.remark.empty());
}

TEST_CASE("of many frames some are named, the one that decides first") {
  Book book = one_original(OriginalKind::print, 150, 100, 15, 10);
  for (int i = 2; i <= 7; ++i)
    book.pages[0].frames.push_back(frame("f" + std::to_string(i), 0, 0, 0, 15 * i, 10 * i));
  CHECK(only_row(content_of_plan(book)).uses ==
        std::vector<std::string>{"Page 1: 105 × 70 mm", "Page 1: 15 × 10 mm", "Page 1: 30 × 20 mm",
                                 "Page 1: 45 × 30 mm", "and 3 more"});
}

TEST_CASE("remarks tell what is particular of an original") {
  struct Case {
    OriginalKind kind;
    double width, height, frame_width, frame_height;
    std::string remark;
  };
  for (const Case &c : std::vector<Case>{
           {OriginalKind::document, 300, 220, 150, 110,
            "Larger than the glass of a usual flatbed: a larger scanner, or a scanning service."},
           {OriginalKind::negative, 118, 56, 118, 56,
            "Wider than 35 mm film: the scanner must take roll film."},
           {OriginalKind::negative, 84, 113, 84, 113,
            "Sheet film or a plate: a flatbed with a light in its lid as large as this, or a scanning "
            "service."},
           {OriginalKind::slide, 36, 24, 36, 24, ""},
           {OriginalKind::object, 1400, 1400, 140, 140, ""},
           {OriginalKind::object, 25, 30, 50, 60, "If it lies flat, the scanner does it at 600 ppi."},
           {OriginalKind::print, 25.4, 25.4, 254, 254,
            "More than a usual flatbed resolves: a scanning service."},
           {OriginalKind::slide, 36, 24, 914.4, 609.6,
            "Needs 7620 ppi, more than any usual scanner gives: the book must print it smaller."},
       })
    CHECK(only_row(content_of_plan(one_original(c.kind, c.width, c.height, c.frame_width, c.frame_height)))
              .remark == c.remark);

  Book drawing = one_original(OriginalKind::document, 100, 80, 100, 80);
  drawing.pictures[0].use = Use::line_art;
  CHECK(only_row(content_of_plan(drawing)).remark == "Drawn in black and white: gray is enough.");
  CHECK(only_row(content_of_plan(one_original(OriginalKind::print, 150, 100, 150, 100), {{0, {{600, 400}}}}))
            .remark == "A file is there, but its 600 × 400 px are too few.");
}

TEST_CASE("a pile says what its scanner must do") {
  const auto how = [](OriginalKind kind, double width, double frame_width) {
    const PlanContent content = content_of_plan(one_original(kind, width, width, frame_width, frame_width));
    return content.people.at(0).piles.at(0).how;
  };
  CHECK(how(OriginalKind::print, 100, 200).empty());
  CHECK(
      how(OriginalKind::print, 100, 240) ==
      "Photographic prints seldom hold more detail than 600 ppi shows, the highest grade of FADGI (2016) for "
      "them: if there still is a negative, scan that.");
  CHECK(how(OriginalKind::document, 100, 240).empty());
  CHECK(how(OriginalKind::slide, 24, 192) ==
        "A film scanner, or a flatbed with a light in its lid and a film holder.");
  CHECK(how(OriginalKind::slide, 24, 250) ==
        "A film scanner that truly resolves 3200 ppi, or a scanning service; a flatbed does not.");
  CHECK(how(OriginalKind::slide, 24, 300) == "Only a scanner that truly resolves so much, or a service. "
                                             "Above 4000 ppi, the highest grade of FADGI (2016) "
                                             "for film up to 4 × 5 in, expect more grain than detail.");
}

TEST_CASE("what is there already is not scanned again") {
  Book book = plan_book_of_all();
  for (Frame &frame : book.pages[0].frames) frame.fit = Fill{};
  Files files;
  for (std::size_t i = 0; i < book.pictures.size(); ++i) files[i] = {{11000, 11000}};
  const PlanContent content = content_of_plan(book, files);
  CHECK(content.verdict == "Nothing is left to scan.");
  CHECK(content.people.empty());
  CHECK(content.troubles.empty());
  CHECK(content.film.empty());
  REQUIRE(content.table.size() == 3);
  CHECK(content.table[0].ready == "6");

  const PlanContent some = content_of_plan(book, {{0, {{9000, 9000}}}});
  CHECK(some.people.at(0).nothing_to_do ==
        "Nothing to do for 1 picture, whose file is there with pixels enough: mill.tif.");
}

TEST_CASE("a book without pictures has a plan") {
  const PlanContent content = content_of_plan(small_book());
  CHECK(content.verdict == "Nothing is left to scan.");
  CHECK(content.table.empty());
}

TEST_CASE("the advice sends fragile originals to a conservator, and names its sources") {
  std::string all;
  for (const Advice &advice : scanning_advice()) all += advice.text + "\n";
  CHECK(all.find("qualified conservator") != std::string::npos);
  CHECK(all.find("36\u00a0CFR\u00a01236.48") != std::string::npos);
  CHECK(all.find("printer’s own specification has the last word") != std::string::npos);
}
