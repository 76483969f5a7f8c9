#include "reports/layout/outline.h"

#include "reports/layout/canvas.h"
#include "tests/support/catch.h"

#include <cmath>

using namespace stoneproof;
using namespace stoneproof::layout;

namespace {

Length mm(double value) { return Length::of_mm(value); }
const Rect room{mm(0), mm(0), mm(100), mm(100)};

} // namespace

TEST_CASE("marks of different grades on the same place are outlined side by side, each further out") {
  const Rect place{mm(20), mm(20), mm(30), mm(30)}, other{mm(60), mm(20), mm(20), mm(30)};
  const std::vector<Outline> places{corners_of(place), corners_of(other), corners_of(place),
                                    corners_of(place), corners_of(place), corners_of(place)};
  const auto shapes = side_by_side(
      places, {Grade::query, Grade::query, Grade::hold, Grade::query, Grade::note, Grade::hold}, room);
  CHECK(shapes[0] == corners_of(place));
  CHECK(shapes[1] == corners_of(other));
  CHECK(box_round(shapes[2]) == place.grown(mm(0.9)));
  CHECK(shapes[3] == shapes[0]); // the same line again
  CHECK(box_round(shapes[4]) == place.grown(mm(1.8)));
  CHECK(shapes[5] == shapes[2]);
}

TEST_CASE("marks on a place that fills the page are outlined further in") {
  const auto shapes = side_by_side({corners_of(room), corners_of(room)}, {Grade::hold, Grade::note}, room);
  CHECK(shapes[0] == corners_of(room));
  CHECK(box_round(shapes[1]) == room.grown(mm(-0.9)));
}

TEST_CASE("every side of a turned place is moved by the same") {
  const Outline square{{mm(50), mm(20)}, {mm(80), mm(50)}, {mm(50), mm(80)}, {mm(20), mm(50)}};
  const Outline moved = offset(square, mm(1));
  REQUIRE(moved.size() == 4);
  const double diagonal = 30 + std::sqrt(2.0); // a corner of a square moves by the root of two
  CHECK(moved[0].y.mm() == Approx(50 - diagonal));
  CHECK(moved[1].x.mm() == Approx(50 + diagonal));
  CHECK(offset(square, mm(-20)) == square); // too small for it
}

TEST_CASE("of a place off the page the nearest spot of its edge is left") {
  const Rect away{mm(150), mm(40), mm(30), mm(30)};
  CHECK(outline_within(corners_of(away), room) == Outline{{mm(100), mm(55)}});
  const Rect over{mm(90), mm(40), mm(30), mm(30)};
  CHECK(box_round(outline_within(corners_of(over), room)) == Rect{mm(90), mm(40), mm(10), mm(30)});
}
