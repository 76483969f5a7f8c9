// TIFF files by libtiff: strips or tiles, 1, 8 and 16 bits. Only way in: files.h.
#include "demo/files/files.h"

#include <memory>
#include <stdexcept>

#include <tiffio.h>

namespace stoneproof::demo {

namespace {

constexpr int tile_side = 256;

void describe(TIFF *tiff, const Canvas &canvas, const Storage &how) {
  const bool bilevel = how.samples == Samples::bilevel, colour = how.samples == Samples::rgb8;
  TIFFSetField(tiff, TIFFTAG_IMAGEWIDTH, canvas.width());
  TIFFSetField(tiff, TIFFTAG_IMAGELENGTH, canvas.height());
  TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, bilevel ? 1 : how.samples == Samples::gray16 ? 16 : 8);
  const bool inks = how.samples == Samples::cmyk8;
  TIFFSetField(tiff, TIFFTAG_SAMPLESPERPIXEL, inks ? 4 : colour ? 3 : 1);
  TIFFSetField(tiff, TIFFTAG_PLANARCONFIG, PLANARCONFIG_CONTIG);
  TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC,
               bilevel  ? PHOTOMETRIC_MINISWHITE
               : inks   ? PHOTOMETRIC_SEPARATED
               : colour ? PHOTOMETRIC_RGB
                        : PHOTOMETRIC_MINISBLACK);
  TIFFSetField(tiff, TIFFTAG_COMPRESSION,
               !how.packed ? COMPRESSION_NONE
               : bilevel   ? COMPRESSION_CCITTFAX4
                           : COMPRESSION_LZW);
  if (how.packed && !bilevel) TIFFSetField(tiff, TIFFTAG_PREDICTOR, PREDICTOR_HORIZONTAL);
  if (how.ppi > 0) {
    TIFFSetField(tiff, TIFFTAG_RESOLUTIONUNIT, RESUNIT_INCH);
    TIFFSetField(tiff, TIFFTAG_XRESOLUTION, how.ppi);
    TIFFSetField(tiff, TIFFTAG_YRESOLUTION, how.ppi);
  }
  if (how.tiled) {
    TIFFSetField(tiff, TIFFTAG_TILEWIDTH, tile_side);
    TIFFSetField(tiff, TIFFTAG_TILELENGTH, tile_side);
  } else {
    TIFFSetField(tiff, TIFFTAG_ROWSPERSTRIP, 64);
  }
}

bool write_tiles(TIFF *tiff, const Canvas &canvas, Samples samples) {
  for (int top = 0; top < canvas.height(); top += tile_side)
    for (int left = 0; left < canvas.width(); left += tile_side) {
      Canvas tile(tile_side, tile_side);
      for (int y = 0; y < tile_side; ++y)
        for (int x = 0; x < tile_side; ++x) tile.set(x, y, canvas.get_inside(left + x, top + y));
      std::vector<unsigned char> bytes;
      for (int y = 0; y < tile_side; ++y) {
        const auto row = packed_row(tile, y, samples);
        bytes.insert(bytes.end(), row.begin(), row.end());
      }
      if (TIFFWriteTile(tiff, bytes.data(), static_cast<uint32_t>(left), static_cast<uint32_t>(top), 0, 0) <
          0)
        return false;
    }
  return true;
}

bool write_strips(TIFF *tiff, const Canvas &canvas, Samples samples) {
  for (int y = 0; y < canvas.height(); ++y) {
    auto row = packed_row(canvas, y, samples);
    if (TIFFWriteScanline(tiff, row.data(), static_cast<uint32_t>(y), 0) < 0) return false;
  }
  return true;
}

} // namespace

void write_tiff(const std::filesystem::path &file, const Canvas &canvas, const Storage &how) {
  const std::unique_ptr<TIFF, void (*)(TIFF *)> tiff(TIFFOpen(file.c_str(), "w"), TIFFClose);
  if (!tiff) throw std::runtime_error("cannot write " + file.string());
  for (int page = 0; page < how.pages; ++page) {
    describe(tiff.get(), canvas, how);
    const bool written = how.tiled ? write_tiles(tiff.get(), canvas, how.samples)
                                   : write_strips(tiff.get(), canvas, how.samples);
    if (!written || TIFFWriteDirectory(tiff.get()) != 1)
      throw std::runtime_error("cannot write " + file.string());
  }
}

} // namespace stoneproof::demo
