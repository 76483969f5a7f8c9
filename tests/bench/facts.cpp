// Time of read_facts over 1,000 pictures against the bare libraries and against `identify -ping`.
// Goals: at most 1.5 x bare, at least 10 x faster than identify. Prints, asserts nothing. Run: bench_facts
#include "engine/picture/facts.h"
#include "tests/bench/best_time.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/files.h"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>
#include <vector>

#include <jpeglib.h>
#include <tiffio.h>

namespace {

constexpr int each = 500;

std::vector<std::filesystem::path> make_list(const stoneproof::test::Folder &folder) {
  std::vector<std::filesystem::path> files;
  for (int i = 0; i < each; ++i) {
    const made::Raster picture = made::busy(300 + i % 7 * 50, 240 + i % 5 * 40, 3);
    const std::string number = std::to_string(i);
    files.push_back(folder / ("scan" + number + ".jpg"));
    made::write_jpeg(files.back(), picture,
                     {.progressive = i % 4 == 0,
                      .jfif = i % 2 == 0,
                      .exif = made::Exif{.orientation = 1 + i % 8, .x = 300, .y = 300, .unit = 2},
                      .icc_bytes = i % 3 == 0 ? 3144 : 0});
    files.push_back(folder / ("scan" + number + ".tif"));
    made::write_tiff(files.back(), picture,
                     {.compression = i % 2 ? COMPRESSION_LZW : COMPRESSION_NONE,
                      .tiled = i % 5 == 0,
                      .rows_per_strip = 16,
                      .orientation = 1,
                      .x = 300,
                      .y = 300,
                      .unit = RESUNIT_INCH,
                      .icc_bytes = i % 3 == 0 ? 3144 : 0});
  }
  return files;
}

unsigned bare_jpeg(const char *path) {
  std::FILE *file = std::fopen(path, "rb");
  jpeg_decompress_struct jpeg{};
  jpeg_error_mgr errors{};
  jpeg.err = jpeg_std_error(&errors);
  jpeg_create_decompress(&jpeg);
  jpeg_stdio_src(&jpeg, file);
  jpeg_read_header(&jpeg, TRUE);
  const unsigned width = jpeg.image_width;
  jpeg_destroy_decompress(&jpeg);
  std::fclose(file);
  return width;
}

unsigned bare_tiff(const char *path) {
  TIFF *tiff = TIFFOpen(path, "r");
  std::uint32_t width = 0, height = 0, bytes = 0;
  std::uint16_t word = 0, count = 0;
  std::uint16_t *kinds = nullptr;
  float resolution = 0;
  void *profile = nullptr;
  TIFFGetField(tiff, TIFFTAG_IMAGEWIDTH, &width);
  TIFFGetField(tiff, TIFFTAG_IMAGELENGTH, &height);
  for (const int tag : {TIFFTAG_BITSPERSAMPLE, TIFFTAG_SAMPLESPERPIXEL, TIFFTAG_SAMPLEFORMAT,
                        TIFFTAG_COMPRESSION, TIFFTAG_PHOTOMETRIC, TIFFTAG_ORIENTATION, TIFFTAG_PLANARCONFIG,
                        TIFFTAG_RESOLUTIONUNIT, TIFFTAG_INKSET})
    TIFFGetField(tiff, static_cast<std::uint32_t>(tag), &word);
  TIFFGetField(tiff, TIFFTAG_XRESOLUTION, &resolution);
  TIFFGetField(tiff, TIFFTAG_YRESOLUTION, &resolution);
  TIFFGetField(tiff, TIFFTAG_EXTRASAMPLES, &count, &kinds);
  TIFFGetField(tiff, TIFFTAG_ICCPROFILE, &bytes, &profile);
  TIFFClose(tiff);
  return width;
}

} // namespace

int main() {
  const stoneproof::test::Folder folder;
  const std::vector<std::filesystem::path> files = make_list(folder);
  std::int64_t kept = 0; // so that nothing is optimised away
  const auto ours = [&](const char *end) {
    return bench::best_time(15, [&] {
      for (const auto &file : files) {
        if (!file.native().ends_with(end)) continue;
        const auto facts = stoneproof::read_facts(file);
        if (facts) kept += facts.value().size.width;
      }
    });
  };
  const auto bare = [&](const char *end, unsigned (*read)(const char *)) {
    return bench::best_time(15, [&] {
      for (const auto &file : files)
        if (file.native().ends_with(end)) kept += read(file.c_str());
    });
  };
  const double our_jpeg = ours(".jpg"), our_tiff = ours(".tif");
  const double jpeg = bare(".jpg", bare_jpeg), tiff = bare(".tif", bare_tiff);
  std::ofstream list(folder / "list");
  for (const auto &file : files) list << file.string() << "\n";
  list.close();
  const std::string command = "xargs -a " + (folder / "list").string() + " identify -ping > /dev/null";
  int status = 0;
  const double identify = bench::best_wall_time(3, [&] { status = std::system(command.c_str()); });

  std::printf("facts of %zu pictures, warm cache, processor time, best of 15 (checksum %lld)\n", files.size(),
              static_cast<long long>(kept));
  std::printf("JPEG   read_facts %7.2f ms   bare libjpeg %7.2f ms   ratio %.2f\n", our_jpeg, jpeg,
              our_jpeg / jpeg);
  std::printf("TIFF   read_facts %7.2f ms   bare libtiff %7.2f ms   ratio %.2f\n", our_tiff, tiff,
              our_tiff / tiff);
  std::printf("all    read_facts %7.2f ms   bare         %7.2f ms   ratio %.2f (goal: at most 1.5)\n",
              our_jpeg + our_tiff, jpeg + tiff, (our_jpeg + our_tiff) / (jpeg + tiff));
  if (status != 0) return std::puts("identify did not run"), 0;
  std::printf("identify -ping %.0f ms on the wall: read_facts is %.1f x faster (goal: at least 10)\n",
              identify, identify / (our_jpeg + our_tiff));
}
