// What is kept of one picture, whatever its layout and size.
#include "engine/measure/glass_meter.h"

#include "tests/engine/measure/made_scans.h"
#include "tests/support/catch.h"

using namespace stoneproof;

namespace {

struct Mark {
  std::int64_t x, y;
  GlassMark mark;
};

std::vector<Mark> marks_of(const GlassMap &map) {
  std::vector<Mark> marks;
  std::int64_t at = 0;
  for (const GlassMark &mark : map.marks) {
    at += mark.skip;
    if (mark.strength > 0) marks.push_back({at % map.width, at / map.width, mark});
  }
  return marks;
}

Mark strongest(const GlassMap &map) {
  const auto marks = marks_of(map);
  REQUIRE(!marks.empty());
  return *std::max_element(marks.begin(), marks.end(),
                           [](const Mark &a, const Mark &b) { return a.mark.strength < b.mark.strength; });
}

/// The same picture in so many channels.
made::Raster widened(const made::Raster &r, int channels, int bits, int factor) {
  made::Raster wide{r.width, r.height, channels, bits, {}};
  for (const std::uint16_t sample : r.samples)
    wide.samples.insert(wide.samples.end(), static_cast<std::size_t>(channels),
                        static_cast<std::uint16_t>(sample * factor));
  return wide;
}

} // namespace

TEST_CASE("pictures are reduced by whole factors to at most three million pixels") {
  CHECK(glass_factor({2000, 1500}) == 1);
  CHECK(glass_factor({2001, 1500}) == 2);
  CHECK(glass_factor({4000, 3001}) == 2); // the odd row is left out
  CHECK(glass_factor({6000, 4000}) == 3);
  CHECK(glass_factor({70000, 10}) == 3); // a side that marks cannot number
}

TEST_CASE("a speck is the strongest mark, at its place and with its contrast") {
  for (const int levels : {40, -40}) {
    made::Raster r = made::subject(1, false);
    made::add_speck(r, 150, 131, 2, levels);
    const GlassMap map = made::glass_map(r);
    CHECK(map.stored == PixelSize{240, 300});
    CHECK(map.factor == 1);
    const Mark mark = strongest(map);
    CHECK(std::abs(mark.x - 150) <= 1);
    CHECK(std::abs(mark.y - 131) <= 1);
    CHECK(std::abs(mark.mark.contrast - levels) < 10);
  }
}

TEST_CASE("no more than a twentieth of the pixels is kept, and nothing of the margin") {
  for (const bool textured : {false, true}) {
    const auto marks = marks_of(made::glass_map(made::subject(2, textured)));
    CHECK(marks.size() >
          (textured ? 240 * 300 / 60 : 50)); // of a quiet picture only what stands out of its noise
    CHECK(marks.size() <= 240 * 300 / 20);
    for (const Mark &mark : marks) {
      REQUIRE((mark.x >= 6 && mark.x < 234));
      REQUIRE((mark.y >= 6 && mark.y < 294));
    }
  }
}

TEST_CASE("RGB, 16 bits and inverted gray give the marks of gray") {
  made::Raster gray = made::subject(5, false);
  made::add_speck(gray, 60, 60, 2, 50);
  const GlassMap map = made::glass_map(gray);
  const auto same = [&](const GlassMap &other) {
    REQUIRE(other.marks.size() == map.marks.size());
    for (std::size_t i = 0; i < map.marks.size(); ++i) {
      REQUIRE(other.marks[i].skip == map.marks[i].skip);
      REQUIRE(other.marks[i].strength == map.marks[i].strength);
    }
  };
  same(made::glass_map(widened(gray, 3, 8, 1), ColourModel::rgb));
  same(made::glass_map(widened(gray, 1, 16, 257)));
}

TEST_CASE("a reduced picture keeps the speck at its reduced place") {
  made::Raster r = made::subject(6, false, 2004, 1502);
  made::add_speck(r, 1200, 800, 5, 60);
  const GlassMap map = made::glass_map(r);
  CHECK(map.factor == 2);
  CHECK(map.width == 1002);
  CHECK(map.height == 751);
  const Mark mark = strongest(map);
  CHECK(std::abs(mark.x - 600) <= 2);
  CHECK(std::abs(mark.y - 400) <= 2);
}

TEST_CASE("a picture that is too small gives an empty map, as does one without rows") {
  CHECK(made::glass_map(made::subject(1, false, 63, 200)).width == 0);
  const made::Raster r = made::subject(1, false);
  const RowLayout layout = made::layout_of(r, ColourModel::gray);
  GlassMeter meter(layout);
  CHECK(meter.take().marks.empty());
}

TEST_CASE("a flat picture has nothing that stands out") {
  made::Raster r{100, 90, 1, 8, std::vector<std::uint16_t>(9000, 200)};
  const GlassMap map = made::glass_map(r);
  CHECK(map.width == 100);
  CHECK(marks_of(map).empty());
}
