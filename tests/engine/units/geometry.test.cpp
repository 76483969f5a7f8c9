// Rectangles and what two of them share. Tests engine/units/geometry.h.
#include "engine/units/geometry.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

constexpr Rect rect(int x, int y, int width, int height) {
  return {1_mm * x, 1_mm * y, 1_mm * width, 1_mm * height};
}

} // namespace

static_assert(rect(10, 20, 30, 40).right() == 40_mm && rect(10, 20, 30, 40).bottom() == 60_mm);
static_assert(rect(10, 20, 30, 40).centre() == Point{25_mm, 40_mm});
static_assert(rect(10, 20, 30, 40).grown(3_mm) == rect(7, 17, 36, 46));
static_assert(rect(10, 20, 30, 40).grown(-(3_mm)) == rect(13, 23, 24, 34));

TEST_CASE("the part that two rectangles share") {
  struct Case {
    const char *name;
    Rect a, b;
    std::optional<Rect> shared;
  };
  const Case cases[] = {
      {"the same", rect(1, 2, 3, 4), rect(1, 2, 3, 4), rect(1, 2, 3, 4)},
      {"one inside the other", rect(0, 0, 10, 10), rect(2, 3, 4, 5), rect(2, 3, 4, 5)},
      {"a corner", rect(0, 0, 10, 10), rect(8, 7, 10, 10), rect(8, 7, 2, 3)},
      {"across", rect(0, 4, 10, 2), rect(4, 0, 2, 10), rect(4, 4, 2, 2)},
      {"negative", rect(-10, -10, 12, 12), rect(-3, -3, 10, 10), rect(-3, -3, 5, 5)},
      {"an edge only", rect(0, 0, 10, 10), rect(10, 0, 10, 10), std::nullopt},
      {"a corner point only", rect(0, 0, 10, 10), rect(10, 10, 5, 5), std::nullopt},
      {"apart", rect(0, 0, 10, 10), rect(20, 0, 5, 5), std::nullopt},
      {"no area", rect(0, 0, 10, 10), rect(3, 3, 0, 4), std::nullopt},
  };
  for (const Case &each : cases) {
    CAPTURE(each.name);
    CHECK(shared_part(each.a, each.b) == each.shared);
    CHECK(shared_part(each.b, each.a) == each.shared);
  }
}
