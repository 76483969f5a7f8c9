// Makes picture files for tests: invented pixels, written with the format's own library.
#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace made {

using Bytes = std::vector<std::uint8_t>;
void write_bytes(const std::filesystem::path &file, const Bytes &bytes);
Bytes read_bytes(const std::filesystem::path &file);

/// Interleaved samples, whatever their bits.
struct Raster {
  int width = 0, height = 0, channels = 1, bits = 8;
  std::vector<std::uint16_t> samples;

  std::uint16_t &at(int x, int y, int c);
  std::uint16_t at(int x, int y, int c) const;
};

/// Fine structure and slow ramps together, different in each channel and in no way symmetrical. The same each
/// time.
Raster busy(int width, int height, int channels, int bits = 8);
/// Samples 1, 2, 3 ... times `step`, row by row.
Raster counted(int width, int height, int step);

struct Exif {
  int orientation = 0; ///< 0: no such tag; beyond 8: written as it is
  double x = 0, y = 0; ///< 0: no such tags
  int unit = 0;        ///< 0: no such tag
  bool big_endian = false;
};
Bytes exif_segment(const Exif &exif);

/// The steps of a quantization table, row by row.
using Steps = std::array<std::uint16_t, 64>;

struct JpegKind {
  int quality = 90;
  bool baseline_steps = true;                 ///< no step above 255; else up to 32767, in 16 bits
  std::vector<Steps> tables;                  ///< in place of those of the quality; the first is of the luma
  std::optional<std::array<int, 2>> sampling; ///< of the luma against 1 x 1 of the others, across and down
  bool progressive = false, arithmetic = false, full_chroma = false;
  bool adobe = true; ///< four channels: with the Adobe marker
  bool ycck = false; ///< four channels: as YCCK
  bool jfif = true;
  int unit = 0, x = 1, y = 1; ///< JFIF density
  std::optional<Exif> exif;
  int icc_bytes = 0;
};
void write_jpeg(const std::filesystem::path &file, const Raster &picture, const JpegKind &kind = {});

struct TiffKind {
  int photometric = 2, compression = 1;
  bool tiled = false, planar = false, big = false, big_endian = false;
  int tile = 64;
  int rows_per_strip = 7;
  int orientation = 0; ///< 0: no such tag
  double x = 0, y = 0; ///< 0: no such tags
  int unit = 0;        ///< 0: no such tag
  std::vector<std::uint16_t> extra;
  std::vector<std::array<std::uint16_t, 3>> palette;
  int pages = 1;
  int icc_bytes = 0;
  int sample_format = 1;
};
void write_tiff(const std::filesystem::path &file, const Raster &picture, const TiffKind &kind = {});

/// A little-endian TIFF of one directory at byte 8 whose single strip lies past the end of the file; `next`
/// is the offset of the directory after it.
Bytes bare_tiff(std::uint32_t width, std::uint32_t height, std::uint32_t next);

struct PngKind {
  int colour_type = 2;
  bool interlaced = false;
  int unit = -1; ///< -1: no pHYs
  unsigned x = 0, y = 0;
  std::vector<std::array<std::uint8_t, 3>> palette;
  std::vector<std::uint8_t> palette_alpha;
  std::optional<int> see_through; ///< gray: the sample value that is transparent
};
void write_png(const std::filesystem::path &file, const Raster &picture, const PngKind &kind = {});

/// The whole of a JPEG as libjpeg gives it at so many eighths, in RGB or gray.
Raster decode_jpeg(const std::filesystem::path &file, int eighths);

} // namespace made
