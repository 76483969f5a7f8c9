// The writers behind make_pictures.h. A library that fails here aborts the test program: it is the test's own
// fault.
#include "tests/engine/picture/make_pictures.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <iterator>
#include <memory>
#include <unistd.h>

#include <jpeglib.h>
#include <png.h>
#include <tiffio.h>

namespace made {

namespace {

std::size_t index_of(const Raster &r, int x, int y, int c) {
  return (static_cast<std::size_t>(y) * static_cast<std::size_t>(r.width) + static_cast<std::size_t>(x)) *
             static_cast<std::size_t>(r.channels) +
         static_cast<std::size_t>(c);
}

using File = std::unique_ptr<std::FILE, int (*)(std::FILE *)>;
File open_file(const std::filesystem::path &path, const char *mode) {
  File file(std::fopen(path.c_str(), mode), std::fclose);
  if (!file) std::abort();
  return file;
}

// The samples [first, first + count) of a row by `stride`, packed as TIFF and PNG pack them; 16 bits in the
// byte order asked for.
Bytes packed(const Raster &r, int y, int x0, int count, int c0, int channels, bool big_endian) {
  Bytes out;
  unsigned pending = 0, pending_bits = 0;
  for (int x = x0; x < x0 + count; ++x)
    for (int c = c0; c < c0 + channels; ++c) {
      const unsigned value = x < r.width && y < r.height ? r.at(x, y, c) : 0;
      if (r.bits == 16) {
        out.push_back(static_cast<std::uint8_t>(big_endian ? value >> 8 : value));
        out.push_back(static_cast<std::uint8_t>(big_endian ? value : value >> 8));
        continue;
      }
      pending = pending << r.bits | value;
      pending_bits += static_cast<unsigned>(r.bits);
      while (pending_bits >= 8) {
        pending_bits -= 8;
        out.push_back(static_cast<std::uint8_t>(pending >> pending_bits));
      }
    }
  if (pending_bits > 0) out.push_back(static_cast<std::uint8_t>(pending << (8 - pending_bits)));
  return out;
}

} // namespace

void write_bytes(const std::filesystem::path &file, const Bytes &bytes) {
  std::ofstream(file, std::ios::binary)
      .write(reinterpret_cast<const char *>(bytes.data()), static_cast<std::streamsize>(bytes.size()));
}

Bytes read_bytes(const std::filesystem::path &file) {
  std::ifstream in(file, std::ios::binary);
  return Bytes(std::istreambuf_iterator<char>(in), {});
}

std::uint16_t &Raster::at(int x, int y, int c) { return samples[index_of(*this, x, y, c)]; }
std::uint16_t Raster::at(int x, int y, int c) const { return samples[index_of(*this, x, y, c)]; }

Raster busy(int width, int height, int channels, int bits) {
  Raster r{width, height, channels, bits, {}};
  const double most = (1 << bits) - 1;
  std::uint32_t noise = 12345;
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x)
      for (int c = 0; c < channels; ++c) {
        noise = noise * 1664525u + 1013904223u;
        const double ramp = static_cast<double>(x * (c + 1) + y * 2) / (width * (c + 1) + height * 2);
        const double wave = 0.25 * std::sin(0.31 * x + 0.17 * y * (c + 1));
        const double grain = 0.1 * (static_cast<double>(noise >> 16) / 65536 - 0.5);
        r.samples.push_back(
            static_cast<std::uint16_t>(std::lround(std::clamp(ramp + wave + grain, 0.0, 1.0) * most)));
      }
  return r;
}

Raster counted(int width, int height, int step) {
  Raster r{width, height, 1, 8, {}};
  for (int i = 1; i <= width * height; ++i) r.samples.push_back(static_cast<std::uint16_t>(i * step));
  return r;
}

namespace {

// Writes numbers in one byte order.
class ExifWriter {
public:
  explicit ExifWriter(bool big) : big_(big) {}
  void number(std::uint32_t value, int bytes) {
    for (int i = 0; i < bytes; ++i)
      out.push_back(static_cast<std::uint8_t>(value >> 8 * (big_ ? bytes - 1 - i : i)));
  }
  void entry(int tag, int type, std::uint32_t value) {
    number(static_cast<std::uint32_t>(tag), 2);
    number(static_cast<std::uint32_t>(type), 2);
    number(1, 4);
    number(value, type == 3 ? 2 : 4);
    if (type == 3) number(0, 2);
  }
  Bytes out;

private:
  bool big_;
};

} // namespace

Bytes exif_segment(const Exif &exif) {
  ExifWriter w(exif.big_endian);
  for (const char c : {'E', 'x', 'i', 'f', '\0', '\0'}) w.out.push_back(static_cast<std::uint8_t>(c));
  w.out.insert(w.out.end(), 2, exif.big_endian ? 'M' : 'I');
  w.number(42, 2);
  w.number(8, 4);
  const bool density = exif.x > 0;
  const std::uint32_t entries = (exif.orientation ? 1u : 0u) + (density ? 2u : 0u) + (exif.unit ? 1u : 0u);
  const std::uint32_t values = 8 + 2 + entries * 12 + 4;
  w.number(entries, 2);
  if (exif.orientation) w.entry(0x0112, 3, static_cast<std::uint32_t>(exif.orientation));
  if (density) {
    w.entry(0x011A, 5, values);
    w.entry(0x011B, 5, values + 8);
  }
  if (exif.unit) w.entry(0x0128, 3, static_cast<std::uint32_t>(exif.unit));
  w.number(0, 4);
  for (const double value : {exif.x, exif.y}) {
    if (!density) break;
    w.number(static_cast<std::uint32_t>(std::lround(value * 100)), 4);
    w.number(100, 4);
  }
  return w.out;
}

namespace {

void set_colour(jpeg_compress_struct &jpeg, const Raster &picture, const JpegKind &kind) {
  jpeg.input_components = picture.channels;
  jpeg.in_color_space = picture.channels == 1 ? JCS_GRAYSCALE : picture.channels == 3 ? JCS_RGB : JCS_CMYK;
  jpeg_set_defaults(&jpeg);
  if (picture.channels == 4) jpeg_set_colorspace(&jpeg, kind.ycck ? JCS_YCCK : JCS_CMYK);
  jpeg.write_Adobe_marker = picture.channels == 4 && kind.adobe ? TRUE : FALSE;
  jpeg.write_JFIF_header = kind.jfif && picture.channels != 4 ? TRUE : FALSE;
  jpeg.density_unit = static_cast<UINT8>(kind.unit);
  jpeg.X_density = static_cast<UINT16>(kind.x);
  jpeg.Y_density = static_cast<UINT16>(kind.y);
  if (kind.sampling) {
    jpeg.comp_info[0].h_samp_factor = (*kind.sampling)[0];
    jpeg.comp_info[0].v_samp_factor = (*kind.sampling)[1];
  }
  if (kind.full_chroma) jpeg.comp_info[0].h_samp_factor = jpeg.comp_info[0].v_samp_factor = 1;
}

void set_steps(jpeg_compress_struct &jpeg, const JpegKind &kind) {
  jpeg_set_quality(&jpeg, kind.quality, kind.baseline_steps ? TRUE : FALSE);
  for (std::size_t i = 0; i < kind.tables.size(); ++i) {
    const std::vector<unsigned> steps(kind.tables[i].begin(), kind.tables[i].end());
    jpeg_add_quant_table(&jpeg, static_cast<int>(i), steps.data(), 100, FALSE);
  }
}

} // namespace

void write_jpeg(const std::filesystem::path &path, const Raster &picture, const JpegKind &kind) {
  const File file = open_file(path, "wb");
  jpeg_compress_struct jpeg{};
  jpeg_error_mgr errors{};
  jpeg.err = jpeg_std_error(&errors);
  errors.trace_level = -1; // no word about steps of 16 bits, which are meant
  jpeg_create_compress(&jpeg);
  jpeg_stdio_dest(&jpeg, file.get());
  jpeg.image_width = static_cast<JDIMENSION>(picture.width);
  jpeg.image_height = static_cast<JDIMENSION>(picture.height);
  set_colour(jpeg, picture, kind);
  set_steps(jpeg, kind);
  if (kind.progressive) jpeg_simple_progression(&jpeg);
  jpeg.arith_code = kind.arithmetic ? TRUE : FALSE;
  jpeg_start_compress(&jpeg, TRUE);
  if (kind.exif) {
    const Bytes segment = exif_segment(*kind.exif);
    jpeg_write_marker(&jpeg, JPEG_APP0 + 1, segment.data(), static_cast<unsigned>(segment.size()));
  }
  if (kind.icc_bytes) {
    const Bytes profile(static_cast<std::size_t>(kind.icc_bytes), 7);
    jpeg_write_icc_profile(&jpeg, profile.data(), static_cast<unsigned>(profile.size()));
  }
  for (int y = 0; y < picture.height; ++y) {
    Bytes row = packed(picture, y, 0, picture.width, 0, picture.channels, false);
    JSAMPROW pointer = row.data();
    jpeg_write_scanlines(&jpeg, &pointer, 1);
  }
  jpeg_finish_compress(&jpeg);
  jpeg_destroy_compress(&jpeg);
}

Raster decode_jpeg(const std::filesystem::path &path, int eighths) {
  const File file = open_file(path, "rb");
  jpeg_decompress_struct jpeg{};
  jpeg_error_mgr errors{};
  jpeg.err = jpeg_std_error(&errors);
  jpeg_create_decompress(&jpeg);
  jpeg_stdio_src(&jpeg, file.get());
  jpeg_read_header(&jpeg, TRUE);
  jpeg.scale_num = static_cast<unsigned>(eighths);
  jpeg.scale_denom = 8;
  jpeg_start_decompress(&jpeg);
  Raster r{static_cast<int>(jpeg.output_width),
           static_cast<int>(jpeg.output_height),
           jpeg.output_components,
           8,
           {}};
  Bytes row(jpeg.output_width * static_cast<std::size_t>(jpeg.output_components));
  while (jpeg.output_scanline < jpeg.output_height) {
    JSAMPROW pointer = row.data();
    jpeg_read_scanlines(&jpeg, &pointer, 1);
    r.samples.insert(r.samples.end(), row.begin(), row.end());
  }
  jpeg_finish_decompress(&jpeg);
  jpeg_destroy_decompress(&jpeg);
  return r;
}

namespace {

void set_tags(TIFF *tiff, const Raster &picture, const TiffKind &kind) {
  TIFFSetField(tiff, TIFFTAG_IMAGEWIDTH, picture.width);
  TIFFSetField(tiff, TIFFTAG_IMAGELENGTH, picture.height);
  TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, picture.bits);
  TIFFSetField(tiff, TIFFTAG_SAMPLESPERPIXEL, picture.channels);
  TIFFSetField(tiff, TIFFTAG_SAMPLEFORMAT, kind.sample_format);
  TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC, kind.photometric);
  TIFFSetField(tiff, TIFFTAG_COMPRESSION, kind.compression);
  TIFFSetField(tiff, TIFFTAG_PLANARCONFIG, kind.planar ? PLANARCONFIG_SEPARATE : PLANARCONFIG_CONTIG);
  if (kind.compression == COMPRESSION_JPEG && kind.photometric == PHOTOMETRIC_YCBCR)
    TIFFSetField(tiff, TIFFTAG_JPEGCOLORMODE, JPEGCOLORMODE_RGB);
  if (kind.orientation) TIFFSetField(tiff, TIFFTAG_ORIENTATION, kind.orientation);
  if (kind.x > 0) TIFFSetField(tiff, TIFFTAG_XRESOLUTION, kind.x);
  if (kind.y > 0) TIFFSetField(tiff, TIFFTAG_YRESOLUTION, kind.y);
  if (kind.unit) TIFFSetField(tiff, TIFFTAG_RESOLUTIONUNIT, kind.unit);
  if (!kind.extra.empty())
    TIFFSetField(tiff, TIFFTAG_EXTRASAMPLES, static_cast<int>(kind.extra.size()), kind.extra.data());
  if (kind.photometric == PHOTOMETRIC_SEPARATED) TIFFSetField(tiff, TIFFTAG_INKSET, INKSET_CMYK);
  if (kind.icc_bytes) {
    const Bytes profile(static_cast<std::size_t>(kind.icc_bytes), 7);
    TIFFSetField(tiff, TIFFTAG_ICCPROFILE, kind.icc_bytes, profile.data());
  }
  std::array<std::vector<std::uint16_t>, 3> map;
  for (const auto &colour : kind.palette)
    for (std::size_t c = 0; c < 3; ++c) map[c].push_back(colour[c]);
  if (!kind.palette.empty())
    TIFFSetField(tiff, TIFFTAG_COLORMAP, map[0].data(), map[1].data(), map[2].data());
}

constexpr bool machine_big_endian =
    false; // libtiff swaps 16-bit samples by itself; it takes the machine's order

void write_tiles(TIFF *tiff, const Raster &picture, const TiffKind &kind, int plane, int channels) {
  for (int top = 0; top < picture.height; top += kind.tile)
    for (int left = 0; left < picture.width; left += kind.tile) {
      Bytes tile;
      for (int y = top; y < top + kind.tile; ++y) {
        const Bytes row = packed(picture, y, left, kind.tile, plane, channels, machine_big_endian);
        tile.insert(tile.end(), row.begin(), row.end());
      }
      TIFFWriteTile(tiff, tile.data(), static_cast<std::uint32_t>(left), static_cast<std::uint32_t>(top), 0,
                    static_cast<std::uint16_t>(plane));
    }
}

void write_strips(TIFF *tiff, const Raster &picture, int plane, int channels) {
  for (int y = 0; y < picture.height; ++y) {
    Bytes row = packed(picture, y, 0, picture.width, plane, channels, machine_big_endian);
    TIFFWriteScanline(tiff, row.data(), static_cast<std::uint32_t>(y), static_cast<std::uint16_t>(plane));
  }
}

} // namespace

void write_tiff(const std::filesystem::path &path, const Raster &picture, const TiffKind &kind) {
  const std::string mode = std::string("w") + (kind.big ? "8" : "") + (kind.big_endian ? "b" : "l");
  TIFF *tiff = TIFFOpen(path.c_str(), mode.c_str());
  if (!tiff) std::abort();
  for (int page = 0; page < kind.pages; ++page) {
    set_tags(tiff, picture, kind);
    if (kind.tiled) {
      TIFFSetField(tiff, TIFFTAG_TILEWIDTH, kind.tile);
      TIFFSetField(tiff, TIFFTAG_TILELENGTH, kind.tile);
    } else {
      TIFFSetField(tiff, TIFFTAG_ROWSPERSTRIP, kind.rows_per_strip);
    }
    const int channels = kind.planar ? 1 : picture.channels;
    for (int plane = 0; plane < picture.channels; plane += channels)
      kind.tiled ? write_tiles(tiff, picture, kind, plane, channels)
                 : write_strips(tiff, picture, plane, channels);
    TIFFWriteDirectory(tiff);
  }
  TIFFClose(tiff);
}

Bytes bare_tiff(std::uint32_t width, std::uint32_t height, std::uint32_t next) {
  ExifWriter w(false); // an Exif segment is a small TIFF, so its writer serves
  w.out = {'I', 'I'};
  w.number(42, 2);
  w.number(8, 4);
  w.number(4, 2);
  w.entry(256, 4, width);
  w.entry(257, 4, height);
  w.entry(273, 4, 1000);
  w.entry(279, 4, 1);
  w.number(next, 4);
  return w.out;
}

void write_png(const std::filesystem::path &path, const Raster &picture, const PngKind &kind) {
  const File file = open_file(path, "wb");
  png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
  png_infop info = png_create_info_struct(png);
  png_init_io(png, file.get());
  png_set_IHDR(png, info, static_cast<png_uint_32>(picture.width), static_cast<png_uint_32>(picture.height),
               picture.bits, kind.colour_type, kind.interlaced ? PNG_INTERLACE_ADAM7 : PNG_INTERLACE_NONE,
               PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  if (kind.unit >= 0) png_set_pHYs(png, info, kind.x, kind.y, kind.unit);
  std::vector<png_color> palette;
  for (const auto &colour : kind.palette) palette.push_back({colour[0], colour[1], colour[2]});
  if (!palette.empty()) png_set_PLTE(png, info, palette.data(), static_cast<int>(palette.size()));
  if (!kind.palette_alpha.empty())
    png_set_tRNS(png, info, kind.palette_alpha.data(), static_cast<int>(kind.palette_alpha.size()), nullptr);
  if (kind.see_through) {
    png_color_16 gray{};
    gray.gray = static_cast<png_uint_16>(*kind.see_through);
    png_set_tRNS(png, info, nullptr, 0, &gray);
  }
  std::vector<Bytes> rows;
  std::vector<png_bytep> pointers;
  for (int y = 0; y < picture.height; ++y)
    rows.push_back(packed(picture, y, 0, picture.width, 0, picture.channels, true));
  for (Bytes &row : rows) pointers.push_back(row.data());
  png_write_info(png, info);
  png_write_image(png, pointers.data());
  png_write_end(png, info);
  png_destroy_write_struct(&png, &info);
}

} // namespace made
