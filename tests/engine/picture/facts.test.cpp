// Facts of made JPEG, TIFF and PNG files.
#include "engine/picture/facts.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <tiff.h>

using namespace stoneproof;

namespace {

Facts facts_of(const std::filesystem::path &file) {
  auto facts = read_facts(file);
  if (!facts) FAIL(facts.fault().what);
  return facts.value();
}

void check_ppi(const Facts &facts, double x, double y) {
  REQUIRE(facts.stored_x.has_value() == (x > 0));
  REQUIRE(facts.stored_y.has_value() == (y > 0));
  if (x > 0) CHECK(facts.stored_x->ppi() == Approx(x).epsilon(1e-6));
  if (y > 0) CHECK(facts.stored_y->ppi() == Approx(y).epsilon(1e-6));
}

} // namespace

TEST_CASE("JPEG facts: colour, compression, channels") {
  const test::Folder folder;
  struct Row {
    int channels;
    made::JpegKind kind;
    ColourModel colour;
    std::string compression;
  };
  const Row rows[] = {
      {1, {}, ColourModel::gray, "JPEG baseline"},
      {3, {}, ColourModel::rgb, "JPEG baseline"},
      {3, {.progressive = true}, ColourModel::rgb, "JPEG progressive"},
      {3, {.arithmetic = true}, ColourModel::rgb, "JPEG arithmetic"},
      {3, {.progressive = true, .arithmetic = true}, ColourModel::rgb, "JPEG arithmetic progressive"},
      {4, {}, ColourModel::cmyk, "JPEG baseline"},
      {4, {.adobe = false}, ColourModel::cmyk, "JPEG baseline"},
      {4, {.ycck = true}, ColourModel::cmyk, "JPEG baseline"},
  };
  for (const Row &row : rows) {
    made::write_jpeg(folder / "p", made::busy(37, 21, row.channels), row.kind);
    const Facts facts = facts_of(folder / "p");
    CHECK(facts.format == Format::jpeg);
    CHECK(facts.bytes == std::filesystem::file_size(folder / "p"));
    CHECK(facts.size == PixelSize{37, 21});
    CHECK(facts.channels == row.channels);
    CHECK(facts.bits == 8);
    CHECK(facts.colour == row.colour);
    CHECK(facts.compression == row.compression);
    CHECK(facts.tag == ColourTag::none);
    CHECK_FALSE(facts.alpha);
  }
}

TEST_CASE("JPEG density: a JFIF unit wins, then Exif, else none") {
  const test::Folder folder;
  struct Row {
    made::JpegKind kind;
    double x, y;
  };
  // 118 and 120 pixels a centimetre: 299.72 and 304.8 ppi by 1 in = 2.54 cm.
  const Row rows[] = {
      {{.unit = 1, .x = 300, .y = 150}, 300, 150},
      {{.unit = 2, .x = 118, .y = 120}, 299.72, 304.8},
      {{.unit = 0, .x = 300, .y = 300}, 0, 0},
      {{.unit = 1, .x = 0, .y = 0}, 0, 0},
      {{.unit = 1, .x = 72, .y = 72, .exif = made::Exif{.x = 600, .y = 600, .unit = 2}}, 72, 72},
      {{.unit = 0, .exif = made::Exif{.x = 600, .y = 400, .unit = 2}}, 600, 400},
      {{.jfif = false, .exif = made::Exif{.x = 240, .y = 240, .unit = 2, .big_endian = true}}, 240, 240},
      {{.jfif = false, .exif = made::Exif{.x = 118.11, .y = 118.11, .unit = 3}}, 299.9994, 299.9994},
      {{.jfif = false, .exif = made::Exif{.x = 350, .y = 350}}, 350, 350},        // no unit: inch
      {{.jfif = false, .exif = made::Exif{.x = 350, .y = 350, .unit = 9}}, 0, 0}, // a unit that means nothing
      {{.jfif = false, .exif = made::Exif{.orientation = 1}}, 0, 0},              // nothing is invented
      {{.jfif = false}, 0, 0},
      // On its side: the axes change places with the picture.
      {{.unit = 1, .x = 300, .y = 150, .exif = made::Exif{.orientation = 6}}, 150, 300},
  };
  for (const Row &row : rows) {
    made::write_jpeg(folder / "p", made::busy(16, 8, 3), row.kind);
    check_ppi(facts_of(folder / "p"), row.x, row.y);
  }
}

TEST_CASE("orientation 1 to 8 gives the seen size; what is out of range counts as 1") {
  const test::Folder folder;
  for (int orientation = 0; orientation <= 10; ++orientation) {
    CAPTURE(orientation);
    const bool valid = orientation >= 1 && orientation <= 8;
    const PixelSize seen = valid && orientation >= 5 ? PixelSize{2, 3} : PixelSize{3, 2};
    for (const bool big_endian : {false, true}) {
      made::write_jpeg(folder / "p", made::busy(3, 2, 3),
                       {.exif = made::Exif{.orientation = orientation, .big_endian = big_endian}});
      CHECK(facts_of(folder / "p").size == seen);
      CHECK(facts_of(folder / "p").orientation == (valid ? orientation : 1));
    }
    if (orientation > 8) continue; // libtiff does not write it
    made::write_tiff(folder / "t", made::busy(3, 2, 3), {.orientation = orientation});
    CHECK(facts_of(folder / "t").size == seen);
    CHECK(facts_of(folder / "t").orientation == (valid ? orientation : 1));
  }
}

TEST_CASE("an ICC profile is found in each format, also in several JPEG segments") {
  const test::Folder folder;
  made::write_jpeg(folder / "j", made::busy(8, 8, 3), {.icc_bytes = 150'000});
  CHECK(facts_of(folder / "j").tag == ColourTag::profile);
  made::write_tiff(folder / "t", made::busy(8, 8, 3), {.icc_bytes = 500});
  CHECK(facts_of(folder / "t").tag == ColourTag::profile);
  made::write_tiff(folder / "t", made::busy(8, 8, 3));
  CHECK(facts_of(folder / "t").tag == ColourTag::none);
}

TEST_CASE("TIFF facts: bits, channels, colour, alpha, compression, kind") {
  const test::Folder folder;
  struct Row {
    int channels, bits;
    made::TiffKind kind;
    ColourModel colour;
    std::string compression;
    bool alpha = false;
  };
  std::vector<std::array<std::uint16_t, 3>> palette(256, {1000, 2000, 3000});
  const std::vector<Row> rows = {
      {1, 1, {.photometric = 0, .compression = COMPRESSION_CCITTFAX4}, ColourModel::bilevel, "CCITT G4"},
      {1, 1, {.photometric = 1, .compression = COMPRESSION_CCITTFAX3}, ColourModel::bilevel, "CCITT G3"},
      {1, 4, {.photometric = 1}, ColourModel::gray, "none"},
      {1, 8, {.photometric = 0, .compression = COMPRESSION_PACKBITS}, ColourModel::gray, "PackBits"},
      {1,
       16,
       {.photometric = 1, .compression = COMPRESSION_LZW, .big_endian = true},
       ColourModel::gray,
       "LZW"},
      {3, 8, {.compression = COMPRESSION_ADOBE_DEFLATE, .tiled = true}, ColourModel::rgb, "Deflate"},
      {3, 16, {.compression = COMPRESSION_LZW, .planar = true, .big = true}, ColourModel::rgb, "LZW"},
      {4, 8, {.extra = {EXTRASAMPLE_UNASSALPHA}}, ColourModel::rgb, "none", true},
      {4, 8, {.extra = {EXTRASAMPLE_UNSPECIFIED}}, ColourModel::rgb, "none", false},
      {3,
       8,
       {.photometric = PHOTOMETRIC_YCBCR, .compression = COMPRESSION_JPEG, .rows_per_strip = 16},
       ColourModel::rgb,
       "JPEG"},
      {4, 8, {.photometric = PHOTOMETRIC_SEPARATED}, ColourModel::cmyk, "none"},
      {3, 8, {.photometric = PHOTOMETRIC_CIELAB}, ColourModel::lab, "none"},
      {1, 8, {.photometric = PHOTOMETRIC_PALETTE, .palette = palette}, ColourModel::indexed, "none"},
  };
  for (const Row &row : rows) {
    CAPTURE(row.compression, row.bits, row.channels);
    made::write_tiff(folder / "t", made::busy(40, 30, row.channels, row.bits), row.kind);
    const Facts facts = facts_of(folder / "t");
    CHECK(facts.format == Format::tiff);
    CHECK(facts.size == PixelSize{40, 30});
    CHECK(facts.bits == row.bits);
    CHECK(facts.channels == row.channels);
    CHECK(facts.colour == row.colour);
    CHECK(facts.compression == row.compression);
    CHECK(facts.alpha == row.alpha);
    CHECK(facts.tiled == row.kind.tiled);
    CHECK(facts.big_tiff == row.kind.big);
    CHECK(facts.pages == 1);
  }
}

TEST_CASE("TIFF density by its unit; a missing unit is the inch, none is no density") {
  const test::Folder folder;
  struct Row {
    made::TiffKind kind;
    double x, y;
  };
  const Row rows[] = {
      {{.x = 300, .y = 600, .unit = RESUNIT_INCH}, 300, 600},
      {{.x = 118.11, .y = 118.11, .unit = RESUNIT_CENTIMETER},
       299.9994,
       299.9994},                       // arithmetic: 118.11 x 2.54
      {{.x = 400, .y = 400}, 400, 400}, // TIFF 6.0, tag 296: default 2
      {{.x = 1, .y = 1, .unit = RESUNIT_NONE}, 0, 0},
      {{.unit = RESUNIT_INCH}, 0, 0},
      {{.orientation = 8, .x = 300, .y = 600, .unit = RESUNIT_INCH}, 600, 300},
  };
  for (const Row &row : rows) {
    made::write_tiff(folder / "t", made::busy(8, 4, 1), [&] {
      made::TiffKind kind = row.kind;
      kind.photometric = 1;
      return kind;
    }());
    check_ppi(facts_of(folder / "t"), row.x, row.y);
  }
}

TEST_CASE("pages of a TIFF are counted, also where their chain loops") {
  const test::Folder folder;
  for (const bool big : {false, true}) {
    made::write_tiff(folder / "t", made::busy(8, 4, 3), {.big = big, .pages = 5});
    CHECK(facts_of(folder / "t").pages == 5);
    made::write_tiff(folder / "t", made::busy(8, 4, 3), {.big = big, .big_endian = true, .pages = 3});
    CHECK(facts_of(folder / "t").pages == 3);
  }
  // One directory whose next directory is itself.
  made::write_bytes(folder / "t", made::bare_tiff(9, 7, 8));
  CHECK(facts_of(folder / "t").pages == 1);
  CHECK(facts_of(folder / "t").size == PixelSize{9, 7});
}

TEST_CASE("PNG facts: colour types, depths, interlacing") {
  const test::Folder folder;
  struct Row {
    int channels, bits;
    made::PngKind kind;
    ColourModel colour;
    bool alpha = false;
  };
  const std::vector<std::array<std::uint8_t, 3>> palette(16, {9, 8, 7});
  const std::vector<Row> rows = {
      {1, 1, {.colour_type = 0}, ColourModel::bilevel},
      {1, 2, {.colour_type = 0}, ColourModel::gray},
      {1, 16, {.colour_type = 0, .interlaced = true}, ColourModel::gray},
      {1, 8, {.colour_type = 0, .see_through = 5}, ColourModel::gray, true},
      {3, 8, {.colour_type = 2}, ColourModel::rgb},
      {3, 16, {.colour_type = 2}, ColourModel::rgb},
      {1, 4, {.colour_type = 3, .palette = palette}, ColourModel::indexed},
      {1, 4, {.colour_type = 3, .palette = palette, .palette_alpha = {0}}, ColourModel::indexed, true},
      {2, 8, {.colour_type = 4}, ColourModel::gray, true},
      {4, 16, {.colour_type = 6}, ColourModel::rgb, true},
  };
  for (const Row &row : rows) {
    CAPTURE(row.kind.colour_type, row.bits);
    made::write_png(folder / "p", made::busy(13, 11, row.channels, row.bits), row.kind);
    const Facts facts = facts_of(folder / "p");
    CHECK(facts.format == Format::png);
    CHECK(facts.size == PixelSize{13, 11});
    CHECK(facts.bits == row.bits);
    CHECK(facts.channels == row.channels);
    CHECK(facts.colour == row.colour);
    CHECK(facts.alpha == row.alpha);
    CHECK(facts.interlaced == row.kind.interlaced);
    CHECK(facts.compression == "Deflate");
    check_ppi(facts, 0, 0);
  }
}

TEST_CASE("PNG density: pixels a metre as ppi; an unknown unit is none") {
  const test::Folder folder;
  struct Row {
    unsigned metre;
    double ppi;
  };
  // The PNG specification, chunk pHYs, with 1 in = 0.0254 m exactly.
  const Row rows[] = {{2835, 72.009},    {3780, 96.012},    {5906, 150.0124},
                      {7874, 199.9996},  {9449, 240.0046},  {11811, 299.9994},
                      {15748, 399.9992}, {23622, 599.9988}, {47244, 1199.9976}};
  for (const Row &row : rows) {
    made::write_png(folder / "p", made::busy(4, 4, 3), {.unit = 1, .x = row.metre, .y = row.metre});
    check_ppi(facts_of(folder / "p"), row.ppi, row.ppi);
  }
  made::write_png(folder / "p", made::busy(4, 4, 3), {.unit = 0, .x = 3, .y = 2});
  check_ppi(facts_of(folder / "p"), 0, 0);
}
