// Pictures of a PDF set beside files on disk.
#include "engine/press/read.h"
#include "engine/run/run.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"
#include "tests/support/programs.h"
#include "tests/support/small_book.h"

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

/// Files that no two are alike, and copies of the first, each in a frame.
class Shelf {
public:
  Shelf() {
    for (const int seed : {1, 2, 3})
      make("-size 900x600 -seed " + std::to_string(seed) + " plasma:red-blue -blur 0x3",
           "file" + std::to_string(seed) + ".png");
    book_ = small_book();
    book_.source = folder_.path / "book.xml";
  }
  void make(const std::string &how, const std::string &name) {
    run_command("cd " + folder_.path.string() + " && convert " + how + " " + name);
  }
  void show(const std::string &name) {
    const std::size_t index = book_.pictures.size();
    book_.pictures.push_back(photo("p" + std::to_string(index), name));
    book_.pages[0].frames.push_back(frame("f" + std::to_string(index), index, 20, 20, 100, 50));
  }
  std::vector<std::optional<Master>> masters() const {
    RunOptions options;
    options.jobs = 2;
    for (const char *name : {"file1.png", "file2.png", "file3.png", "none.png", "text.txt"})
      options.masters.push_back(folder_.path / name);
    std::ofstream(folder_.path / "text.txt") << "no picture";
    return check_book(book_, built_in_press_sheet(), options).evidence.masters;
  }

private:
  Folder folder_;
  Book book_;
};

} // namespace

TEST_CASE("a reduced, cropped, turned or mirrored copy leads back to its file") {
  struct Copy {
    const char *how;
    double finer;
  };
  const Copy copies[] = {{"-resize 300x200", 3},
                         {"-crop 840x560+30+20 +repage -resize 50%", 2},
                         {"-crop 300x450+500+100 +repage -resize 50%", 2},
                         {"-crop 320x240+40+330 +repage -rotate 180 -modulate 95", 1},
                         {"-rotate 90 -resize 50%", 2},
                         {"-flop -modulate 105", 1}};
  for (const auto &[how, finer] : copies) {
    CAPTURE(how);
    Shelf shelf;
    shelf.make(std::string("file1.png ") + how + " -quality 85", "copy.jpg");
    shelf.show("copy.jpg");
    const auto masters = shelf.masters();
    REQUIRE(masters.size() == 1);
    REQUIRE(masters[0]);
    CHECK(std::filesystem::path(masters[0]->file).filename() == "file1.png");
    CHECK(masters[0]->finer == Approx(finer).epsilon(0.02));
    CHECK(masters[0]->sure);
  }
}

TEST_CASE("a picture of something else leads to no file, and each to its own") {
  Shelf shelf;
  shelf.make("-size 600x400 -seed 9 plasma:red-blue -blur 0x3", "other.png");
  shelf.make("file3.png -resize 50%", "third.png");
  shelf.show("other.png");
  shelf.show("third.png");
  const auto masters = shelf.masters();
  REQUIRE(masters.size() == 2);
  CHECK_FALSE(masters[0]);
  REQUIRE(masters[1]);
  CHECK(std::filesystem::path(masters[1]->file).filename() == "file3.png");
}

TEST_CASE("the part of the file that a crop shows is told in its pixels") {
  Shelf shelf;
  shelf.make("file2.png -crop 810x540+60+30 +repage -resize 405x270", "cut.png");
  shelf.show("cut.png");
  const auto masters = shelf.masters();
  REQUIRE(masters.at(0));
  const PixelRect &part = masters[0]->part;
  CHECK(part.x == Approx(60).margin(6));
  CHECK(part.y == Approx(30).margin(6));
  CHECK(part.width == Approx(810).margin(9));
  CHECK(part.height == Approx(540).margin(6));
}
