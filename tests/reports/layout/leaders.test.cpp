#include "reports/layout/leaders.h"

#include "reports/layout/canvas.h"
#include "reports/layout/column.h"
#include "reports/layout/leader_lanes.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <cmath>
#include <random>

using namespace stoneproof;
using namespace stoneproof::layout;

namespace {

Length mm(double value) { return Length::of_mm(value); }

/// A drawing with pictures, and the marked ones of them in the order of their numbers, from top to bottom.
struct DrawnPage {
  LeaderRoom room;
  std::vector<Rect> places;
};

class Pages {
public:
  explicit Pages(unsigned seed) : random_(seed) {}

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  std::size_t upto(std::size_t most) { return 1 + random_() % most; }

  /// Rows and columns with the same gap everywhere.
  DrawnPage grid() {
    DrawnPage page = empty();
    const std::size_t columns = upto(6), rows = upto(7);
    const double gap = between(1.6, 5), edge = between(2, 9);
    const double width = (page.room.drawing.width.mm() - 2 * edge + gap) / static_cast<double>(columns);
    const double height = (page.room.drawing.height.mm() - 2 * edge + gap) / static_cast<double>(rows);
    for (std::size_t row = 0; row < rows; ++row)
      for (std::size_t column = 0; column < columns; ++column)
        page.room.pictures.push_back({page.room.drawing.x + mm(edge + width * static_cast<double>(column)),
                                      page.room.drawing.y + mm(edge + height * static_cast<double>(row)),
                                      mm(width - gap), mm(height - gap)});
    return marked(std::move(page));
  }

  /// A page cut in two again and again, with the same gap everywhere.
  DrawnPage patchwork() {
    DrawnPage page = empty();
    const Length gap = mm(between(1.6, 4));
    std::vector<Rect> &pictures = page.room.pictures;
    pictures = {page.room.drawing.grown(mm(-5))};
    for (const std::size_t count = upto(24); pictures.size() < count;) {
      Rect &whole = pictures[random_() % pictures.size()];
      const double share = between(0.3, 0.7);
      Rect rest = whole;
      if (whole.width > whole.height) {
        if (whole.width < mm(14)) break;
        whole.width = (whole.width - gap) * share;
        rest.width = rest.width - whole.width - gap;
        rest.x = whole.right() + gap;
      } else {
        if (whole.height < mm(14)) break;
        whole.height = (whole.height - gap) * share;
        rest.height = rest.height - whole.height - gap;
        rest.y = whole.bottom() + gap;
      }
      pictures.push_back(rest);
    }
    return marked(std::move(page));
  }

  /// Pictures anywhere, over each other and over the edges.
  DrawnPage heap(std::size_t count) {
    DrawnPage page = empty();
    const Rect &drawing = page.room.drawing;
    for (std::size_t i = 0; i < count; ++i) {
      const Rect picture{drawing.x + mm(between(-5, drawing.width.mm() - 5)),
                         drawing.y + mm(between(-5, drawing.height.mm() - 5)), mm(between(8, 50)),
                         mm(between(8, 50))};
      page.room.pictures.push_back(*shared_part(picture, drawing));
    }
    return marked(std::move(page));
  }

private:
  DrawnPage empty() { return {{{mm(19), mm(30), mm(between(60, 155)), mm(between(60, 158))}, {}, {}}, {}}; }

  DrawnPage marked(DrawnPage page) {
    page.places = page.room.pictures;
    std::shuffle(page.places.begin(), page.places.end(), random_);
    page.places.resize(std::min(page.places.size(), upto(12)));
    std::sort(page.places.begin(), page.places.end(), [](const Rect &a, const Rect &b) {
      return std::pair(a.centre().y, a.centre().x) < std::pair(b.centre().y, b.centre().x);
    });
    return page;
  }

  std::mt19937 random_;
};

/// The ways up to the tags, which stand 12 mm apart.
std::vector<Way> led(const DrawnPage &page) {
  std::vector<Outline> outlines;
  std::vector<Slot> slots;
  for (const Rect &place : page.places) {
    outlines.push_back(corners_of(place));
    slots.push_back({place.centre().y, mm(9)});
  }
  const auto heights = [&] { return place_slots(slots, mm(30), mm(193), mm(3)); };
  REQUIRE(heights().size() == slots.size());
  std::vector<Way> ways = lead_out(outlines, heights(), page.room);
  for (std::size_t i = 0; i < ways.size(); ++i) slots[i].wanted = ways[i].back().y;
  lead_to_tags(ways, heights(), page.room.drawing.right() + mm(7.5));
  return ways;
}

struct Piece {
  Point from, to;
  Rect box() const {
    const Length left = std::min(from.x, to.x), top = std::min(from.y, to.y);
    return {left, top, std::max(from.x, to.x) - left, std::max(from.y, to.y) - top};
  }
};

std::vector<Piece> pieces_of(const Way &way) {
  std::vector<Piece> pieces;
  for (std::size_t i = 1; i < way.size(); ++i) pieces.push_back({way[i - 1], way[i]});
  return pieces;
}

/// How far apart two upright boxes, which may be lines, stand.
Length apart(const Rect &a, const Rect &b) {
  const Length across = std::max({Length{}, b.left() - a.right(), a.left() - b.right()});
  const Length down = std::max({Length{}, b.top() - a.bottom(), a.top() - b.bottom()});
  return Length::of_mm(std::hypot(across.mm(), down.mm()));
}

Length apart(const Way &a, const Way &b) {
  Length least = mm(1000);
  for (const Piece &one : pieces_of(a))
    for (const Piece &other : pieces_of(b)) least = std::min(least, apart(one.box(), other.box()));
  return least;
}

bool runs_through(const Way &way, const Rect &place) {
  const Rect inside = place.grown(mm(-0.02));
  for (const Piece &piece : pieces_of(way))
    if (apart(piece.box(), inside) == Length{}) return true;
  return false;
}

bool runs_through_any(const Way &way, const std::vector<Rect> &pictures) {
  return std::any_of(pictures.begin(), pictures.end(),
                     [&](const Rect &box) { return runs_through(way, box); });
}

/// What holds on every page, however it is laid out.
void check_well_led(const DrawnPage &page, const std::vector<Way> &ways) {
  REQUIRE(ways.size() == page.places.size());
  for (std::size_t i = 0; i < ways.size(); ++i) {
    CAPTURE(i);
    const Rect &place = page.places[i];
    const Way &way = ways[i];
    CHECK(apart({way[0].x, way[0].y, {}, {}}, place) <= mm(0.001));
    CHECK_FALSE(runs_through(way, place));
    for (const Piece &piece : pieces_of(way)) {
      CHECK((piece.from.x == piece.to.x || piece.from.y == piece.to.y));
      CHECK(piece.from.x <= piece.to.x);
      CHECK(piece.from.y >= page.room.drawing.top() - mm(5));
      CHECK(piece.from.x <= page.room.drawing.right() + mm(7.5));
    }
    CHECK(way.back().x == page.room.drawing.right() + mm(7.5));
    if (i > 0) CHECK(way.back().y > ways[i - 1].back().y);
  }
}

std::size_t crossings(const std::vector<Way> &ways) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < ways.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) count += apart(ways[i], ways[j]) == Length{};
  return count;
}

/// Whether any way at all leads from a place rightwards out of the drawing without entering a picture, on a
/// raster of half a millimetre. It begins 1 mm from the left corners or further.
bool can_get_out(const DrawnPage &page, const Rect &place) {
  const Rect field = page.room.drawing.grown(mm(4));
  const auto rows = static_cast<std::size_t>(field.height / mm(0.5));
  std::vector<char> reached(rows + 1);
  for (Length x = page.room.drawing.left(); x < page.room.drawing.right(); x += mm(0.5)) {
    const auto spot = [&](std::size_t row) {
      return Rect{x, field.top() + mm(0.5) * static_cast<std::int64_t>(row), {}, {}};
    };
    const auto each_row_near = [&](const Rect &box, auto use) {
      const double first = (box.top() - field.top()) / mm(0.5) - 2, last = first + box.height / mm(0.5) + 4;
      for (auto row = static_cast<std::size_t>(std::max(first, 0.0));
           row <= rows && static_cast<double>(row) <= last; ++row)
        use(row);
    };
    std::vector<char> free(rows + 1, true);
    for (const Rect &box : page.room.pictures)
      if (x > box.left() - mm(0.3) && x < box.right() + mm(0.3))
        each_row_near(box,
                      [&](std::size_t row) { free[row] = free[row] && apart(spot(row), box) >= mm(0.3); });
    for (std::size_t row = 0; row <= rows; ++row) reached[row] = reached[row] && free[row];
    each_row_near(place, [&](std::size_t row) {
      const Point rim{std::clamp(x, place.left(), place.right()),
                      std::clamp(spot(row).y, place.top(), place.bottom())};
      const bool begins = x > place.left() + mm(1) && apart(spot(row), place) < mm(0.9) &&
                          !runs_through_any({rim, {x, spot(row).y}}, page.room.pictures);
      if (free[row] && begins) reached[row] = true;
    });
    for (std::size_t row = 1; row <= rows; ++row)
      if (free[row] && reached[row - 1]) reached[row] = true;
    for (std::size_t row = rows; row-- > 0;)
      if (free[row] && reached[row + 1]) reached[row] = true;
  }
  return std::find(reached.begin(), reached.end(), true) != reached.end();
}

} // namespace

TEST_CASE("where pictures lie apart, leaders keep to the gaps and never cross") {
  Pages pages(11);
  for (int n = 0; n < 300; ++n) {
    CAPTURE(n);
    const DrawnPage page = n % 2 == 0 ? pages.grid() : pages.patchwork();
    const std::vector<Way> ways = led(page);
    check_well_led(page, ways);
    CHECK(crossings(ways) == 0);
    for (const Way &way : ways) CHECK_FALSE(runs_through_any(way, page.room.pictures));
  }
}

TEST_CASE("leaders beside each other keep their distance where there is room") {
  DrawnPage page{{{mm(19), mm(30), mm(150), mm(150)}, {}, {}}, {}};
  for (const double y : {40.0, 90.0, 140.0})
    for (const double x : {25.0, 75.0, 125.0}) page.room.pictures.push_back({mm(x), mm(y), mm(40), mm(40)});
  page.places = page.room.pictures;
  const std::vector<Way> ways = led(page);
  check_well_led(page, ways);
  for (std::size_t i = 0; i < ways.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) CHECK(apart(ways[i], ways[j]) >= leader_pitch);
}

TEST_CASE("in heaps of pictures leaders start at their rims and come out in order") {
  Pages pages(12);
  for (int n = 0; n < 100; ++n) {
    CAPTURE(n);
    const DrawnPage page = pages.heap(n % 4 == 0 ? 60 : pages.upto(20));
    check_well_led(page, led(page));
  }
}

TEST_CASE("a leader crosses other pictures only where there is no other way") {
  Pages pages(13);
  int enclosed = 0;
  for (int n = 0; n < 200; ++n) {
    CAPTURE(n);
    DrawnPage page = pages.heap(2 + pages.upto(20));
    page.places.resize(1);
    const Way way = led(page)[0];
    if (can_get_out(page, page.places[0]))
      CHECK_FALSE(runs_through_any(way, page.room.pictures));
    else
      ++enclosed;
  }
  CHECK(enclosed > 10); // both happen
  CHECK(enclosed < 190);
}

TEST_CASE("a picture on a picture that fills the page is led out straight") {
  DrawnPage page{{{mm(19), mm(30), mm(150), mm(150)}, {}, {}}, {}};
  const Rect small{mm(60), mm(80), mm(30), mm(20)};
  page.room.pictures = {page.room.drawing, small};
  page.places = {small};
  const Way way = led(page)[0];
  for (const Point &point : way) CHECK(point.y == small.centre().y);
}

TEST_CASE("a leader goes round a text where the way round is short") {
  DrawnPage page{{{mm(19), mm(30), mm(150), mm(150)}, {}, {}}, {}};
  page.places = page.room.pictures = {Rect{mm(30), mm(80), mm(40), mm(30)}};
  page.room.texts = {Rect{mm(80), mm(93), mm(60), mm(6)}};
  CHECK_FALSE(runs_through_any(led(page)[0], page.room.texts));
}

TEST_CASE("the leader of a turned place begins on its own side, not on the box round it") {
  const Outline diamond{{mm(60), mm(50)}, {mm(90), mm(80)}, {mm(60), mm(110)}, {mm(30), mm(80)}};
  const LeaderRoom room{{mm(19), mm(30), mm(150), mm(150)}, {Rect{mm(30), mm(50), mm(60), mm(60)}}, {}};
  for (const double wanted : {60.0, 80.0, 95.0}) {
    const std::vector<Length> height{mm(wanted)};
    const Point start = lead_out(std::vector<Outline>{diamond}, height, room)[0][0];
    CHECK(std::abs((start.x - mm(60)).mm()) + std::abs((start.y - mm(80)).mm()) == Approx(30).margin(0.001));
  }
}

TEST_CASE("pages with nothing to lead, and places without size") {
  const LeaderRoom room{{mm(19), mm(30), mm(50), mm(50)}, {}, {}};
  CHECK(lead_out({}, {}, room).empty());
  const std::vector<Length> height{mm(40)};
  for (const Point &spot : {Point{mm(19), mm(30)}, Point{mm(69), mm(80)}, Point{mm(70), mm(50)}}) {
    const Way way = lead_out(std::vector<Outline>{{spot}}, height, room)[0];
    CHECK(apart({way[0].x, way[0].y, {}, {}}, {spot.x, spot.y, {}, {}}) < mm(0.05));
    CHECK(way.back().x == room.drawing.right() + leader_exit);
  }
}

TEST_CASE("lanes stand where they want while there is room") {
  const std::vector<Lane> lanes{{mm(5), mm(0), mm(20)}, {mm(12), mm(0), mm(20)}};
  CHECK(spread_lanes(lanes, {{0, 1}}, mm(0.7)) == std::vector<Length>{mm(5), mm(12)});
}

TEST_CASE("lanes that want the same line are spread about it, in their order, as wide as their room is") {
  const auto spread = [](double low, double high) {
    const std::vector<Lane> lanes(3, Lane{mm(10), mm(low), mm(high)});
    return spread_lanes(lanes, {{0, 1}, {0, 2}, {1, 2}}, mm(0.7));
  };
  CHECK(spread(0, 20) == std::vector<Length>{mm(8.6), mm(10), mm(11.4)});
  CHECK(spread(8.95, 11.05) == std::vector<Length>{mm(9.3), mm(10), mm(10.7)});
  const auto narrow = spread(9.5, 10.5); // too narrow for 0.7 mm: nearer, but apart and in the room
  CHECK(narrow[0] >= mm(9.5));
  CHECK(narrow[2] <= mm(10.5));
  CHECK(narrow[1] - narrow[0] >= mm(0.2));
  const auto seam = spread(10, 10); // no room at all: out of it rather than on each other
  CHECK(seam == std::vector<Length>{mm(9.3), mm(10), mm(10.7)});
}
