// Writes a very large 24-bit TIFF of low entropy, for measuring memory: make_large FILE.tif SIDE strips|tiles
#include <cstdint>
#include <cstdlib>
#include <string>
#include <vector>

#include <tiffio.h>

int main(int count, char **words) {
  if (count != 4) return 2;
  const auto side = static_cast<std::uint32_t>(std::atoi(words[2]));
  const bool tiles = words[3] == std::string("tiles");
  constexpr std::uint32_t tile = 256, rows = 16;
  TIFF *tiff = TIFFOpen(words[1], "w8");
  if (!tiff) return 4;
  TIFFSetField(tiff, TIFFTAG_IMAGEWIDTH, side);
  TIFFSetField(tiff, TIFFTAG_IMAGELENGTH, side);
  TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, 8);
  TIFFSetField(tiff, TIFFTAG_SAMPLESPERPIXEL, 3);
  TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC, PHOTOMETRIC_RGB);
  TIFFSetField(tiff, TIFFTAG_PLANARCONFIG, PLANARCONFIG_CONTIG);
  TIFFSetField(tiff, TIFFTAG_COMPRESSION, COMPRESSION_LZW);
  if (tiles) {
    TIFFSetField(tiff, TIFFTAG_TILEWIDTH, tile);
    TIFFSetField(tiff, TIFFTAG_TILELENGTH, tile);
  } else {
    TIFFSetField(tiff, TIFFTAG_ROWSPERSTRIP, rows);
  }
  std::vector<std::uint8_t> bytes(tiles ? std::size_t{tile} * tile * 3 : std::size_t{side} * 3);
  const std::uint32_t across = tiles ? (side + tile - 1) / tile : 1, down = tiles ? across : side;
  for (std::uint32_t y = 0; y < down; ++y)
    for (std::uint32_t x = 0; x < across; ++x) {
      for (std::size_t i = 0; i < bytes.size(); ++i)
        bytes[i] = static_cast<std::uint8_t>(i / 999 + y / 7 + x);
      const bool sound = tiles ? TIFFWriteTile(tiff, bytes.data(), x * tile, y * tile, 0, 0) > 0
                               : TIFFWriteScanline(tiff, bytes.data(), y, 0) == 1;
      if (!sound) return 4;
    }
  TIFFClose(tiff);
}
