// A JPEG decoded by libjpeg-turbo alone, at so many eighths of its size: the yardstick of what stoneproof
// makes of it.
#pragma once

#include <cstdio>
#include <vector>

#include <jpeglib.h>

namespace bench {

/// `take` is handed each row and the decompressor.
template <class Take>
void bare_jpeg(const char *path, unsigned eighths, const Take &take) {
  std::FILE *file = std::fopen(path, "rb");
  jpeg_decompress_struct jpeg{};
  jpeg_error_mgr errors{};
  jpeg.err = jpeg_std_error(&errors);
  jpeg_create_decompress(&jpeg);
  jpeg_stdio_src(&jpeg, file);
  jpeg_read_header(&jpeg, TRUE);
  jpeg.scale_num = eighths;
  jpeg.scale_denom = 8;
  jpeg_start_decompress(&jpeg);
  std::vector<JSAMPLE> row(std::size_t{jpeg.output_width} * static_cast<std::size_t>(jpeg.output_components));
  while (jpeg.output_scanline < jpeg.output_height) {
    JSAMPROW to = row.data();
    jpeg_read_scanlines(&jpeg, &to, 1);
    take(row.data(), jpeg);
  }
  jpeg_finish_decompress(&jpeg);
  jpeg_destroy_decompress(&jpeg);
  std::fclose(file);
}

inline void bare_jpeg(const char *path, unsigned eighths) {
  bare_jpeg(path, eighths, [](const JSAMPLE *, const jpeg_decompress_struct &) {});
}

} // namespace bench
