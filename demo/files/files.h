// Writes painted pictures as the files that scanners, phones and mail programs leave behind.
#pragma once

#include "demo/paint/canvas.h"

#include <filesystem>
#include <string>

namespace stoneproof::demo {

enum class Samples {
  rgb8,
  gray8,
  gray16,
  bilevel,
  indexed,
  rgba8,
  cmyk8
}; ///< indexed: PNG, a fixed palette of 216 colours; rgba8: PNG; cmyk8: TIFF, every ink as dark as the gray
   ///< is

/// An ICC profile, e.g. that which a JPEG carries; `mistaken` is one of gray, `cut_short` ends in the middle.
enum class Profile { none, srgb, wide, mistaken, cut_short };

/// How a picture is stored. Each writer uses what its format can say.
struct Storage {
  Samples samples = Samples::rgb8;
  double ppi = 0;                  ///< 0: the file names no density
  int orientation = 1;             ///< JPEG: as in Exif, 1, 6 or 8; the pixels are stored turned to match
  std::string camera;              ///< JPEG: Exif camera maker, if any
  int quality = 86;                ///< JPEG
  bool progressive = false;        ///< JPEG
  bool tiled = false;              ///< TIFF
  bool packed = true;              ///< TIFF: LZW, or fax group 4 for bilevel
  int pages = 1;                   ///< TIFF: so many pictures, all the same
  Profile profile = Profile::none; ///< JPEG
  int before = 0;                  ///< quality at which it was saved as a JPEG before; 0: it was not
  double enlarged = 1;             ///< so many times, by software, after it was scanned
};

/// What comes back of a canvas that was saved as a JPEG.
void pass_through_jpeg(Canvas &canvas, int quality);

/// The whole file; `how` as in write_jpeg.
std::string jpeg_bytes(const Canvas &canvas, const Storage &how);

/// Each throws std::runtime_error naming the file when it cannot be written.
void write_jpeg(const std::filesystem::path &file, const Canvas &canvas, const Storage &how);
void write_tiff(const std::filesystem::path &file, const Canvas &canvas, const Storage &how);
void write_png(const std::filesystem::path &file, const Canvas &canvas, const Storage &how);

/// The bytes of a profile; none for Profile::none.
std::vector<unsigned char> profile_bytes(Profile profile);

/// One row of samples, 16-bit ones in the machine's own byte order, bilevel packed with 1 for black.
std::vector<unsigned char> packed_row(const Canvas &canvas, int y, Samples samples);

/// Cuts a written file down to a share of its bytes, as a transfer that broke off does.
void break_off(const std::filesystem::path &file, double share);

} // namespace stoneproof::demo
