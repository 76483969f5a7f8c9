// Reduced copies inside a TIFF: taken for a small preview, left alone where every pixel is wanted.
#include "engine/picture/preview.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <tiffio.h>

using namespace stoneproof;
using stoneproof::test::Folder;

namespace {

void write_directory(TIFF *tiff, int width, int height, std::uint8_t level, bool reduced) {
  TIFFSetField(tiff, TIFFTAG_SUBFILETYPE, reduced ? FILETYPE_REDUCEDIMAGE : 0);
  TIFFSetField(tiff, TIFFTAG_IMAGEWIDTH, width);
  TIFFSetField(tiff, TIFFTAG_IMAGELENGTH, height);
  TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, 8);
  TIFFSetField(tiff, TIFFTAG_SAMPLESPERPIXEL, 1);
  TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC, PHOTOMETRIC_MINISBLACK);
  TIFFSetField(tiff, TIFFTAG_ROWSPERSTRIP, 16);
  std::vector<std::uint8_t> row(static_cast<std::size_t>(width), level);
  for (int y = 0; y < height; ++y)
    REQUIRE(TIFFWriteScanline(tiff, row.data(), static_cast<std::uint32_t>(y), 0) == 1);
}

struct Copy {
  int width, height;
  std::uint8_t level;
};

/// A picture of 400 x 300 at level 200, and copies of other levels, so that it shows which one was read.
void write_with_copies(const std::filesystem::path &file, const std::vector<Copy> &copies, bool below) {
  TIFF *tiff = TIFFOpen(file.c_str(), "w");
  REQUIRE(tiff);
  const std::vector<std::uint64_t> places(copies.size());
  if (below) TIFFSetField(tiff, TIFFTAG_SUBIFD, static_cast<std::uint16_t>(copies.size()), places.data());
  write_directory(tiff, 400, 300, 200, false);
  REQUIRE(TIFFWriteDirectory(tiff) == 1);
  for (const Copy &copy : copies) {
    write_directory(tiff, copy.width, copy.height, copy.level, true);
    REQUIRE(TIFFWriteDirectory(tiff) == 1);
  }
  TIFFClose(tiff);
}

int level_of(const std::filesystem::path &file, PixelRect part, int width, int height) {
  const auto facts = read_facts(file);
  REQUIRE(facts);
  CHECK(facts.value().size == PixelSize{400, 300});
  const auto preview = read_preview(file, facts.value(), {part, width, height});
  REQUIRE(preview);
  CHECK(preview.value().width == width);
  CHECK(preview.value().height == height);
  for (const std::uint8_t value : preview.value().rgb) REQUIRE(value == preview.value().rgb[0]);
  return preview.value().rgb[0];
}

} // namespace

TEST_CASE("the smallest reduced copy that is large enough is read, wherever it stands") {
  const Folder folder;
  for (const bool below : {false, true}) {
    CAPTURE(below);
    const auto file = folder / (below ? "below.tif" : "chain.tif");
    write_with_copies(file, {{200, 150, 50}, {100, 75, 25}, {50, 38, 12}}, below);
    CHECK(level_of(file, {0, 0, 400, 300}, 60, 45) == 25);
    CHECK(level_of(file, {0, 0, 400, 300}, 100, 75) == 25);
    CHECK(level_of(file, {0, 0, 400, 300}, 101, 75) == 50);
    CHECK(level_of(file, {0, 0, 400, 300}, 50, 37) == 12);
    CHECK(level_of(file, {0, 0, 400, 300}, 300, 225) == 200);
    CHECK(level_of(file, {0, 0, 400, 300}, 400, 300) == 200);
    CHECK(level_of(file, {201, 150, 199, 150}, 20, 15) == 12);
    CHECK(level_of(file, {201, 150, 199, 150}, 40, 30) == 25);
  }
}

TEST_CASE("a copy of another shape is not taken for the picture") {
  const Folder folder;
  write_with_copies(folder / "t.tif", {{100, 60, 25}}, false);
  CHECK(level_of(folder / "t.tif", {0, 0, 400, 300}, 40, 30) == 200);
}
