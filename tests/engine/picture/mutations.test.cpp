// Files with a few bytes changed or their end cut off: each ends in a value that holds together or in a whole
// Fault. The same mutations each time. What they must not do is crash, which the sanitizer build makes
// strict.
#include "tests/engine/picture/check_mutations.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <random>
#include <tiff.h>

using namespace stoneproof;

namespace {

std::vector<made::Bytes> seeds(const test::Folder &folder) {
  std::vector<made::Bytes> all;
  const auto keep = [&] { all.push_back(made::read_bytes(folder / "s")); };
  const made::Raster rgb = made::busy(50, 40, 3), gray = made::busy(50, 40, 1), four = made::busy(50, 40, 4);
  const made::Exif exif{.orientation = 6, .x = 300, .y = 300, .unit = 2};
  made::write_jpeg(folder / "s", rgb, {.exif = exif, .icc_bytes = 300}), keep();
  made::write_jpeg(folder / "s", rgb, {.progressive = true}), keep();
  made::write_jpeg(folder / "s", four, {.ycck = true}), keep();
  made::write_jpeg(folder / "s", gray, {.arithmetic = true}), keep();
  made::write_tiff(folder / "s", rgb, {.compression = COMPRESSION_LZW, .tile = 16, .x = 300, .y = 300}),
      keep();
  made::write_tiff(folder / "s", rgb,
                   {.compression = COMPRESSION_ADOBE_DEFLATE, .tiled = true, .big = true, .tile = 16}),
      keep();
  made::write_tiff(folder / "s", four,
                   {.photometric = PHOTOMETRIC_SEPARATED, .planar = true, .big_endian = true}),
      keep();
  made::write_tiff(
      folder / "s", rgb,
      {.photometric = PHOTOMETRIC_YCBCR, .compression = COMPRESSION_JPEG, .rows_per_strip = 16, .pages = 2}),
      keep();
  made::write_tiff(folder / "s", made::busy(50, 40, 1, 1),
                   {.photometric = 0, .compression = COMPRESSION_CCITTFAX4}),
      keep();
  made::write_png(folder / "s", rgb, {.unit = 1, .x = 11811, .y = 11811}), keep();
  made::write_png(folder / "s", four, {.colour_type = 6, .interlaced = true}), keep();
  made::write_png(folder / "s", made::busy(50, 40, 1, 4),
                  {.colour_type = 3, .palette = std::vector<std::array<std::uint8_t, 3>>(16, {1, 2, 3})}),
      keep();
  return all;
}

// Half of the changes fall into the first and last 200 bytes, where headers and directories lie.
made::Bytes mutated(made::Bytes bytes, std::mt19937 &random) {
  const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
  if (below(4) == 0) bytes.resize(1 + below(bytes.size()));
  for (std::size_t i = 1 + below(6); i > 0; --i) {
    const std::size_t edge = std::min<std::size_t>(200, bytes.size());
    const std::size_t at = below(2)   ? below(bytes.size())
                           : below(2) ? below(edge)
                                      : bytes.size() - 1 - below(edge);
    bytes[at] = static_cast<std::uint8_t>(below(3) ? random() : (below(2) ? 0xFF : 0));
  }
  return bytes;
}

} // namespace

TEST_CASE("mutated files end in a value or a fault") {
  const test::Folder folder;
  made::check_mutations(seeds(folder), 20240501, mutated);
}
