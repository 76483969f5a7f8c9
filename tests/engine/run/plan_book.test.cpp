#include "engine/run/plan_book.h"

#include "engine/press/read.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"
#include "tests/support/small_book.h"

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

/// Prints of 150 x 100 mm, each on 101.6 x 67.73 mm: 1200 x 800 px are wanted.
Book book_in(const Folder &folder, const std::vector<std::string> &files) {
  Book book = small_book();
  book.source = folder / "book.xml";
  for (std::size_t i = 0; i < files.size(); ++i) {
    book.pictures.push_back(photo("p" + std::to_string(i), files[i]));
    book.pages[0].frames.push_back(frame("f" + std::to_string(i), i, 0, 0, 101.6, 67.7333));
  }
  return book;
}

} // namespace

TEST_CASE("a plan needs no file, uses those that are there, and passes by those that cannot be read") {
  const Folder folder;
  made::write_jpeg(folder / "Zdjęcia babci.jpg", made::busy(1200, 800, 3));
  made::write_jpeg(folder / "small.jpg", made::busy(600, 400, 3));
  write_file(folder / "words.jpg", "these are words");
  std::filesystem::create_directory(folder / "folder.jpg");
  const Book book = book_in(
      folder, {"gone.jpg", "Zdjęcia babci.jpg", "small.jpg", "words.jpg", "folder.jpg", "no/such/a.jpg"});
  const ScanPlan plan = plan_book(book, built_in_press_sheet());
  REQUIRE(plan.size() == 6);
  CHECK(plan[1].state == ScanState::at_hand);
  CHECK(plan[1].at_hand->size == PixelSize{1200, 800});
  for (const std::size_t i : {0u, 2u, 3u, 4u, 5u}) {
    CAPTURE(i);
    CHECK(plan[i].state == ScanState::to_scan);
    REQUIRE(plan[i].scan);
    // 300 x 101.6 / 150 = 203.2 ppi; 201.2 with 1 % off, so 300.
    CHECK(plan[i].scan->setting == 300);
    CHECK(plan[i].scan->pixels == PixelSize{1772, 1181});
    CHECK(plan[i].at_hand.has_value() == (i == 2));
  }
}

TEST_CASE("a plan sets what the proof of the same book asks for") {
  const Folder folder;
  made::write_jpeg(folder / "small.jpg", made::busy(310, 200, 3));
  Book book = book_in(folder, {"small.jpg"});
  for (const Fit &fit :
       {Fit{Fill{}}, Fit{CropShare{0.2, 0.1, 0.5, 0.6}}, Fit{CropPixels{{10, 20, 200, 90}}},
        Fit{PictureAt{{Length::of_mm(-20), Length::of_mm(-10), Length::of_mm(180), Length::of_mm(116)}}}}) {
    book.pages[0].frames[0].fit = fit;
    const ScanPlan plan = plan_book(book, built_in_press_sheet());
    const Checked proof = check_book(book, built_in_press_sheet());
    const auto found = std::find_if(proof.findings.begin(), proof.findings.end(),
                                    [](const Finding &f) { return f.rule == "too-few-pixels"; });
    REQUIRE(found != proof.findings.end());
    REQUIRE(found->rescue.rescan);
    REQUIRE(plan[0].scan);
    CHECK(plan[0].scan->setting == found->rescue.rescan->setting);
    CHECK(plan[0].frames.at(0).needed_ppi == found->rescue.rescan->needed_ppi);
  }
}
