// Outlines cut by outlines, matrices one after the other.
#include "engine/import/plane.h"

#include "tests/support/catch.h"

using namespace stoneproof::finished;

TEST_CASE("a map is applied after another") {
  const Matrix twice{2, 0, 0, 2, 0, 0}, moved{1, 0, 0, 1, 10, 20};
  const Spot first = (twice * moved).apply({1, 1}), then = (moved * twice).apply({1, 1});
  CHECK(first.x == 12);
  CHECK(first.y == 22);
  CHECK(then.x == 22);
  CHECK(then.y == 42);
}

TEST_CASE("what two outlines share does not depend on their order or on the way round") {
  const Outline square = outline_of({0, 0, 10, 10}, {});
  const Matrix diamond{0.70710678, 0.70710678, -0.70710678, 0.70710678, 5, -5};
  const Outline turned = outline_of({0, 0, 10, 10}, diamond);
  const Outline backwards(square.rbegin(), square.rend());
  const double shared = area_of(shared_part(square, turned));
  // By symmetry about x = 5: the turned square reaches from (5, -5) to (5, 9.142); the part below y = 0 is a
  // triangle of height 5, and the parts beyond x = 0 and x = 10 are triangles of height 2.071 each.
  CHECK(shared == Approx(100 - 25 - 2 * 2.0710678 * 2.0710678).margin(1e-5));
  CHECK(area_of(shared_part(turned, square)) == Approx(shared));
  CHECK(area_of(shared_part(turned, backwards)) == Approx(shared));
  CHECK(area_of(shared_part(backwards, turned)) == Approx(shared));
}

TEST_CASE("outlines apart share nothing, one in the other shares the inner one") {
  const Outline square = outline_of({0, 0, 10, 10}, {});
  CHECK(shared_part(square, outline_of({20, 0, 30, 10}, {})).empty());
  CHECK(area_of(shared_part(square, outline_of({2, 2, 4, 5}, {}))) == Approx(6));
  CHECK(shared_part(square, {}).empty());
  CHECK(area_of(shared_part(square, outline_of({10, 0, 20, 10}, {}))) == 0);
}
