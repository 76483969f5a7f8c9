#include "engine/run/run.h"

#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"
#include "tests/support/small_book.h"

#include <algorithm>
#include <sys/stat.h>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

/// A book in a folder of its own, with pictures 0, 1, 2 ... each in a frame of 100 x 50 mm on page 1.
class Album {
public:
  Album() : book_(small_book()) { book_.source = folder_ / "book.xml"; }

  std::filesystem::path add(const std::string &file) {
    const std::size_t index = book_.pictures.size();
    book_.pictures.push_back(photo("p" + std::to_string(index), file));
    book_.pages[0].frames.push_back(frame("f" + std::to_string(index), index, 20, 20, 100, 50));
    return folder_ / file;
  }
  Checked check(const RunOptions &options) const {
    return check_book(book_, built_in_press_sheet(), options);
  }
  Book &book() { return book_; }

private:
  test::Folder folder_;
  Book book_;
};

RunOptions with_copies(int jobs = 2) {
  RunOptions options;
  options.jobs = jobs;
  options.copy_density = Density::of_ppi(72);
  return options;
}

std::size_t count_of(const Checked &checked, std::string_view rule) {
  return static_cast<std::size_t>(std::count_if(checked.findings.begin(), checked.findings.end(),
                                                [&](const Finding &f) { return f.rule == rule; }));
}

} // namespace

TEST_CASE("every broken file becomes a finding and the others are still checked") {
  Album album;
  made::write_jpeg(album.add("good name with spaces, Żółw.jpg"), made::busy(400, 200, 3));
  album.add("missing.jpg");
  made::write_bytes(album.add("empty.jpg"), {});
  std::filesystem::create_directory(album.add("folder.jpg"));
  REQUIRE(mkfifo(album.add("pipe.jpg").c_str(), 0600) == 0);
  made::write_bytes(album.add("text.jpg"), {'h', 'e', 'l', 'l', 'o', '\n'});
  const auto cut = album.add("cut.jpg");
  made::write_jpeg(cut, made::busy(400, 200, 3));
  std::filesystem::resize_file(cut, std::filesystem::file_size(cut) / 2);

  const Checked checked = album.check(with_copies());
  CHECK(count_of(checked, "missing-picture") == 1);
  CHECK(count_of(checked, "unreadable-picture") == 5);
  CHECK(checked.evidence.pictures[0].facts->size == PixelSize{400, 200});
  CHECK(checked.evidence.pictures[0].sha256.size() == 64);
  CHECK_FALSE(checked.evidence.pictures[0].fault);
  for (std::size_t i = 1; i < checked.evidence.pictures.size(); ++i) {
    CAPTURE(i);
    REQUIRE(checked.evidence.pictures[i].fault);
    CHECK_FALSE(checked.evidence.pictures[i].fault->what.empty());
    CHECK_FALSE(checked.evidence.pictures[i].fault->remedy.empty());
    CHECK_FALSE(checked.copies[i]);
  }
  CHECK(checked.evidence.pictures[6].facts); // the cut file's header is whole: its densities are still told
}

TEST_CASE("a small copy has the pixels that the proof can show, and no more than the picture has") {
  Album album;
  made::write_jpeg(album.add("large.jpg"), made::busy(1200, 600, 3));
  made::write_jpeg(album.add("small.jpg"), made::busy(80, 40, 3));
  const Checked checked = album.check(with_copies());
  // 100 x 50 mm at 72 ppi: 283.5 x 141.7 pixels, rounded up.
  CHECK(checked.copies[0]->width == 284);
  CHECK(checked.copies[0]->height == 142);
  CHECK(checked.copies[1]->width == 80);
  CHECK(checked.copies[1]->height == 40);
}

TEST_CASE("frames that share a picture share one small copy of all that they show") {
  Album album;
  made::write_jpeg(album.add("p.jpg"), made::busy(1000, 500, 3));
  Book &book = album.book();
  book.pages[0].frames[0].fit = CropShare{0, 0, 0.2, 0.2};
  Frame other = frame("g", 0, 20, 100, 50, 25);
  other.fit = CropShare{0.5, 0.5, 0.5, 0.5};
  book.pages[0].frames.push_back(other);
  const Checked checked = album.check(with_copies());
  const PixelRect all{0, 0, 1000, 500};
  CHECK(checked.copies[0]->part == all);
}

TEST_CASE("a tight crop beside the whole picture does not make the copy grow without end") {
  Album album;
  made::write_jpeg(album.add("p.jpg"), made::busy(4000, 3000, 3));
  Book &book = album.book();
  book.pages[0].frames[0].fit = CropShare{0, 0, 0.05, 0.05};
  book.pages[0].frames.push_back(frame("g", 0, 20, 100, 50, 25));
  const Checked checked = album.check(with_copies());
  REQUIRE(checked.copies[0]);
  const double pixels = static_cast<double>(checked.copies[0]->width) * checked.copies[0]->height;
  CHECK(pixels < 4.01e6);
  CHECK(pixels > 3.9e6); // as fine as the bound allows
}

TEST_CASE("without a density nothing is decoded, and pictures that no frame shows never are") {
  Album album;
  made::write_jpeg(album.add("p.jpg"), made::busy(100, 50, 3));
  CHECK_FALSE(album.check({}).copies[0]);
  album.book().pages[0].frames.clear();
  const Checked unused = album.check(with_copies());
  CHECK_FALSE(unused.copies[0]);
  CHECK(count_of(unused, "unused-picture") == 1);
}

TEST_CASE("two files with the same content count as one picture placed twice") {
  Album album;
  made::write_jpeg(album.add("a.jpg"), made::busy(2000, 1000, 3));
  std::filesystem::copy_file(album.book().path_of(album.book().pictures[0]), album.add("b.jpg"));
  CHECK(count_of(album.check({}), "picture-twice") == 1);
}

TEST_CASE("the number of threads changes nothing, and progress counts every picture once") {
  Album album;
  for (int i = 0; i < 12; ++i)
    made::write_jpeg(album.add(std::to_string(i) + ".jpg"), made::busy(60 + i, 40, 3));
  std::vector<std::size_t> told;
  RunOptions options = with_copies(3);
  options.progress = [&](std::size_t done, std::size_t total) {
    CHECK(total == 12);
    told.push_back(done);
  };
  const Checked three = album.check(options), one = album.check(with_copies(1));
  std::vector<std::size_t> expected(12);
  for (std::size_t i = 0; i < 12; ++i) expected[i] = i + 1;
  CHECK(told == expected);
  REQUIRE(three.copies.size() == one.copies.size());
  for (std::size_t i = 0; i < 12; ++i) {
    CHECK(three.copies[i]->jpeg == one.copies[i]->jpeg);
    CHECK(three.evidence.pictures[i].sha256 == one.evidence.pictures[i].sha256);
  }
}
