// What one directory of a TIFF says. Only ways in: read_tiff_header and the two namings.
// Tested in tests/engine/picture/facts.test.cpp.
#include "engine/picture/tiff_session.h"

#include <algorithm>
#include <cctype>
#include <fmt/format.h>
#include <string_view>

namespace stoneproof {

namespace {

// Names of inks follow each other, each with a zero after it (TIFF 6.0, tag 333); libtiff holds the count of
// inks (tag 334) to the names that are there.
bool begins_with_cmyk(TIFF *tiff) {
  const char *names = nullptr;
  if (TIFFGetField(tiff, TIFFTAG_INKNAMES, &names) != 1 ||
      tiff_tag<std::uint16_t>(tiff, TIFFTAG_NUMBEROFINKS, 0) < 4)
    return false;
  for (const std::string_view ink : {"cyan", "magenta", "yellow", "black"}) {
    const std::string_view name = names;
    const auto alike = [](unsigned char a, char b) { return std::tolower(a) == b; };
    if (!std::equal(name.begin(), name.end(), ink.begin(), ink.end(), alike)) return false;
    names += name.size() + 1;
  }
  return true;
}

void read_alpha(TIFF *tiff, TiffHeader &header) {
  std::uint16_t count = 0;
  const std::uint16_t *kinds = nullptr;
  if (TIFFGetField(tiff, TIFFTAG_EXTRASAMPLES, &count, &kinds) != 1) {
    // A fourth channel of RGB, or a second of gray, that nothing is said of: common readers take it as
    // opacity.
    const bool rgb = header.photometric == PHOTOMETRIC_RGB,
               gray = header.photometric == PHOTOMETRIC_MINISBLACK;
    if ((rgb && header.samples == 4) || (gray && header.samples == 2)) header.alpha = header.samples - 1;
    return;
  }
  if (count > header.samples) return;
  for (int i = 0; i < count; ++i) {
    if (kinds[i] != EXTRASAMPLE_ASSOCALPHA && kinds[i] != EXTRASAMPLE_UNASSALPHA) continue;
    header.alpha = header.samples - count + i;
    header.multiplied = kinds[i] == EXTRASAMPLE_ASSOCALPHA;
    return;
  }
}

} // namespace

TiffHeader read_tiff_header(TIFF *tiff) {
  const auto word = [tiff](std::uint32_t number, int otherwise) {
    return int{tiff_tag<std::uint16_t>(tiff, number, static_cast<std::uint16_t>(otherwise))};
  };
  TiffHeader header;
  header.width = tiff_tag<std::uint32_t>(tiff, TIFFTAG_IMAGEWIDTH, 0);
  header.height = tiff_tag<std::uint32_t>(tiff, TIFFTAG_IMAGELENGTH, 0);
  header.bits = word(TIFFTAG_BITSPERSAMPLE, 1);
  header.samples = word(TIFFTAG_SAMPLESPERPIXEL, 1);
  header.sample_format = word(TIFFTAG_SAMPLEFORMAT, SAMPLEFORMAT_UINT);
  header.compression = word(TIFFTAG_COMPRESSION, COMPRESSION_NONE);
  header.orientation = word(TIFFTAG_ORIENTATION, 1);
  header.planar =
      word(TIFFTAG_PLANARCONFIG, PLANARCONFIG_CONTIG) == PLANARCONFIG_SEPARATE && header.samples > 1;
  header.tiled = TIFFIsTiled(tiff) != 0;
  const bool fax = header.compression == COMPRESSION_CCITTRLE ||
                   header.compression == COMPRESSION_CCITTRLEW ||
                   header.compression == COMPRESSION_CCITTFAX3 || header.compression == COMPRESSION_CCITTFAX4;
  const int usual = header.samples >= 3 ? PHOTOMETRIC_RGB
                    : fax               ? PHOTOMETRIC_MINISWHITE
                                        : PHOTOMETRIC_MINISBLACK;
  header.photometric = word(TIFFTAG_PHOTOMETRIC, usual);
  header.cmyk = header.photometric == PHOTOMETRIC_SEPARATED && header.samples >= 4 &&
                (word(TIFFTAG_INKSET, INKSET_CMYK) == INKSET_CMYK || begins_with_cmyk(tiff));
  read_alpha(tiff, header);
  return header;
}

std::string tiff_compression_name(int compression) {
  switch (compression) {
  case COMPRESSION_NONE: return "none";
  case COMPRESSION_CCITTRLE:
  case COMPRESSION_CCITTRLEW: return "CCITT RLE";
  case COMPRESSION_CCITTFAX3: return "CCITT G3";
  case COMPRESSION_CCITTFAX4: return "CCITT G4";
  case COMPRESSION_LZW: return "LZW";
  case COMPRESSION_OJPEG: return "old JPEG";
  case COMPRESSION_JPEG: return "JPEG";
  case COMPRESSION_ADOBE_DEFLATE:
  case COMPRESSION_DEFLATE: return "Deflate";
  case COMPRESSION_PACKBITS: return "PackBits";
  case COMPRESSION_JP2000: return "JPEG 2000";
  case COMPRESSION_LZMA: return "LZMA";
  case COMPRESSION_ZSTD: return "ZSTD";
  case COMPRESSION_WEBP: return "WebP";
  case COMPRESSION_JXL: return "JPEG XL";
  case COMPRESSION_LERC: return "LERC";
  case COMPRESSION_JBIG: return "JBIG";
  case COMPRESSION_THUNDERSCAN: return "ThunderScan";
  case COMPRESSION_NEXT: return "NeXT";
  case COMPRESSION_PIXARLOG: return "PixarLog";
  case COMPRESSION_SGILOG:
  case COMPRESSION_SGILOG24: return "SGI LogLuv";
  default: return fmt::format("code {}", compression);
  }
}

ColourModel tiff_colour(const TiffHeader &header) {
  switch (header.photometric) {
  case PHOTOMETRIC_MINISWHITE:
  case PHOTOMETRIC_MINISBLACK: return header.bits == 1 ? ColourModel::bilevel : ColourModel::gray;
  case PHOTOMETRIC_MASK: return ColourModel::bilevel;
  case PHOTOMETRIC_RGB:
  case PHOTOMETRIC_YCBCR: return ColourModel::rgb;
  case PHOTOMETRIC_PALETTE: return ColourModel::indexed;
  case PHOTOMETRIC_SEPARATED: return header.cmyk ? ColourModel::cmyk : ColourModel::other;
  case PHOTOMETRIC_CIELAB:
  case PHOTOMETRIC_ICCLAB:
  case PHOTOMETRIC_ITULAB: return ColourModel::lab;
  default: return ColourModel::other;
  }
}

} // namespace stoneproof
