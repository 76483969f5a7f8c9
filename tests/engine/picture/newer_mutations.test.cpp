// GIF, WebP, HEIC and AVIF files with a few bytes changed or their end cut off: each ends in a value that
// holds together or in a whole Fault. The same mutations each time. What they must not do is crash, which the
// sanitizer build makes strict.
#include "tests/engine/picture/check_mutations.h"
#include "tests/engine/picture/newer_checks.h"

#include <random>

using namespace stoneproof;

namespace {

std::vector<made::Bytes> seeds(const test::Folder &folder) {
  std::vector<made::Bytes> all;
  const auto keep = [&] { all.push_back(made::read_bytes(folder / "s")); };
  const made::Raster rgb = made::busy(50, 40, 3), four = made::busy(50, 40, 4);
  const std::vector<std::array<std::uint8_t, 3>> palette(16, {1, 2, 3});
  for (const bool interlaced : {false, true})
    made::write_gif(folder / "s", made::busy(50, 40, 1, 4),
                    {.screen_width = 60,
                     .left = 3,
                     .interlaced = interlaced,
                     .palette = palette,
                     .local = interlaced,
                     .see_through = 2,
                     .pages = 2,
                     .icc = made::some_bytes(300)}),
        keep();
  for (const bool lossless : {false, true}) {
    made::write_webp(folder / "s", four,
                     {.lossless = lossless, .icc = made::some_bytes(99), .exif = made::bare_exif(5)});
    keep();
    made::write_webp(folder / "s", rgb,
                     {.lossless = lossless, .canvas_width = 70, .canvas_height = 60, .left = 6, .pages = 2});
    keep();
    for (const bool avif : {false, true})
      made::write_heif(folder / "s", lossless ? four : rgb,
                       {.avif = avif, .lossless = lossless, .orientation = 8, .exif = made::bare_exif(1)}),
          keep();
  }
  return all;
}

// Half of the changes fall into the first 700 bytes, where the headers and boxes lie.
made::Bytes mutated(made::Bytes bytes, std::mt19937 &random) {
  const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
  if (below(4) == 0) bytes.resize(1 + below(bytes.size()));
  for (std::size_t i = 1 + below(4); i > 0; --i) {
    const std::size_t at = below(below(2) ? bytes.size() : std::min<std::size_t>(700, bytes.size()));
    bytes[at] = static_cast<std::uint8_t>(below(3) ? random() : (below(2) ? 0xFF : 0));
  }
  return bytes;
}

} // namespace

TEST_CASE("mutated GIF, WebP, HEIC and AVIF files end in a value or a fault") {
  const test::Folder folder;
  made::check_mutations(seeds(folder), 20240502, mutated);
}
