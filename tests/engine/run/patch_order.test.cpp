#include "engine/run/patch_order.h"

#include "tests/support/catch.h"
#include "tests/support/small_book.h"

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

constexpr PatchWish wish{Length::of_mm(25), Density::of_ppi(300)};

/// The patch of the only picture, of 1200 x 800 pixels, in these frames.
PatchOrder patch_in(std::vector<Frame> frames) {
  Book book = small_book();
  book.pictures = {photo("p", "p.jpg")};
  book.pages[0].frames = std::move(frames);
  return patch_orders(checked(std::move(book)).evidence, wish).at(0).value();
}

} // namespace

TEST_CASE("a patch is 25 mm of the page, in the middle of what the frame shows") {
  // 1200 pixels on 120 mm: 10 a millimetre, which is 254 ppi and below what paper shows.
  const PatchOrder patch = patch_in({frame("f", 0, 20, 20, 120, 80)});
  CHECK(patch.order.part.x == Approx(475));
  CHECK(patch.order.part.y == Approx(275));
  CHECK(patch.order.part.width == Approx(250));
  CHECK(patch.order.part.height == Approx(250));
  CHECK(patch.order.width == 250);
  CHECK(patch.order.height == 250);
}

TEST_CASE("pixels beyond what paper shows are averaged") {
  const PatchOrder patch = patch_in({frame("f", 0, 20, 20, 60, 40)}); // 508 ppi
  CHECK(patch.order.part.width == Approx(500));
  CHECK(patch.order.width == 296); // 25 mm at 300 ppi: 295.3
}

TEST_CASE("a named focus point is in the patch, which never passes the edge of what shows") {
  Frame focused = frame("f", 0, 20, 20, 120, 80);
  focused.fit = Fill{0.7, 0.4, true};
  CHECK(patch_in({focused}).order.part.x == Approx(1200 * 0.7 - 125));
  CHECK(patch_in({focused}).order.part.y == Approx(800 * 0.4 - 125));
  focused.fit = Fill{1, 1, true};
  CHECK(patch_in({focused}).order.part.x == Approx(1200 - 250));
  CHECK(patch_in({focused}).order.part.y == Approx(800 - 250));
  // A frame smaller than the patch gives all that it shows.
  const PatchOrder small = patch_in({frame("f", 0, 20, 20, 15, 10)});
  CHECK(small.order.part.width == Approx(1200));
  CHECK(small.order.part.height == Approx(800));
}

TEST_CASE("of several frames the one that prints the picture most coarsely is shown") {
  const PatchOrder patch = patch_in({frame("a", 0, 20, 20, 60, 40), frame("b", 0, 20, 80, 150, 100)});
  CHECK(patch.frame == 1);
}

TEST_CASE("the printed size of a patch follows from its frame's density along both axes") {
  Book book = small_book();
  book.pictures = {photo("p", "p.jpg"), photo("q", "q.jpg")};
  Frame stretched = frame("f", 0, 20, 20, 120, 40);
  stretched.fit = CropShare{};
  book.pages[0].frames = {stretched};
  const Evidence evidence = checked(std::move(book)).evidence;
  const auto orders = patch_orders(evidence, wish);
  CHECK_FALSE(orders[1]); // no frame shows it
  REQUIRE(orders[0]);
  const Patch patch{{orders[0]->order.part, 1, 1, {}}, orders[0]->frame};
  CHECK(printed_size(patch, evidence).width.mm() == Approx(25));
  CHECK(printed_size(patch, evidence).height.mm() == Approx(25));
  CHECK(patch.copy.part.height == Approx(2 * patch.copy.part.width));
  CHECK_FALSE(patch_orders(evidence, std::nullopt)[0]);
}
