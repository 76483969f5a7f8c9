#include "engine/placement/usual_prints.h"

#include "engine/placement/fit.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

using namespace stoneproof;

namespace {

const UsualPrint &print_called(std::string_view name) {
  const auto *found = std::find_if(std::begin(usual_prints), std::end(usual_prints),
                                   [&](const UsualPrint &print) { return print.name == name; });
  REQUIRE(found != std::end(usual_prints));
  return *found;
}

} // namespace

TEST_CASE("each A size is the larger one halved across, to whole millimetres down") {
  for (const auto &[larger, smaller] :
       std::vector<std::pair<const char *, const char *>>{{"A3", "A4"}, {"A4", "A5"}, {"A5", "A6"}}) {
    const Size big = print_called(larger).size, small = print_called(smaller).size;
    CHECK(small.height == big.width);
    CHECK(small.width.mm() == std::floor(big.height.mm() / 2));
  }
}

TEST_CASE("papers stand upright in the list and are turned as the picture is") {
  for (const UsualPrint &print : usual_prints) CHECK(print.size.width < print.size.height);
  const Size a4 = print_called("A4").size;
  CHECK(turned_to_suit(a4, {3000, 2000}) == Size{Length::of_mm(297), Length::of_mm(210)});
  CHECK(turned_to_suit(a4, {2000, 3000}) == a4);
  CHECK(turned_to_suit(a4, {2000, 2000}) == a4);
}

TEST_CASE("the axis with fewer pixels an inch decides, as when a frame is filled") {
  struct Case {
    Size paper;
    PixelSize picture;
    double ppi;
  };
  const Size four_by_six = {Length::of_in(4), Length::of_in(6)};
  for (const Case &c : {Case{four_by_six, {1200, 1800}, 300}, Case{four_by_six, {1200, 1200}, 200},
                        Case{four_by_six, {400, 1800}, 100}}) {
    CHECK(filling(c.paper, c.picture).ppi() == Approx(c.ppi));
    const Rect frame = {{}, {}, c.paper.width, c.paper.height};
    CHECK(filling(c.paper, c.picture) == lay_picture(frame, c.picture, Fill{}).effective());
  }
}

TEST_CASE("a whole picture at a density") {
  CHECK(printed_at(Density::of_ppi(300), {3000, 1500}) == Size{Length::of_in(10), Length::of_in(5)});
}
