// Frames of copies become frames of the files behind them, and go on showing the same places of them.
#include "engine/run/with_masters.h"

#include "engine/picture/orientation.h"
#include "tests/support/catch.h"
#include "tests/support/small_book.h"

#include <cmath>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

constexpr PixelSize master_size{3000, 2000};
constexpr PixelRect part{600, 400, 1200, 1000};

/// A book whose only frame shows a copy of the part of a master, and where the copy's corners lie on the
/// page.
struct Case {
  Case(int master_orientation, int turned, int copy_orientation, Frame frame) {
    evidence.book = small_book();
    evidence.book.pictures = {photo("copy", "page-001-1.jpg")};
    for (Page &page : evidence.book.pages) page.frames.clear();
    evidence.book.pages[0].frames = {std::move(frame)};
    // The copy turned stands as the part does: half its pixels.
    const PixelSize as_part{600, 500};
    const PixelSize stored = Orientation(turned).stored(as_part);
    evidence.pictures.resize(1);
    evidence.pictures[0].facts.emplace();
    evidence.pictures[0].facts->orientation = copy_orientation;
    evidence.pictures[0].facts->size = Orientation(copy_orientation).seen(stored);
    Master master;
    master.file = "/shelf/Halina/quay.jpg";
    master.size = master_size;
    master.orientation = master_orientation;
    master.part = part;
    master.turned = turned;
    master.sure = true;
    evidence.masters = {master};
    evidence.frames =
        place_frames(evidence.book, std::vector<std::optional<PixelSize>>{evidence.pictures[0].facts->size});
  }

  /// Where a place of the master as it is stored lies on the page, before and after.
  Point before(double x, double y) const {
    const Master &master = *evidence.masters[0];
    const int copy = evidence.pictures[0].facts->orientation;
    const PixelRect at = {(x - part.x) / part.width, (y - part.y) / part.height, 0, 0};
    const PixelRect stored = Orientation(master.turned).stored_part(at, {1, 1});
    return on_page(evidence.frames[0], Orientation(copy).seen_part(stored, {1, 1}));
  }
  Point after(const BookOfMasters &made, double x, double y) const {
    const Orientation orientation(evidence.masters[0]->orientation);
    const PlacedFrame placed = place_frame(made.book.pages[0].frames[0], orientation.seen(master_size));
    return on_page(placed, orientation.seen_part({x / 3000, y / 2000, 0, 0}, {1, 1}));
  }
  static Point on_page(const PlacedFrame &placed, const PixelRect &share) {
    const Corners &c = placed.picture_corners;
    return {c[0].x + (c[1].x - c[0].x) * share.x + (c[3].x - c[0].x) * share.y,
            c[0].y + (c[1].y - c[0].y) * share.x + (c[3].y - c[0].y) * share.y};
  }

  Evidence evidence;
};

bool near(Point one, Point other) {
  return std::abs(one.x.mm() - other.x.mm()) < 0.01 && std::abs(one.y.mm() - other.y.mm()) < 0.01;
}

} // namespace

TEST_CASE("every place of the file lies where the copy had it, however either is turned or mirrored") {
  for (int own = 1; own <= 8; ++own)
    for (int turned = 1; turned <= 8; ++turned)
      for (const int copy : {1, 6})
        for (const Mirror mirror : {Mirror::none, Mirror::horizontal, Mirror::vertical})
          for (const double degrees : {0.0, 90.0, -7.0}) {
            CAPTURE(own, turned, copy, degrees, word_of(mirror_words, mirror));
            Frame shown = frame("f1", 0, 20, 30, 80, 60);
            shown.mirror = mirror;
            shown.turn = {degrees};
            shown.fit = CropShare{0.1, 0.2, 0.7, 0.5};
            const Case made(own, turned, copy, shown);
            const BookOfMasters book = with_masters(made.evidence, "/shelf", "/desk");
            REQUIRE(book.found == 1);
            REQUIRE(book.book.pages[0].frames.size() == 1);
            const auto size = Orientation(own).seen(master_size);
            const PlacedFrame placed = place_frame(book.book.pages[0].frames[0], size);
            for (const auto &[x, y] : {std::pair{600.0, 400.0}, {1800.0, 400.0}, {900.0, 1400.0}})
              CHECK(near(made.before(x, y), made.after(book, x, y)));
            CHECK(std::abs((placed.box.width - made.evidence.frames[0].box.width).mm()) < 0.01);
            CHECK(std::abs((placed.box.x - made.evidence.frames[0].box.x).mm()) < 0.01);
          }
}

TEST_CASE("files are named from the description on, once each, and folders are contributors") {
  Case one(1, 1, 1, frame("f1", 0, 20, 30, 80, 60));
  one.evidence.book.pages[0].frames.push_back(frame("f2", 0, 20, 100, 80, 60));
  one.evidence.frames = place_frames(
      one.evidence.book, std::vector<std::optional<PixelSize>>{one.evidence.pictures[0].facts->size});
  const BookOfMasters made = with_masters(one.evidence, "/shelf", "/desk");
  REQUIRE(made.book.pictures.size() == 1);
  CHECK(made.book.pictures[0].file == "../shelf/Halina/quay.jpg");
  REQUIRE(made.book.pictures[0].contributor);
  CHECK(made.book.contributors.at(*made.book.pictures[0].contributor).name == "Halina");
  CHECK(made.book.pages[0].frames[1].picture == 0);
  CHECK(made.pictures == 1);
}

TEST_CASE("a copy that shows more than its file stays in all its frames, under one id") {
  Case one(1, 1, 1, frame("f1", 0, 20, 30, 80, 60));
  Frame middle = frame("f2", 0, 20, 100, 80, 60);
  middle.fit = CropShare{0.4, 0.4, 0.2, 0.2};
  one.evidence.book.pages[0].frames.push_back(middle);
  one.evidence.masters[0]->part = {-300, -200, 3600, 2400}; // the copy has a border
  one.evidence.frames = place_frames(
      one.evidence.book, std::vector<std::optional<PixelSize>>{one.evidence.pictures[0].facts->size});
  const BookOfMasters made = with_masters(one.evidence, "/shelf", "/desk");
  CHECK(made.found == 0);
  REQUIRE(made.book.pictures.size() == 1);
  CHECK(made.book.pictures[0].file == "page-001-1.jpg");
  for (std::size_t i = 0; i < 2; ++i)
    CHECK(made.book.pages[0].frames[i].rect == one.evidence.book.pages[0].frames[i].rect);
}

TEST_CASE("a picture whose file is not sure, or that has none, stays as it is") {
  Case one(1, 1, 1, frame("f1", 0, 20, 30, 80, 60));
  one.evidence.masters[0]->sure = false;
  const BookOfMasters made = with_masters(one.evidence, "/shelf", "/desk");
  CHECK(made.found == 0);
  CHECK(made.book.pictures.at(0).file == "page-001-1.jpg");
  CHECK(made.book.pages[0].frames[0].rect == one.evidence.book.pages[0].frames[0].rect);
  one.evidence.masters[0].reset();
  CHECK(with_masters(one.evidence, "/shelf", "/desk").found == 0);
}
