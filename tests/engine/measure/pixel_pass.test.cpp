// One pass over made files: what is shown of turned pictures, faults, tables asked for, small copies.
#include "engine/measure/pixel_pass.h"

#include "engine/picture/orientation.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <cmath>
#include <utility>

#include <tiff.h>

using namespace stoneproof;

namespace {

Facts facts_of(const std::filesystem::path &file) {
  auto facts = read_facts(file);
  if (!facts) FAIL(facts.fault().what);
  return facts.value();
}

PassResult measured(const std::filesystem::path &file, const PassOrder &order) {
  auto result = measure_pixels(file, facts_of(file), order);
  if (!result) FAIL(result.fault().what);
  return std::move(result).value();
}

PassOrder looks_at(std::vector<Look> looks) {
  PassOrder order;
  order.looks = std::move(looks);
  return order;
}

PassOrder look_at(const PixelRect &part) { return looks_at({{part, {}, {}}}); }

/// The picture as it is stored that is seen as `seen`, pixel by pixel.
made::Raster stored_as(const made::Raster &seen, int orientation) {
  const Orientation turn(orientation);
  const PixelSize stored = turn.stored({seen.width, seen.height});
  made::Raster r{
      static_cast<int>(stored.width), static_cast<int>(stored.height), seen.channels, seen.bits, {}};
  r.samples.resize(seen.samples.size());
  for (int y = 0; y < seen.height; ++y)
    for (int x = 0; x < seen.width; ++x) {
      const auto place = turn.stored_place(x, y, stored);
      for (int c = 0; c < seen.channels; ++c)
        r.at(static_cast<int>(place.x), static_cast<int>(place.y), c) = seen.at(x, y, c);
    }
  return r;
}

made::Raster flat(int width, int height, int channels, std::uint16_t level) {
  return {width, height, channels, 8,
          std::vector<std::uint16_t>(static_cast<std::size_t>(width * height * channels), level)};
}

void fill(made::Raster &r, int left, int top, int width, int height, std::uint16_t level) {
  for (int y = top; y < top + height; ++y)
    for (int x = left; x < left + width; ++x)
      for (int c = 0; c < r.channels; ++c) r.at(x, y, c) = level;
}

/// The tone of some whole pixels, counted one by one.
Tone counted(const made::Raster &r, int left, int top, int width, int height) {
  Histograms histograms;
  histograms.bits = r.bits;
  histograms.pixels = width * height;
  for (int c = 0; c < r.channels; ++c) {
    Histogram histogram{std::vector<std::uint64_t>(std::size_t{1} << r.bits)};
    for (int y = top; y < top + height; ++y)
      for (int x = left; x < left + width; ++x) ++histogram.counts[r.at(x, y, c)];
    histograms.channels.push_back(std::move(histogram));
  }
  return tone_of(histograms);
}

void check_same(const Tone &tone, const Tone &want) {
  REQUIRE(tone.channels.size() == want.channels.size());
  for (std::size_t c = 0; c < want.channels.size(); ++c) {
    CHECK(tone.channels[c].clipped_highlights == want.channels[c].clipped_highlights);
    CHECK(tone.channels[c].clipped_shadows == want.channels[c].clipped_shadows);
  }
  CHECK(tone.white == want.white);
  CHECK(tone.black == want.black);
  CHECK(tone.range == want.range);
}

/// The place in a TIFF of libtiff's at which its pixels end and its directory begins.
std::size_t directory_of(const made::Bytes &tiff) {
  return static_cast<std::size_t>(tiff[4] | tiff[5] << 8 | tiff[6] << 16 | tiff[7] << 24);
}

} // namespace

TEST_CASE("two parts of a picture are measured as they are seen, in all eight orientations") {
  const test::Folder folder;
  const made::Raster seen = made::busy(61, 43, 3);
  for (int orientation = 1; orientation <= 8; ++orientation) {
    CAPTURE(orientation);
    made::write_tiff(folder / "t", stored_as(seen, orientation), {.orientation = orientation});
    // The second lies at a corner that each orientation stores elsewhere, and begins and ends inside pixels.
    const PassResult result =
        measured(folder / "t", looks_at({{{0, 0, 61, 43}, {}, {}}, {{49.5, 0, 10.25, 8.75}, {}, {}}}));
    REQUIRE(result.looks.size() == 2);
    check_same(result.looks[0].tone, counted(seen, 0, 0, 61, 43));
    check_same(result.looks[1].tone, counted(seen, 49, 0, 11, 9));
    CHECK_FALSE(result.looks[0].ink);
    CHECK_FALSE(result.neutral);
  }
}

TEST_CASE("the darkest place is told as it is seen, in all eight orientations") {
  const test::Folder folder;
  // Sides that both 3 and 1 divide: the squares of 24 x 10 pixels stand at every third and at every one.
  made::Raster seen = flat(72, 60, 4, 10);
  fill(seen, 48, 0, 24, 10, 200);
  for (int orientation = 1; orientation <= 8; ++orientation) {
    CAPTURE(orientation);
    made::write_tiff(folder / "t", stored_as(seen, orientation),
                     {.photometric = PHOTOMETRIC_SEPARATED, .orientation = orientation});
    const PassResult result = measured(
        folder / "t",
        looks_at({{{0, 0, 72, 60}, 24.0, 10.0}, {{0, 20, 72, 40}, 24.0, 10.0}, {{0, 0, 9, 9}, 24.0, {}}}));
    REQUIRE(result.looks[0].ink);
    CHECK(result.looks[0].ink->most == Approx(800 / 255.0).epsilon(1e-12));
    CHECK(result.looks[0].ink_place == PixelRect{48, 0, 24, 10});
    REQUIRE(result.looks[1].ink);
    CHECK(result.looks[1].ink->most == Approx(40 / 255.0).epsilon(1e-12));
    CHECK_FALSE(result.looks[2].ink); // a square without a height asks for nothing
  }
}

TEST_CASE("bed and tilt are told as the picture is seen, in all eight orientations") {
  // A print of 220 x 150 in busy grays, turned clockwise by two degrees, on the black of the lid.
  constexpr int width = 320, height = 240;
  const made::Raster busy = made::busy(width, height, 1);
  made::Raster seen = flat(width, height, 1, 3);
  const double turn = 2 * std::acos(-1.0) / 180;
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      const double dx = x - 150, dy = y - 110;
      const double u = dx * std::cos(turn) + dy * std::sin(turn),
                   v = dy * std::cos(turn) - dx * std::sin(turn);
      if (std::abs(u) < 110 && std::abs(v) < 75)
        seen.at(x, y, 0) = static_cast<std::uint16_t>(120 + busy.at(x, y, 0) / 4);
    }
  const test::Folder folder;
  for (int orientation = 1; orientation <= 8; ++orientation) {
    CAPTURE(orientation);
    made::write_tiff(folder / "t", stored_as(seen, orientation),
                     {.photometric = PHOTOMETRIC_MINISBLACK, .orientation = orientation});
    const PassResult result = measured(folder / "t", look_at({0, 0, width, height}));
    REQUIRE(result.whole);
    const Bed &bed = result.whole->bed;
    CHECK(bed.certainty == Certainty::firm);
    CHECK_FALSE(bed.white);
    REQUIRE(bed.tilt);
    CHECK(*bed.tilt == Approx(2).margin(0.2));
    // 110 cos 2° + 75 sin 2° to both sides of 150; 75 cos 2° + 110 sin 2° above and below 110.
    CHECK(bed.original.x == Approx(37.4).margin(2.5));
    CHECK(bed.original.x + bed.original.width == Approx(262.6).margin(2.5));
    CHECK(bed.original.y == Approx(31.2).margin(2.5));
    CHECK(bed.original.y + bed.original.height == Approx(188.8).margin(2.5));
  }
}

TEST_CASE("the angle of a printed screen is told as the picture is seen, in all eight orientations") {
  made::Raster seen = flat(600, 560, 1, 0);
  const double turn = 20 * std::acos(-1.0) / 180, pitch = 2 * std::acos(-1.0) / 5;
  for (int y = 0; y < seen.height; ++y)
    for (int x = 0; x < seen.width; ++x) {
      const double u = x * std::cos(turn) + y * std::sin(turn), v = y * std::cos(turn) - x * std::sin(turn);
      seen.at(x, y, 0) = static_cast<std::uint16_t>(128 + 40 * std::cos(u * pitch) +
                                                    40 * std::cos(v * pitch) + (x * 7 + y * 13) % 11);
    }
  const test::Folder folder;
  for (int orientation = 1; orientation <= 8; ++orientation) {
    CAPTURE(orientation);
    made::write_tiff(folder / "t", stored_as(seen, orientation),
                     {.photometric = PHOTOMETRIC_MINISBLACK, .orientation = orientation});
    const PassResult result = measured(folder / "t", look_at({0, 0, 600, 560}));
    const PrintedScreen &printed = result.looks[0].detail.printed;
    CHECK(printed.certainty == Certainty::firm);
    CHECK(printed.ruling == Approx(0.2).epsilon(0.01));
    CHECK(printed.angle == Approx(20).margin(0.5));
  }
}

TEST_CASE("the small copy is the one that is read by itself") {
  const test::Folder folder;
  const auto check = [&](const PreviewOrder &order) {
    PassOrder pass = look_at(order.part);
    pass.copy = order;
    const PassResult result = measured(folder / "p", pass);
    const auto alone = read_small_copy(folder / "p", facts_of(folder / "p"), order);
    REQUIRE(alone);
    REQUIRE(result.copy);
    CHECK(result.copy->part == alone.value().part);
    CHECK(result.copy->width == alone.value().width);
    CHECK(result.copy->height == alone.value().height);
    CHECK(result.copy->jpeg == alone.value().jpeg);
  };
  for (int orientation = 1; orientation <= 8; ++orientation) {
    CAPTURE(orientation);
    const bool lies = orientation >= 5;
    const double width = lies ? 300 : 400, height = lies ? 400 : 300;
    made::write_jpeg(folder / "p", made::busy(400, 300, 3), {.exif = made::Exif{.orientation = orientation}});
    check({{0, 0, width, height}, 400, 400}); // every pixel: a JPEG is not decoded reduced
    check({{40.5, 20.25, width - 90, height - 60}, 400, 400});
    made::write_tiff(folder / "p", made::busy(400, 300, 3), {.orientation = orientation});
    check({{0, 0, width, height}, 40, 30});
    check({{41, 20, 200, 211}, 33, 35});
  }
  CHECK_FALSE(measured(folder / "p", look_at({0, 0, 10, 10})).copy);
}

TEST_CASE("a look is widened to whole pixels and cut to the picture") {
  const test::Folder folder;
  const made::Raster r = made::busy(40, 30, 1);
  made::write_png(folder / "p", r, {.colour_type = 0});
  struct Case {
    PixelRect part;
    int left, top, width, height;
  };
  for (const Case &c : {Case{{-5, -5, 100, 100}, 0, 0, 40, 30},
                        {{38.5, 29.2, 9, 9}, 38, 29, 2, 1},
                        {{3.25, 4.5, 0.5, 0.25}, 3, 4, 1, 1},
                        {{39, 29, 1, 1}, 39, 29, 1, 1},
                        {{7, 8, 1e-300, 1e-300}, 7, 8, 1, 1}}) {
    CAPTURE(c.part.x, c.part.y);
    check_same(measured(folder / "p", look_at(c.part)).looks[0].tone,
               counted(r, c.left, c.top, c.width, c.height));
  }
}

TEST_CASE("the least part that can be shown is one pixel of a turned picture too") {
  const test::Folder folder;
  const made::Raster seen = made::busy(40, 30, 1);
  for (int orientation = 1; orientation <= 8; ++orientation) {
    CAPTURE(orientation);
    made::write_tiff(folder / "t", stored_as(seen, orientation),
                     {.photometric = 1, .orientation = orientation});
    const Tone tone = measured(folder / "t", look_at({7, 8, 1e-16, 1e-16})).looks[0].tone;
    check_same(tone, counted(seen, 7, 8, 1, 1));
  }
}

TEST_CASE("a look that lies outside the picture is a fault") {
  const test::Folder folder;
  made::write_png(folder / "p", made::busy(40, 30, 3));
  const double nan = std::nan("");
  for (const PixelRect part :
       {PixelRect{40, 0, 5, 5}, PixelRect{-5, 0, 5, 5}, PixelRect{0, 30, 5, 5}, PixelRect{0, 0, 0, 5},
        PixelRect{0, 0, 5, -3}, PixelRect{nan, 0, 5, 5}, PixelRect{0, 0, 5, nan}}) {
    CAPTURE(part.x, part.y, part.width, part.height);
    const auto result = measure_pixels(folder / "p", facts_of(folder / "p"),
                                       looks_at({{{0, 0, 40, 30}, {}, {}}, {part, {}, {}}}));
    REQUIRE_FALSE(result);
    CHECK(result.fault() == Fault{"the part asked for lies outside the picture", (folder / "p").string(),
                                  "Move the crop onto the picture."});
  }
}

TEST_CASE("damage in the last rows is met, also where only the first are looked at") {
  const test::Folder folder;
  const PixelRect first{0, 0, 200, 20};
  PassOrder pass = look_at(first);
  pass.copy = PreviewOrder{first, 200, 20};
  const auto what_of = [&](const std::string &name, const Facts &facts) {
    CHECK(read_preview(folder / name, facts, *pass.copy)); // who stops early does not meet it
    const auto result = measure_pixels(folder / name, facts, pass);
    REQUIRE_FALSE(result);
    CHECK(result.fault().where == (folder / name).string());
    return result.fault().what;
  };
  made::write_jpeg(folder / "j", made::busy(200, 300, 3));
  const Facts jpeg = facts_of(folder / "j");
  CHECK(measure_pixels(folder / "j", jpeg, pass));
  std::filesystem::resize_file(folder / "j", std::filesystem::file_size(folder / "j") - 200);
  CHECK(what_of("j", jpeg) == "the JPEG is damaged (Premature end of JPEG file)");

  made::write_tiff(folder / "t", made::busy(200, 300, 3), {.compression = COMPRESSION_ADOBE_DEFLATE});
  const Facts tiff = facts_of(folder / "t");
  CHECK(measure_pixels(folder / "t", tiff, pass));
  made::Bytes bytes = made::read_bytes(folder / "t");
  const auto end = bytes.begin() + static_cast<std::ptrdiff_t>(directory_of(bytes));
  std::fill(end - 200, end - 100, std::uint8_t{0xff});
  made::write_bytes(folder / "t", bytes);
  CHECK(what_of("t", tiff).rfind("the TIFF is damaged", 0) == 0);
}

TEST_CASE("a table is asked for once at most, with the file's profile and the space of its pixels") {
  const test::Folder folder;
  struct Kind {
    const char *name;
    int photometric, channels, bits;
    std::optional<ProfileSpace> space; ///< none: no table is asked for
    bool profile;
  };
  const Kind kinds[] = {
      {"RGB", PHOTOMETRIC_RGB, 3, 8, ProfileSpace::rgb, true},
      {"gray", PHOTOMETRIC_MINISBLACK, 1, 8, ProfileSpace::gray, true},
      {"black and white", PHOTOMETRIC_MINISWHITE, 1, 1, ProfileSpace::gray, true},
      {"ink", PHOTOMETRIC_SEPARATED, 4, 8, std::nullopt, true},
      {"Lab, which becomes sRGB", PHOTOMETRIC_CIELAB, 3, 8, ProfileSpace::rgb, false},
  };
  for (const Kind &kind : kinds)
    for (const int icc_bytes : {0, 300}) {
      CAPTURE(kind.name, icc_bytes);
      made::write_tiff(folder / "t", made::busy(30, 20, kind.channels, kind.bits),
                       {.photometric = kind.photometric, .icc_bytes = icc_bytes});
      std::vector<std::pair<made::Bytes, ProfileSpace>> asked;
      PassOrder order = looks_at({{{0, 0, 30, 20}, 5.0, 5.0}, {{0, 0, 10, 10}, 5.0, 5.0}});
      order.press_table = [&](const made::Bytes &icc, ProfileSpace space) {
        asked.emplace_back(icc, space);
        return static_cast<const PressTable *>(nullptr);
      };
      const PassResult result = measured(folder / "t", order);
      CHECK(result.looks[0].ink.has_value() == !kind.space);
      if (!kind.space) {
        CHECK(asked.empty());
        continue;
      }
      REQUIRE(asked.size() == 1);
      CHECK(asked[0].second == *kind.space);
      CHECK(asked[0].first == made::Bytes(kind.profile ? static_cast<std::size_t>(icc_bytes) : 0, 7));
    }
}

TEST_CASE("a picture stored in colour that holds none is told, whatever part is looked at") {
  const test::Folder folder;
  made::Raster r = flat(60, 40, 3, 90);
  made::write_png(folder / "p", r);
  CHECK(measured(folder / "p", look_at({0, 0, 5, 5})).neutral);
  for (int y = 30; y < 40; ++y)
    for (int x = 0; x < 60; ++x) r.at(x, y, 0) = 200;
  made::write_png(folder / "p", r);
  CHECK_FALSE(measured(folder / "p", look_at({0, 0, 5, 5})).neutral);
}

TEST_CASE("a file that was replaced after its facts were read cannot be measured") {
  const test::Folder folder;
  made::write_jpeg(folder / "j", made::busy(64, 48, 3));
  const Facts facts = facts_of(folder / "j");
  for (const auto &[width, height] : {std::pair(40, 30), std::pair(80, 60)}) {
    made::write_png(folder / "j", made::busy(width, height, 3));
    const auto result = measure_pixels(folder / "j", facts, look_at({0, 0, 64, 48}));
    REQUIRE_FALSE(result);
    CHECK(result.fault().what == "the file was changed while it was being checked");
  }
}
