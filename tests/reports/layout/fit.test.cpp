#include "reports/layout/clip.h"
#include "reports/layout/column.h"
#include "reports/layout/text_fit.h"

#include "tests/reports/layout/document_text.h"
#include "tests/support/catch.h"

#include <random>

using namespace stoneproof;
using namespace stoneproof::layout;
using namespace stoneproof::test;

namespace {

Length mm(double value) { return Length::of_mm(value); }
const Length nine = Length::of_pt(9);

std::string without_spaces(std::string text) {
  std::erase_if(text, [](char c) { return c == ' ' || c == '\n' || c == '\t'; });
  return text;
}

} // namespace

TEST_CASE("wrapped lines fit the width and lose nothing but spaces") {
  const std::string text = "Zofia Żółkiewska przed domem, lato 1931;  Η γιαγιά στον κήπο. "
                           "Donaudampfschifffahrtsgesellschaftskapitän "
                           "and\n\na second paragraph with efficient ligature-prone office words.";
  for (const double width : {8.0, 20.0, 45.0, 90.0, 400.0}) {
    CAPTURE(width);
    std::string joined;
    for (const std::string &line : wrap(type(), Face::text, nine, mm(width), text)) {
      CHECK(type().width(Face::text, nine, line) <= mm(width + 0.05));
      joined += line;
    }
    CHECK(without_spaces(joined) == without_spaces(text));
  }
}

TEST_CASE("line ends are kept, empty lines too") {
  CHECK(wrap(type(), Face::text, nine, mm(100), "one\n\ntwo") == std::vector<std::string>{"one", "", "two"});
  CHECK(wrap(type(), Face::text, nine, mm(100), "") == std::vector<std::string>{""});
}

TEST_CASE("a width that no character fits still ends") {
  CHECK(wrap(type(), Face::text, nine, mm(0.1), "abc").size() == 3);
  CHECK(wrap(type(), Face::text, nine, mm(0.1), "żó").size() == 2);
}

TEST_CASE("a shortened name keeps both ends") {
  const std::string name = "pictures/summer at the lake with everybody on the pier 1931.tif";
  const std::string cut = shortened(type(), Face::label, nine, mm(50), name);
  CHECK(type().width(Face::label, nine, cut) <= mm(50));
  CHECK(cut.find("…") != std::string::npos);
  CHECK(cut.substr(0, 8) == "pictures");
  CHECK(cut.substr(cut.size() - 4) == ".tif");
  CHECK(shortened(type(), Face::label, nine, mm(200), name) == name);
}

TEST_CASE("slots stand where they want while there is room") {
  const std::vector<Slot> slots{{mm(10), mm(5)}, {mm(40), mm(5)}};
  CHECK(place_slots(slots, mm(0), mm(100), mm(2)) == std::vector<Length>{mm(10), mm(40)});
}

TEST_CASE("slots never collide, never leave the room, and keep their order") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> wanted(-20, 130), height(4, 30);
  for (int round = 0; round < 2000; ++round) {
    std::vector<Slot> slots(1 + random() % 12);
    for (Slot &slot : slots) slot = {mm(wanted(random)), mm(height(random))};
    const auto tops = place_slots(slots, mm(0), mm(100), mm(2));
    REQUIRE(!tops.empty());
    REQUIRE(tops.size() <= slots.size());
    CHECK(tops.front() >= mm(0));
    for (std::size_t i = 1; i < tops.size(); ++i) CHECK(tops[i] >= tops[i - 1] + slots[i - 1].height + mm(2));
    CHECK(tops.back() + slots[tops.size() - 1].height <= mm(100));
    if (tops.size() < slots.size()) { // the next one really has no room
      Length used;
      for (std::size_t i = 0; i <= tops.size(); ++i) used += slots[i].height + mm(i < tops.size() ? 2 : 0);
      CHECK(used > mm(100));
    }
  }
}

TEST_CASE("a slot higher than the room is placed alone, at the top") {
  const std::vector<Slot> slots{{mm(50), mm(500)}, {mm(60), mm(5)}};
  CHECK(place_slots(slots, mm(10), mm(100), mm(2)) == std::vector<Length>{mm(10)});
}

TEST_CASE("a convex shape is cut to a rectangle") {
  const Rect room{mm(0), mm(0), mm(10), mm(10)};
  const std::vector<Point> inside{{mm(1), mm(1)}, {mm(9), mm(1)}, {mm(9), mm(9)}};
  CHECK(clipped(inside, room) == inside);
  CHECK(clipped({{mm(20), mm(1)}, {mm(29), mm(1)}, {mm(29), mm(9)}}, room).empty());
  // A square on its corner, as wide as the room is, round the room's corner: a triangle is left.
  const auto corner = clipped({{mm(0), mm(-5)}, {mm(5), mm(0)}, {mm(0), mm(5)}, {mm(-5), mm(0)}}, room);
  Length far_x, far_y;
  for (const Point &p : corner) {
    CHECK((p.x >= mm(0) && p.y >= mm(0)));
    far_x = std::max(far_x, p.x);
    far_y = std::max(far_y, p.y);
  }
  CHECK(far_x == mm(5));
  CHECK(far_y == mm(5));
}
