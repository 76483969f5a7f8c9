// Streaks that run along the whole picture, among lines that do not.
#include "engine/measure/streak_meter.h"

#include "tests/engine/measure/made_scans.h"
#include "tests/support/catch.h"

using namespace stoneproof;

namespace {

made::Raster streaked(int from_row, int to_row, int levels) {
  made::Raster r = made::subject(3, false);
  for (int y = from_row; y < to_row; ++y) made::add_levels(r, 100, y, levels);
  return r;
}

} // namespace

TEST_CASE("a streak of three levels stands out in all of its segments, with its sign") {
  for (const int levels : {3, -3}) {
    const auto columns = judge_lines(made::glass_map(streaked(0, 300, levels)).columns);
    REQUIRE(columns.size() == 240);
    CHECK(columns[100].strength == Approx(levels).margin(0.7));
    CHECK(columns[100].agreeing > 0.9);
    CHECK(columns[100].deviation > 8);
    for (const std::size_t other : {40u, 96u, 104u, 200u}) CHECK(columns[other].deviation < 5);
  }
}

TEST_CASE("a line along half of the picture agrees in half of the segments") {
  const auto columns = judge_lines(made::glass_map(streaked(0, 150, 10)).columns);
  CHECK(columns[100].agreeing < 0.7);
}

TEST_CASE("rows are judged as columns are") {
  made::Raster r = made::subject(4, false);
  for (int x = 0; x < r.width; ++x) made::add_levels(r, x, 77, -4);
  const auto rows = judge_lines(made::glass_map(r).rows);
  REQUIRE(rows.size() == 300);
  CHECK(rows[77].strength == Approx(-4).margin(0.7));
  CHECK(rows[77].agreeing > 0.9);
}
