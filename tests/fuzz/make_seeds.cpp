// Writes small pictures of every kind for the fuzzers to begin with. Usage: make_seeds DIR
// Run by tests/fuzz/seeds.sh.
#include "tests/engine/picture/make_newer.h"

#include <tiff.h>

namespace {

class Writer {
public:
  explicit Writer(std::filesystem::path folder) : folder_(std::move(folder)) {}
  /// Where the next seed of the family goes.
  std::filesystem::path next(const std::string &family) {
    std::filesystem::create_directories(folder_ / family);
    return folder_ / family / ("made-" + std::to_string(++count_));
  }

private:
  std::filesystem::path folder_;
  int count_ = 0;
};

void write_classic(Writer &to) {
  const made::Raster rgb = made::busy(24, 20, 3), gray = made::busy(24, 20, 1), four = made::busy(24, 20, 4);
  const made::Exif exif{.orientation = 6, .x = 300, .y = 300, .unit = 2};
  made::write_jpeg(to.next("jpeg"), rgb, {.exif = exif, .icc_bytes = 200});
  made::write_jpeg(to.next("jpeg"), rgb, {.progressive = true});
  made::write_jpeg(to.next("jpeg"), four, {.ycck = true});
  made::write_jpeg(to.next("jpeg"), gray, {.arithmetic = true});
  for (const int packing :
       {COMPRESSION_NONE, COMPRESSION_LZW, COMPRESSION_ADOBE_DEFLATE, COMPRESSION_PACKBITS}) {
    made::write_tiff(to.next("tiff"), rgb, {.compression = packing, .tiled = true, .big = true, .tile = 16});
    made::write_tiff(to.next("tiff"), four,
                     {.photometric = PHOTOMETRIC_SEPARATED, .compression = packing, .planar = true});
    made::write_tiff(to.next("tiff"), made::busy(24, 20, 3, 16),
                     {.compression = packing, .big_endian = true});
  }
  made::write_tiff(to.next("tiff"), rgb,
                   {.photometric = PHOTOMETRIC_YCBCR, .compression = COMPRESSION_JPEG, .rows_per_strip = 16});
  made::write_tiff(to.next("tiff"), made::busy(24, 20, 1, 1),
                   {.photometric = 0, .compression = COMPRESSION_CCITTFAX4});
  made::write_png(to.next("png"), rgb, {.unit = 1, .x = 11811, .y = 11811});
  made::write_png(to.next("png"), four, {.colour_type = 6, .interlaced = true});
  made::write_png(to.next("png"), made::busy(24, 20, 1, 4),
                  {.colour_type = 3, .palette = std::vector<std::array<std::uint8_t, 3>>(16, {1, 2, 3})});
}

void write_newer(Writer &to) {
  const made::Raster rgb = made::busy(24, 20, 3), four = made::busy(24, 20, 4);
  const std::vector<std::array<std::uint8_t, 3>> palette(16, {1, 2, 3});
  for (const bool interlaced : {false, true})
    made::write_gif(to.next("gif"), made::busy(24, 20, 1, 4),
                    {.screen_width = 30,
                     .screen_height = 25,
                     .left = 2,
                     .top = 3,
                     .interlaced = interlaced,
                     .palette = palette,
                     .local = interlaced,
                     .see_through = 3,
                     .pages = 2,
                     .icc = made::Bytes(interlaced ? 300 : 0, 7)});
  const made::Bytes segment = made::exif_segment({.orientation = 6, .x = 300, .y = 300, .unit = 2});
  const made::Bytes exif(segment.begin() + 6, segment.end());
  for (const bool lossless : {false, true})
    for (const made::Raster &picture : {rgb, four}) {
      made::write_webp(to.next("webp"), picture, {.lossless = lossless});
      made::write_webp(to.next("webp"), picture,
                       {.lossless = lossless, .icc = made::Bytes(100, 7), .exif = exif});
      made::write_webp(
          to.next("webp"), picture,
          {.lossless = lossless, .canvas_width = 40, .canvas_height = 30, .left = 4, .pages = 2});
      for (const bool avif : {false, true})
        made::write_heif(to.next("heif"), picture,
                         {.avif = avif, .lossless = lossless, .orientation = lossless ? 6 : 1, .exif = exif});
    }
}

} // namespace

int main(int count, char **words) {
  if (count != 2) return 2;
  Writer writer(words[1]);
  write_classic(writer);
  write_newer(writer);
}
