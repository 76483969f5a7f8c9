// What is said of a finished PDF, to the byte.
#include "reports/content/print_words.h"
#include "reports/content/picture_words.h"
#include "reports/content/press_words.h"
#include "reports/content/sentences.h"
#include "tests/support/catch.h"
#include "tests/support/small_book.h"

using namespace stoneproof;
using namespace stoneproof::content;
using namespace stoneproof::test;

namespace {

/// A page of 200 x 250 mm with boxes in order, in a file that lacks nothing.
Book finished_book() {
  Book book = small_book();
  book.print_file = PrintFile{"album.pdf", "1.6", false, "FOGRA39", {{"Gentium", true, 1}}};
  PrintPage print;
  const auto box = [&](double by) {
    return Rect{{}, {}, book.trim.width, book.trim.height}.grown(Length::of_mm(by));
  };
  print.boxes = {box(10), {}, box(3), box(0), {}};
  book.pages[0].print = print;
  return book;
}

std::string told(const Book &book, std::string_view rule, PressSheet press = built_in_press_sheet(),
                 std::optional<Master> master = {}) {
  Evidence evidence = checked(book).evidence;
  evidence.press = std::move(press);
  evidence.spaces = page_spaces(evidence.book, evidence.press);
  if (master) evidence.masters.assign(evidence.pictures.size(), master);
  std::string all;
  for (const Finding &finding : check_rules(evidence))
    if (finding.rule == rule) all += message(evidence, finding);
  return all;
}

} // namespace

TEST_CASE("boxes are told of by what is wrong with them") {
  Book book = finished_book();
  PageBoxes &boxes = book.pages[0].print->boxes;
  CHECK(told(book, "boxes-amiss").empty());
  const PageBoxes sound = boxes;
  boxes.art = boxes.trim;
  CHECK(told(book, "boxes-amiss") == "The page names a TrimBox and an ArtBox; only one of them may stand.");
  boxes = sound;
  boxes.bleed = boxes.trim->grown(Length::of_mm(-1));
  CHECK(told(book, "boxes-amiss") == "The TrimBox reaches beyond the BleedBox.");
  boxes = sound;
  boxes.bleed = boxes.media.grown(Length::of_mm(1));
  CHECK(told(book, "boxes-amiss") == "A page box reaches beyond the MediaBox, which is the whole sheet.");
  boxes = sound;
  boxes.crop = boxes.trim;
  CHECK(told(book, "boxes-amiss") == "The CropBox cuts off some of the page or of its bleed.");
  boxes = sound;
  boxes.trim.reset();
  CHECK(told(book, "trim-box-missing") ==
        "The page names no TrimBox; the edge of the sheet was taken for the trim.");
}

TEST_CASE("fonts, lines, paint and comments are told with their figures") {
  Book book = finished_book();
  book.print_file->fonts.push_back({"Helvetica", false, 3});
  CHECK(told(book, "font-not-embedded") ==
        "The font Helvetica is not in the file; page 3 is the first that shows it.");
  PrintPage &print = *book.pages[0].print;
  print.lines = {{Length::of_pt(0.1), {{}, {}, Length::of_mm(9), Length::of_mm(1)}}};
  CHECK(told(book, "hairline") == "A line is only 0.1 pt wide; the press sheet wants at least 0.25 pt.");
  print.lines[0].width = {};
  CHECK(told(book, "hairline") == "A line has no width of its own; the press sheet wants at least 0.25 pt.");
  print.notes = {{"Text", {{}, {}, Length::of_mm(9), Length::of_mm(9)}, false}};
  CHECK(told(book, "note-on-page") == "A comment or a form field lies on the page.");
  PressSheet strict = built_in_press_sheet();
  strict.colours = {ColourModel::cmyk};
  strict.finished_pdf.transparency = false;
  print.painted_in.rgb = print.transparent = true;
  CHECK(told(book, "paint-not-accepted", strict) ==
        "Text or shapes are painted in RGB, which the press sheet does not accept.");
  CHECK(told(book, "transparent-page", strict) ==
        "Something on it is see-through or blended; the press sheet accepts no transparency.");
  print.broken = true;
  CHECK(told(book, "broken-content") == "Some of what the page draws is damaged and could not be read.");
  print.broken = false;
  book.print_file->cut_short = true;
  CHECK(told(book, "broken-content") == "The PDF has more pages than are read; those after page " +
                                            std::to_string(book.pages.size()) + " were not checked.");
}

TEST_CASE("a file behind a picture is named with its folder, and what of it is shown") {
  Master master;
  master.file = "Oma Trude/scan0001.jpg";
  master.size = {4000, 3000};
  master.part = {400, 300, 2400, 2400};
  master.finer = 2;
  master.likeness = 0.99;
  master.sure = true;
  CHECK(master_fact(master) == "Oma Trude/scan0001.jpg, 4000 × 3000 pixels, of which it shows 60 × 80 %");
  master.part = {0, 0, 4000, 3000};
  CHECK(master_fact(master) == "Oma Trude/scan0001.jpg, 4000 × 3000 pixels, all of it");
  master.sure = false;
  master.likeness = 0.93;
  CHECK(master_fact(master) ==
        "perhaps Oma Trude/scan0001.jpg; the two are alike by 93 %, but may be two shots");
  Book book = finished_book();
  book.pictures = {photo("a", "page-001-1.jpg")};
  book.pages[0].frames = {frame("f", 0, 20, 20, 150, 100)};
  CHECK(told(book, "doubtful-master", built_in_press_sheet(), master) ==
        "It may have been made from Oma Trude/scan0001.jpg: the two are alike by 93 %.");
  Evidence evidence = checked(book).evidence;
  CHECK(picture_words(evidence)[0].facts[0].label == "File");
  evidence.masters = {master};
  CHECK(picture_words(evidence)[0].facts[0] == FactRow{"Made from", master_fact(master)});
}

TEST_CASE("how many files were found behind the pictures") {
  Book book = finished_book();
  book.pictures = {photo("a", "a.jpg"), photo("b", "b.jpg"), photo("c", "c.jpg")};
  Evidence evidence = checked(book).evidence;
  CHECK(masters_line(evidence) == "Files behind pictures: none found; the folder is empty.");
  evidence.files_searched = evidence.files_unread = 2;
  evidence.masters.resize(3);
  CHECK(masters_line(evidence) ==
        "Files behind pictures: none found; the folder holds no picture that can be read (2 other files).");
  evidence.files_searched = 40;
  evidence.files_unread = 0;
  CHECK(masters_line(evidence) == "Files behind pictures: 0 of 3 found.");
  Master master;
  master.file = "scan.jpg";
  master.sure = true;
  evidence.masters = {master, std::nullopt, master};
  evidence.files_unread = 1;
  CHECK(masters_line(evidence) ==
        "Files behind pictures: 2 of 3 found; 1 of the folder’s 40 files could not be "
        "read as a picture.");
  evidence.masters[2]->sure = false;
  evidence.files_unread = 3;
  CHECK(masters_line(evidence) ==
        "Files behind pictures: 2 of 3 found, 1 of them doubtful; 3 of the folder’s 40 "
        "files could not be read as pictures.");
  evidence.pixels_measured = false;
  CHECK(masters_line(evidence) == "Files behind pictures: not looked for, as --quick leaves the pixels out.");
}

TEST_CASE("a sheet that ends at the trim is told with its sides") {
  Book book = finished_book();
  PrintPage &print = *book.pages[0].print;
  print.boxes.media = *print.boxes.trim;
  print.boxes.bleed.reset();
  print.painted = Rect{{}, {}, Length::of_mm(50), Length::of_mm(20)};
  CHECK(told(book, "no-room-for-bleed") ==
        "Something is painted to the edge at the top, and the sheet of the PDF "
        "ends there; 3 mm of bleed are wanted.");
}

TEST_CASE("paint that ends at the trim is told apart from a sheet that does") {
  Book book = finished_book();
  book.pages[0].print->painted =
      Rect{Length::of_mm(149.6), Length::of_mm(-0.2), Length::of_mm(50), Length::of_mm(20)};
  CHECK(told(book, "no-room-for-bleed") ==
        "Something is painted to the edge at the top and outside, and ends there; 3 mm of bleed are wanted.");
}

TEST_CASE("empty pages of a PDF are asked about in one sentence") {
  Book book = finished_book();
  const auto add = [&](std::size_t count, bool painted) {
    for (std::size_t i = 0; i < count; ++i) {
      Page page;
      page.number = static_cast<int>(book.pages.size()) + 1;
      page.print = book.pages[0].print;
      if (!painted) page.print->painted.reset();
      book.pages.push_back(std::move(page));
    }
  };
  book.pages.resize(1);
  book.pages[0].print->painted = Rect{{}, {}, Length::of_mm(50), Length::of_mm(20)};
  add(1, false);
  CHECK(told(book, "empty-page") == "Page 2 is empty: is it meant to be?");
  add(2, true);
  add(1, false);
  CHECK(told(book, "empty-page") == "Pages 2 and 5 are empty: are they meant to be?");
  add(3, true);
  add(4, false);
  CHECK(told(book, "empty-page") == "Pages 2, 5 and 9 to 12 are empty: are they meant to be?");
  for (int i = 0; i < 10; ++i) add(1, true), add(1, false);
  CHECK(told(book, "empty-page") == "Pages 2, 5, 9 to 12, 14, 16, 18, 20, 22, 24, 26, 28, 30 and 1 more are "
                                    "empty: are they meant to be?");
}

TEST_CASE("the press sheet's rows about finished PDFs stand where there is one") {
  Book book = small_book();
  const std::size_t before = press_words(built_in_press_sheet(), book).size();
  const auto groups = press_words(built_in_press_sheet(), finished_book());
  REQUIRE(groups.size() == before + 1);
  CHECK(groups.back().rows.at(0).asks == "at least 0.25 pt");
  CHECK(groups.back().rows.at(1).asks == "accepted");
}

TEST_CASE("too few pixels are told with what the file behind the picture gives") {
  Book book = finished_book();
  book.pictures = {photo("mill", "mill.jpg")};
  book.pages[0].frames = {frame("f1", 0, 20, 20, 160, 110)};
  const std::string alone = told(book, "too-few-pixels");
  CAPTURE(alone);
  REQUIRE(alone.find("Prints at ") == 0);
  Master master;
  master.file = "mill.tif";
  master.sure = true;
  master.finer = 1;
  CHECK(told(book, "too-few-pixels", built_in_press_sheet(), master).find("mill.tif, gives no more.") !=
        std::string::npos);
  master.finer = 1.15;
  CHECK(told(book, "too-few-pixels", built_in_press_sheet(), master) ==
        "Even the file it was made from, mill.tif, gives 212 ppi and no more; a photo wants 300 ppi.");
  master.finer = 40;
  CHECK(told(book, "too-few-pixels", built_in_press_sheet(), master).empty());
}
