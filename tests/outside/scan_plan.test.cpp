// The scanning plan against worked examples of the trade and of archives: the density that an original needs,
// the pixels that come out of it, the bytes that they take.
#include "engine/plan/scan_plan.h"
#include "engine/press/read.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

PlannedPicture planned(OriginalKind kind, Size original, Size printed, Density wanted) {
  Book book;
  book.pictures.emplace_back();
  book.pictures[0].original = Original{kind, original, false};
  Frame frame;
  frame.picture = 0;
  frame.rect = {{}, {}, printed.width, printed.height};
  book.pages.emplace_back();
  book.pages[0].frames = {frame};
  PressSheet press = built_in_press_sheet();
  press.density[0].wanted = wanted;
  const std::optional<FileAtHand> none[1];
  return plan_scans(book, press, none).at(0);
}

/// The height that keeps the original's shape.
Size in_shape(Size original, Length width) {
  return {width, Length::nearest(static_cast<double>(width.ticks()) * (original.height / original.width))};
}

} // namespace

// Needed = 300 x printed / original (common practice), then the next usual setting.
TEST_CASE("what originals need to be printed at 300 ppi") {
  struct Case {
    const char *original;
    OriginalKind kind;
    Size size;
    Length printed;
    double needed;
    int setting;
  };
  for (const Case &c : std::vector<Case>{
           {"135 film", OriginalKind::slide, {36_mm, 24_mm}, 6_in, 1270.0, 1600},
           {"135 film", OriginalKind::slide, {36_mm, 24_mm}, 8.25_in, 1746.25, 2400},
           {"135 film", OriginalKind::negative, {36_mm, 24_mm}, 10_in, 2116.67, 2400},
           {"126 film", OriginalKind::slide, {28_mm, 28_mm}, 8_in, 2177.14, 2400},
           {"110 film", OriginalKind::negative, {17_mm, 13_mm}, 6_in, 2689.41, 3200},
           {"6 x 6 on 120 film", OriginalKind::negative, {56_mm, 56_mm}, 8_in, 1088.57, 1200},
           {"wallet print", OriginalKind::print, {2.5_in, 3.5_in}, 8_in, 960, 1200},
           {"carte de visite", OriginalKind::print, {2.25_in, 3.25_in}, 5_in, 666.67, 800},
           {"cabinet photograph", OriginalKind::print, {4.25_in, 6.5_in}, 8.5_in, 600, 600},
       }) {
    CAPTURE(c.original, c.needed);
    const PlannedPicture plan = planned(c.kind, c.size, in_shape(c.size, c.printed), Density::of_ppi(300));
    REQUIRE(plan.scan);
    CHECK(plan.frames.at(0).needed_ppi.value() == Approx(c.needed).margin(0.005));
    CHECK(plan.scan->setting == c.setting);
  }
}

TEST_CASE("pixels and bytes of scans") {
  struct Case {
    const char *source;
    OriginalKind kind;
    Size size;
    int setting;
    PixelSize pixels;
    std::uint64_t bytes;
  };
  for (const Case &c : std::vector<Case>{
           {"pixels x 3 bytes", OriginalKind::print, {6_in, 4_in}, 600, {3600, 2400}, 25'920'000},
           {"A4 at 300 ppi", OriginalKind::document, {210_mm, 297_mm}, 300, {2480, 3508}, 26'099'520},
           {"letter at 600 ppi", OriginalKind::document, {8.5_in, 11_in}, 600, {5100, 6600}, 100'980'000},
           // NARA, product AEF-P2: 4 x 5 in at 1600 ppi comes to 8000 px; 48-bit 293 MB, so 24-bit half of
           // it.
           {"NARA AEF-P2", OriginalKind::negative, {5_in, 4_in}, 1600, {8000, 6400}, 307'200'000 / 2},
           {"135 film at 4800 ppi", OriginalKind::slide, {36_mm, 24_mm}, 4800, {6803, 4535}, 92'554'815},
       }) {
    CAPTURE(c.source);
    const PlannedPicture plan = planned(c.kind, c.size, c.size, Density::of_ppi(c.setting));
    REQUIRE(plan.scan);
    CHECK(plan.scan->setting == c.setting);
    CHECK(plan.scan->pixels == c.pixels);
    CHECK(plan.scan->bytes == c.bytes);
  }
}
