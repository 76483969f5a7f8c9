// Previews: part, size, orientation, JPEG reduction, damage, memory.
#include "engine/picture/preview.h"
#include "engine/picture/orientation.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/engine/picture/slow_average.h"
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

Preview preview_of(const std::filesystem::path &file, const PreviewOrder &order) {
  auto preview = read_preview(file, facts_of(file), order);
  if (!preview) FAIL(preview.fault().what);
  return preview.value();
}

} // namespace

TEST_CASE("orientation 1 to 8 puts each stored pixel where the Exif table says") {
  // Exif 2.3, tag 274, on a stored picture of 3 x 2 pixels with the values 1 to 6 (here times 40).
  const std::vector<int> seen[] = {{1, 2, 3, 4, 5, 6}, {3, 2, 1, 6, 5, 4}, {6, 5, 4, 3, 2, 1},
                                   {4, 5, 6, 1, 2, 3}, {1, 4, 2, 5, 3, 6}, {4, 1, 5, 2, 6, 3},
                                   {6, 3, 5, 2, 4, 1}, {3, 6, 2, 5, 1, 4}};
  const test::Folder folder;
  for (int orientation = 1; orientation <= 8; ++orientation) {
    CAPTURE(orientation);
    made::write_tiff(folder / "t", made::counted(3, 2, 40), {.photometric = 1, .orientation = orientation});
    const bool lies = orientation >= 5;
    const Preview preview = preview_of(folder / "t", {{0, 0, lies ? 2.0 : 3.0, lies ? 3.0 : 2.0}, 9, 9});
    REQUIRE(preview.width == (lies ? 2 : 3));
    REQUIRE(preview.height == (lies ? 3 : 2));
    std::vector<int> found;
    for (std::size_t i = 0; i < preview.rgb.size(); i += 3) found.push_back(preview.rgb[i] / 40);
    CHECK(found == seen[orientation - 1]);
    // Each single pixel asked for by itself is the same pixel.
    for (int y = 0; y < preview.height; ++y)
      for (int x = 0; x < preview.width; ++x) {
        const Preview one = preview_of(folder / "t", {{x + 0.0, y + 0.0, 1, 1}, 1, 1});
        CHECK(one.rgb[0] / 40 == seen[orientation - 1][static_cast<std::size_t>(y * preview.width + x)]);
      }
  }
}

TEST_CASE("a part is widened to whole pixels, cut to the picture and never enlarged") {
  const test::Folder folder;
  made::write_tiff(folder / "t", made::busy(40, 30, 3));
  struct Row {
    PreviewOrder order;
    PixelRect part;
    int width, height;
  };
  const Row rows[] = {
      {{{0, 0, 40, 30}, 20, 15}, {0, 0, 40, 30}, 20, 15},
      {{{1.5, 2.25, 3, 4}, 100, 100}, {1, 2, 4, 5}, 4, 5},
      {{{-10, -10, 15, 100}, 3, 3}, {0, 0, 5, 30}, 3, 3},
      {{{39.5, 29.5, 100, 100}, 5, 5}, {39, 29, 1, 1}, 1, 1},
      {{{0, 0, 40, 30}, 0, -5}, {0, 0, 40, 30}, 1, 1},
  };
  for (const Row &row : rows) {
    const Preview preview = preview_of(folder / "t", row.order);
    CHECK(preview.part == row.part);
    CHECK(preview.width == row.width);
    CHECK(preview.height == row.height);
    CHECK(preview.rgb.size() == static_cast<std::size_t>(row.width * row.height * 3));
  }
  const double nan = std::nan("");
  for (const PixelRect part : {PixelRect{40, 0, 5, 5}, PixelRect{-5, 0, 5, 5}, PixelRect{0, 0, 0, 5},
                               PixelRect{0, 0, -3, 5}, PixelRect{nan, 0, 5, 5}, PixelRect{0, 0, nan, 5}}) {
    const auto preview = read_preview(folder / "t", facts_of(folder / "t"), {part, 5, 5});
    REQUIRE_FALSE(preview);
    CHECK(preview.fault() == Fault{"the part asked for lies outside the picture", (folder / "t").string(),
                                   "Move the crop onto the picture."});
  }
}

TEST_CASE("a JPEG preview is the area average of libjpeg's own reduced picture") {
  const test::Folder folder;
  const made::JpegKind kinds[] = {{}, {.progressive = true}, {.full_chroma = true}, {.arithmetic = true}};
  struct Row {
    PreviewOrder order;
    int eighths; ///< the smallest that keeps the part no smaller than the order
  };
  const Row rows[] = {
      {{{0, 0, 413, 307}, 413, 307}, 8},  {{{0, 0, 413, 307}, 200, 150}, 4},
      {{{0, 0, 413, 307}, 51, 30}, 1},    {{{0, 0, 413, 307}, 150, 100}, 3},
      {{{100, 90, 200, 120}, 60, 40}, 3}, {{{211, 150, 202, 157}, 100, 78}, 4},
      {{{37, 0, 1, 307}, 1, 300}, 8},
  };
  for (const int channels : {1, 3})
    for (const made::JpegKind &kind : kinds) {
      made::write_jpeg(folder / "j", made::busy(413, 307, channels), kind);
      for (const Row &row : rows) {
        CAPTURE(channels, row.order.part.x, row.order.part.width, row.eighths, kind.progressive);
        const made::Raster whole = made::decode_jpeg(folder / "j", row.eighths);
        const Preview preview = preview_of(folder / "j", row.order);
        CHECK(preview.width == row.order.width);
        CHECK(made::worst_difference(preview, made::look_at(whole), row.eighths / 8.0) <= 0.51);
      }
    }
}

TEST_CASE("a turned JPEG is the turned average") {
  const test::Folder folder;
  made::write_jpeg(folder / "j", made::busy(413, 307, 3));
  const made::Raster whole = made::decode_jpeg(folder / "j", 4);
  for (int orientation = 1; orientation <= 8; ++orientation) {
    CAPTURE(orientation);
    made::write_jpeg(folder / "j", made::busy(413, 307, 3), {.exif = made::Exif{.orientation = orientation}});
    const Facts facts = facts_of(folder / "j");
    const bool lies = orientation >= 5;
    const PixelRect part = lies ? PixelRect{20, 40, 240, 320} : PixelRect{40, 20, 320, 240};
    const Preview preview = preview_of(folder / "j", {part, lies ? 120 : 160, lies ? 160 : 120});
    // The part ends on pixels of the halved picture at one end only, so its own turning is checked by half
    // pixels.
    const Orientation turn(orientation);
    const made::Look seen = [&](int x, int y) {
      const auto place = turn.stored_place(x, y, turn.stored(facts.size));
      return made::look_at(whole)(static_cast<int>(place.x / 2), static_cast<int>(place.y / 2));
    };
    CHECK(made::worst_difference(preview, seen) <= 0.51);
  }
}

TEST_CASE("ink becomes RGB, with and without the Adobe marker") {
  const test::Folder folder;
  made::Raster flat{16, 16, 4, 8, {}};
  for (int i = 0; i < 256; ++i) flat.samples.insert(flat.samples.end(), {255, 128, 0, 51});
  // Stored as ink: c 255, m 128, y 0, k 51. Through the marker the same numbers mean c 0, m 127, y 255, k
  // 204.
  struct Row {
    bool adobe;
    made::Rgb want;
  };
  const Row rows[] = {{false, {0, 127 * 204 / 255.0, 204}}, {true, {51, 128 * 51 / 255.0, 0}}};
  for (const Row &row : rows) {
    made::write_jpeg(folder / "j", flat, {.quality = 100, .full_chroma = true, .adobe = row.adobe});
    const Preview preview = preview_of(folder / "j", {{0, 0, 16, 16}, 4, 4});
    CHECK(made::worst_difference(preview, [&](int, int) { return row.want; }) <= 1.5);
  }
}

TEST_CASE("a damaged JPEG is a fault, wherever it was cut") {
  const test::Folder folder;
  for (const bool progressive : {false, true}) {
    made::write_jpeg(folder / "j", made::busy(413, 307, 3), {.progressive = progressive});
    const Facts facts = facts_of(folder / "j");
    const made::Bytes whole = made::read_bytes(folder / "j");
    for (const std::size_t keep : {whole.size() / 2, whole.size() - 40, whole.size() - 2}) {
      CAPTURE(progressive, keep, whole.size());
      made::write_bytes(folder / "j", {whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(keep)});
      const auto preview = read_preview(folder / "j", facts, {{0, 0, 413, 307}, 100, 70});
      REQUIRE_FALSE(preview);
      CHECK(preview.fault() == Fault{"the JPEG is damaged (Premature end of JPEG file)",
                                     (folder / "j").string(),
                                     "Copy the picture again from where it came, or ask for it again."});
    }
    // Bytes after the end are harmless: cameras write them.
    made::Bytes longer = whole;
    longer.insert(longer.end(), 5000, 0);
    made::write_bytes(folder / "j", longer);
    CHECK(read_preview(folder / "j", facts, {{0, 0, 413, 307}, 100, 70}));
    // So are stray bytes between two segments: here after the 18 bytes of the JFIF one.
    longer = whole;
    longer.insert(longer.begin() + 20, 3, 0);
    made::write_bytes(folder / "j", longer);
    CHECK(read_preview(folder / "j", facts, {{0, 0, 413, 307}, 100, 70}));
  }
}

TEST_CASE("what would take too much memory is refused with the figure") {
  const test::Folder folder;
  // A progressive picture holds every coefficient: here 64 x 64 blocks of luma and twice 32 x 32, at 128
  // bytes each.
  made::write_jpeg(folder / "j", made::busy(512, 512, 3), {.progressive = true});
  const std::uint64_t coefficients = (64 * 64 + 2 * 32 * 32) * 128;
  const PreviewOrder order{{0, 0, 512, 512}, 10, 10};
  const Facts facts = facts_of(folder / "j");
  CHECK(read_preview(folder / "j", facts, order, {.most_memory = coefficients}));
  const auto preview = read_preview(folder / "j", facts, order, {.most_memory = coefficients - 1});
  REQUIRE_FALSE(preview);
  CHECK(preview.fault() == Fault{"decoding the picture needs 1 MB of memory; the limit is 0 MB",
                                 (folder / "j").string(),
                                 "Save the picture again as a TIFF in strips, or as a baseline JPEG."});
  made::write_png(folder / "p", made::busy(200, 200, 3), {.interlaced = true});
  // All rows of an interlaced one, and the two that libpng holds.
  const std::uint64_t rows = 200 * 3 * 202;
  CHECK(read_preview(folder / "p", facts_of(folder / "p"), {{0, 0, 200, 200}, 9, 9}, {.most_memory = rows}));
  CHECK_FALSE(read_preview(folder / "p", facts_of(folder / "p"), {{0, 0, 200, 200}, 9, 9},
                           {.most_memory = rows - 1}));
  made::write_tiff(folder / "t", made::busy(200, 200, 3), {.tiled = true});
  CHECK(read_preview(folder / "t", facts_of(folder / "t"), {{0, 0, 200, 200}, 9, 9},
                     {.most_memory = 64 * 64 * 3 * 5}));
  CHECK_FALSE(read_preview(folder / "t", facts_of(folder / "t"), {{0, 0, 200, 200}, 9, 9},
                           {.most_memory = 64 * 64 * 3 * 5 - 1}));
}

TEST_CASE("a file that was replaced after its facts were read is a fault") {
  const test::Folder folder;
  made::write_jpeg(folder / "j", made::busy(64, 48, 3));
  const Facts facts = facts_of(folder / "j");
  made::write_png(folder / "j", made::busy(40, 30, 3));
  const auto preview = read_preview(folder / "j", facts, {{0, 0, 64, 48}, 10, 10});
  REQUIRE_FALSE(preview);
  CHECK(preview.fault().what == "the file was changed while it was being checked");
}
