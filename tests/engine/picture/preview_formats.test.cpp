// Previews of every kind of TIFF and PNG that is decoded, pixel by pixel against the samples they were made
// from.
#include "engine/picture/preview.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/engine/picture/slow_average.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <tiff.h>
#include <tiffio.h>

using namespace stoneproof;

namespace {

Outcome<Preview> try_preview(const std::filesystem::path &file, const PreviewOrder &order) {
  const auto facts = read_facts(file);
  if (!facts) return facts.fault();
  return read_preview(file, facts.value(), order);
}

// The parts and sizes that every kind is tried with; the pictures are 150 x 110.
const PreviewOrder orders[] = {{{0, 0, 150, 110}, 150, 110},
                               {{0, 0, 150, 110}, 37, 29},
                               {{70, 50, 33, 41}, 33, 41},
                               {{61, 66, 80, 44}, 13, 7}};

void check_all(const std::filesystem::path &file, const made::Look &look, double tolerance) {
  for (const PreviewOrder &order : orders) {
    CAPTURE(order.part.x, order.part.y, order.width, order.height);
    const auto preview = try_preview(file, order);
    if (!preview) FAIL(preview.fault().what);
    CHECK(made::worst_difference(preview.value(), look) <= tolerance);
  }
}

// Gray or RGB samples of any bits, without regard to further channels.
made::Look plain(const made::Raster &r, bool white_is_zero = false) {
  return [&r, white_is_zero](int x, int y) {
    made::Rgb colour{};
    const double most = (1 << r.bits) - 1;
    for (int c = 0; c < 3; ++c) {
      const double value = r.at(x, y, r.channels < 3 ? 0 : c) / most * 255;
      colour[static_cast<std::size_t>(c)] = white_is_zero ? 255 - value : value;
    }
    return colour;
  };
}

// Over white, by the last channel.
made::Look over_white(const made::Raster &r, bool multiplied) {
  return [&r, multiplied](int x, int y) {
    const double most = (1 << r.bits) - 1, opacity = r.at(x, y, r.channels - 1) / most;
    made::Rgb colour = plain(r)(x, y);
    for (double &c : colour) c = std::min(255.0, (multiplied ? c : c * opacity) + 255 * (1 - opacity));
    return colour;
  };
}

made::Look ink(const made::Raster &r) {
  return [&r](int x, int y) {
    const double most = (1 << r.bits) - 1;
    made::Rgb colour{};
    for (int c = 0; c < 3; ++c)
      colour[static_cast<std::size_t>(c)] = 255 * (1 - r.at(x, y, c) / most) * (1 - r.at(x, y, 3) / most);
    return colour;
  };
}

} // namespace

TEST_CASE("TIFF: every layout and packing of gray and RGB gives the same pixels") {
  const test::Folder folder;
  for (const int compression :
       {COMPRESSION_NONE, COMPRESSION_LZW, COMPRESSION_ADOBE_DEFLATE, COMPRESSION_PACKBITS})
    for (const int bits : {1, 2, 4, 8, 12, 16})
      for (const int channels : {1, 3})
        for (const bool tiled : {false, true})
          for (const bool planar : {false, true}) {
            CAPTURE(compression, bits, channels, tiled, planar);
            const made::Raster picture = made::busy(150, 110, channels, bits);
            made::write_tiff(folder / "t", picture,
                             {.photometric = channels == 1 ? PHOTOMETRIC_MINISWHITE : PHOTOMETRIC_RGB,
                              .compression = compression,
                              .tiled = tiled,
                              .planar = planar,
                              .big = planar,
                              .big_endian = tiled});
            check_all(folder / "t", plain(picture, channels == 1), 1.01);
          }
}

TEST_CASE("TIFF: one strip for the whole picture, and fax packing") {
  const test::Folder folder;
  const made::Raster rgb = made::busy(150, 110, 3), line_art = made::busy(150, 110, 1, 1);
  made::write_tiff(folder / "t", rgb,
                   {.compression = COMPRESSION_LZW, .planar = true, .rows_per_strip = 110});
  check_all(folder / "t", plain(rgb), 0.51);
  for (const int compression : {COMPRESSION_CCITTRLE, COMPRESSION_CCITTFAX3, COMPRESSION_CCITTFAX4}) {
    made::write_tiff(folder / "t", line_art,
                     {.photometric = PHOTOMETRIC_MINISWHITE, .compression = compression});
    check_all(folder / "t", plain(line_art, true), 0.51);
  }
}

TEST_CASE("TIFF: alpha shows white behind, other extra samples show nothing") {
  const test::Folder folder;
  for (const int bits : {8, 16})
    for (const bool planar : {false, true}) {
      const made::Raster picture = made::busy(150, 110, 4, bits);
      made::write_tiff(folder / "t", picture, {.planar = planar, .extra = {EXTRASAMPLE_UNASSALPHA}});
      check_all(folder / "t", over_white(picture, false), 1.51);
      made::write_tiff(folder / "t", picture, {.planar = planar, .extra = {EXTRASAMPLE_ASSOCALPHA}});
      check_all(folder / "t", over_white(picture, true), 1.51);
      made::write_tiff(folder / "t", picture, {.planar = planar, .extra = {EXTRASAMPLE_UNSPECIFIED}});
      check_all(folder / "t", plain(picture), 1.01);
      made::write_tiff(folder / "t", picture, {.planar = planar}); // nothing is said of the fourth channel
      check_all(folder / "t", over_white(picture, false), 1.51);
    }
}

TEST_CASE("TIFF: ink, palette, and Lab") {
  const test::Folder folder;
  for (const int bits : {8, 16})
    for (const bool planar : {false, true}) {
      const made::Raster picture = made::busy(150, 110, 4, bits);
      made::write_tiff(folder / "t", picture, {.photometric = PHOTOMETRIC_SEPARATED, .planar = planar});
      check_all(folder / "t", ink(picture), 1.51);
    }
  for (const int bits : {1, 4, 8})
    for (const int large : {256, 1}) { // right, and as some writers do it, with 8-bit values
      std::vector<std::array<std::uint16_t, 3>> palette;
      for (int i = 0; i < 1 << bits; ++i)
        palette.push_back({static_cast<std::uint16_t>(i * large),
                           static_cast<std::uint16_t>((255 - i) * large),
                           static_cast<std::uint16_t>((i * 37 % 256) * large)});
      const made::Raster picture = made::busy(150, 110, 1, bits);
      made::write_tiff(folder / "t", picture, {.photometric = PHOTOMETRIC_PALETTE, .palette = palette});
      check_all(
          folder / "t",
          [&](int x, int y) {
            const double i = picture.at(x, y, 0);
            return made::Rgb{i, 255 - i, static_cast<double>(picture.at(x, y, 0) * 37 % 256)};
          },
          0.51);
    }
}

TEST_CASE("TIFF: Lab of known colours, in both codings") {
  const test::Folder folder;
  // sRGB red, green, blue and the grays 0, 119, 255 in CIE Lab with the white D50 (the sRGB primaries adapted
  // by Bradford; computed with the formulas of CIE 15 and ICC.1), rounded to what 8 bits can hold.
  struct Row {
    double l, a, b;
    made::Rgb rgb;
  };
  const Row rows[] = {{54.29, 80.80, 69.89, {255, 0, 0}},   {87.82, -79.27, 80.99, {0, 255, 0}},
                      {29.57, 68.30, -112.03, {0, 0, 255}}, {0, 0, 0, {0, 0, 0}},
                      {50.03, 0, 0, {119, 119, 119}},       {100, 0, 0, {255, 255, 255}}};
  for (const Row &row : rows)
    for (const int bits : {8, 16})
      for (const int photometric : {PHOTOMETRIC_CIELAB, PHOTOMETRIC_ICCLAB}) {
        CAPTURE(row.l, row.a, bits, photometric);
        const int unit = bits == 8 ? 1 : 256, most = (1 << bits) - 1;
        const double white = bits == 16 && photometric == PHOTOMETRIC_ICCLAB ? 0xFF00 : most;
        const int shift = photometric == PHOTOMETRIC_ICCLAB ? 128 * unit : 0;
        const auto ab = [&](double v) {
          return static_cast<std::uint16_t>((static_cast<int>(std::lround(v * unit)) + shift) & most);
        };
        made::Raster flat{8, 8, 3, bits, {}};
        for (int i = 0; i < 64; ++i)
          flat.samples.insert(
              flat.samples.end(),
              {static_cast<std::uint16_t>(std::lround(row.l / 100 * white)), ab(row.a), ab(row.b)});
        made::write_tiff(folder / "t", flat, {.photometric = photometric});
        const auto preview = try_preview(folder / "t", {{0, 0, 8, 8}, 2, 2});
        if (!preview) FAIL(preview.fault().what);
        // 16 bits hold the colours as given above, to two decimals. Half a step of 8-bit a or b moves a
        // channel that should be 0 by up to twelve, because the sRGB curve is steepest there.
        CHECK(made::worst_difference(preview.value(), [&](int, int) { return row.rgb; }) <=
              (bits == 8 ? 12 : 2));
      }
}

TEST_CASE("TIFF: JPEG inside, and YCbCr packed otherwise") {
  const test::Folder folder;
  const made::Raster picture = made::busy(150, 110, 3);
  for (const bool tiled : {false, true}) {
    made::write_tiff(folder / "t", picture,
                     {.photometric = PHOTOMETRIC_RGB,
                      .compression = COMPRESSION_JPEG,
                      .tiled = tiled,
                      .rows_per_strip = 16});
    const auto preview = try_preview(folder / "t", orders[1]);
    if (!preview) FAIL(preview.fault().what);
    CHECK(made::worst_difference(preview.value(), plain(picture)) <= 12); // JPEG at libtiff's quality 75
    // A gray ramp keeps its values through YCbCr; a flat colour by ITU-R BT.601: R 200 G 100 B 50.
    made::Raster flat{64, 64, 3, 8, {}};
    for (int i = 0; i < 64 * 64; ++i) flat.samples.insert(flat.samples.end(), {200, 100, 50});
    made::write_tiff(folder / "t", flat,
                     {.photometric = PHOTOMETRIC_YCBCR,
                      .compression = COMPRESSION_JPEG,
                      .tiled = tiled,
                      .rows_per_strip = 16});
    const auto jpeg = try_preview(folder / "t", {{3, 5, 50, 40}, 50, 40});
    if (!jpeg) FAIL(jpeg.fault().what);
    CHECK(made::worst_difference(jpeg.value(), [](int, int) { return made::Rgb{200, 100, 50}; }) <= 3);
  }
  // Subsampled 2 x 2: blocks of four Y, one Cb, one Cr. The same colour: Y 124.2, Cb 86.1, Cr 182.1.
  TIFF *tiff = TIFFOpen((folder / "t").c_str(), "w");
  TIFFSetField(tiff, TIFFTAG_IMAGEWIDTH, 20);
  TIFFSetField(tiff, TIFFTAG_IMAGELENGTH, 10);
  TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, 8);
  TIFFSetField(tiff, TIFFTAG_SAMPLESPERPIXEL, 3);
  TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC, PHOTOMETRIC_YCBCR);
  TIFFSetField(tiff, TIFFTAG_PLANARCONFIG, PLANARCONFIG_CONTIG);
  TIFFSetField(tiff, TIFFTAG_YCBCRSUBSAMPLING, 2, 2);
  TIFFSetField(tiff, TIFFTAG_ORIENTATION, 3);
  TIFFSetField(tiff, TIFFTAG_ROWSPERSTRIP, 4);
  made::Bytes blocks;
  for (int i = 0; i < 20; ++i) blocks.insert(blocks.end(), {124, 124, 124, 124, 86, 182});
  for (std::uint32_t strip = 0; strip < 3; ++strip)
    TIFFWriteEncodedStrip(tiff, strip, blocks.data(), strip < 2 ? 120 : 60);
  TIFFClose(tiff);
  const auto preview = try_preview(folder / "t", {{3, 1, 15, 8}, 15, 8});
  if (!preview) FAIL(preview.fault().what);
  CHECK(made::worst_difference(preview.value(), [](int, int) { return made::Rgb{200, 100, 50}; }) <= 2);
}

TEST_CASE("TIFF: what is not decoded is a fault that says so; damage is another") {
  const test::Folder folder;
  made::write_tiff(folder / "t", made::busy(8, 8, 1, 16),
                   {.photometric = 1, .sample_format = SAMPLEFORMAT_COMPLEXINT});
  auto preview = try_preview(folder / "t", {{0, 0, 8, 8}, 4, 4});
  REQUIRE_FALSE(preview);
  CHECK(preview.fault() ==
        Fault{"the TIFF holds samples of 16 bits in pairs, which cannot be decoded here",
              (folder / "t").string(),
              "Export the picture as TIFF with 8 or 16 bits a channel in gray, RGB or CMYK."});
  for (const bool tiled : {false, true}) {
    made::write_tiff(folder / "t", made::busy(150, 110, 3), {.compression = COMPRESSION_LZW, .tiled = tiled});
    made::Bytes bytes = made::read_bytes(folder / "t");
    std::fill(bytes.begin() + 2000, bytes.begin() + 3000, std::uint8_t{0xFF});
    made::write_bytes(folder / "t", bytes);
    preview = try_preview(folder / "t", orders[1]);
    REQUIRE_FALSE(preview);
    CHECK(preview.fault().what.starts_with("the TIFF is damaged ("));
    CHECK(preview.fault().where == (folder / "t").string());
  }
}

TEST_CASE("PNG: every colour type and depth, interlaced or not") {
  const test::Folder folder;
  for (const bool interlaced : {false, true}) {
    for (const int bits : {1, 2, 4, 8, 16}) {
      CAPTURE(interlaced, bits);
      const made::Raster gray = made::busy(150, 110, 1, bits);
      made::write_png(folder / "p", gray, {.colour_type = 0, .interlaced = interlaced});
      check_all(folder / "p", plain(gray), 1.01);
      if (bits < 8) continue;
      const made::Raster rgb = made::busy(150, 110, 3, bits), gray_alpha = made::busy(150, 110, 2, bits);
      const made::Raster rgb_alpha = made::busy(150, 110, 4, bits);
      made::write_png(folder / "p", rgb, {.colour_type = 2, .interlaced = interlaced});
      check_all(folder / "p", plain(rgb), 1.01);
      made::write_png(folder / "p", gray_alpha, {.colour_type = 4, .interlaced = interlaced});
      check_all(folder / "p", over_white(gray_alpha, false), 1.51);
      made::write_png(folder / "p", rgb_alpha, {.colour_type = 6, .interlaced = interlaced});
      check_all(folder / "p", over_white(rgb_alpha, false), 1.51);
    }
  }
}

TEST_CASE("PNG: palette with and without transparency, and one transparent gray") {
  const test::Folder folder;
  std::vector<std::array<std::uint8_t, 3>> palette;
  for (int i = 0; i < 16; ++i)
    palette.push_back({static_cast<std::uint8_t>(i * 16), static_cast<std::uint8_t>(255 - i), 7});
  const made::Raster picture = made::busy(150, 110, 1, 4);
  const auto colour = [&](int x, int y) {
    const auto &entry = palette[picture.at(x, y, 0)];
    return made::Rgb{entry[0] + 0.0, entry[1] + 0.0, entry[2] + 0.0};
  };
  made::write_png(folder / "p", picture, {.colour_type = 3, .palette = palette});
  check_all(folder / "p", colour, 0.51);
  made::write_png(folder / "p", picture,
                  {.colour_type = 3, .palette = palette, .palette_alpha = {255, 255, 255, 255, 0}});
  check_all(
      folder / "p",
      [&](int x, int y) {
        return picture.at(x, y, 0) == 4 ? made::Rgb{255, 255, 255} : colour(x, y);
      },
      0.51);
  made::write_png(folder / "p", picture, {.colour_type = 0, .see_through = 7});
  check_all(
      folder / "p",
      [&](int x, int y) {
        return picture.at(x, y, 0) == 7 ? made::Rgb{255, 255, 255} : plain(picture)(x, y);
      },
      0.51);
}

TEST_CASE("PNG: cut off or changed on the way is a fault") {
  const test::Folder folder;
  made::write_png(folder / "p", made::busy(150, 110, 3));
  const made::Bytes whole = made::read_bytes(folder / "p");
  for (const std::size_t keep : {whole.size() / 2, whole.size() - 6}) {
    made::write_bytes(folder / "p", {whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(keep)});
    const auto preview = try_preview(folder / "p", orders[1]);
    REQUIRE_FALSE(preview);
    CHECK(preview.fault().what == "the PNG is damaged (the file ends too early)");
  }
  made::Bytes changed = whole;
  changed[whole.size() / 2] ^= 0x10;
  made::write_bytes(folder / "p", changed);
  const auto preview = try_preview(folder / "p", orders[1]);
  REQUIRE_FALSE(preview);
  CHECK(preview.fault().what.starts_with("the PNG is damaged ("));
}
