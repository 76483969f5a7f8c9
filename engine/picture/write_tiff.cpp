// Pixels -> TIFF through libtiff. The only ways in are the functions of write_tiff.h; tested in
// tests/engine/picture/write_tiff.test.cpp.
#include "engine/picture/write_tiff.h"

#include <algorithm>
#include <cstdarg>
#include <memory>

#include <tiffio.h>

namespace stoneproof {

namespace {

struct Close {
  void operator()(TIFF *tiff) const { TIFFClose(tiff); }
};
using Handle = std::unique_ptr<TIFF, Close>;

Fault unwritable(const std::filesystem::path &file) {
  return {"the picture could not be written", file.string(),
          "See that the folder can be written to and has room."};
}

Handle open(const std::filesystem::path &file, PixelSize size) {
  const auto silent = [](TIFF *, void *, const char *, const char *, va_list) { return 1; };
  const std::unique_ptr<TIFFOpenOptions, decltype(&TIFFOpenOptionsFree)> options(TIFFOpenOptionsAlloc(),
                                                                                 TIFFOpenOptionsFree);
  TIFFOpenOptionsSetErrorHandlerExtR(options.get(), silent, nullptr);
  TIFFOpenOptionsSetWarningHandlerExtR(options.get(), silent, nullptr);
  Handle tiff(TIFFOpenExt(file.c_str(), "w", options.get()));
  if (!tiff) return tiff;
  TIFFSetField(tiff.get(), TIFFTAG_IMAGEWIDTH, static_cast<std::uint32_t>(size.width));
  TIFFSetField(tiff.get(), TIFFTAG_IMAGELENGTH, static_cast<std::uint32_t>(size.height));
  TIFFSetField(tiff.get(), TIFFTAG_PLANARCONFIG, PLANARCONFIG_CONTIG);
  return tiff;
}

int photometric_of(TiffColours colours) {
  switch (colours) {
  case TiffColours::white_is_zero: return PHOTOMETRIC_MINISWHITE;
  case TiffColours::rgb: return PHOTOMETRIC_RGB;
  case TiffColours::cmyk: return PHOTOMETRIC_SEPARATED;
  case TiffColours::icc_lab: return PHOTOMETRIC_ICCLAB;
  case TiffColours::palette: return PHOTOMETRIC_PALETTE;
  default: return PHOTOMETRIC_MINISBLACK;
  }
}

void set_palette(TIFF *tiff, const TiffForm &form) {
  const std::size_t entries = std::size_t{1} << form.bits;
  std::array<std::vector<std::uint16_t>, 3> columns;
  for (std::size_t channel = 0; channel < 3; ++channel) {
    columns[channel].resize(entries);
    for (std::size_t i = 0; i < std::min(entries, form.palette.size()); ++i)
      columns[channel][i] = static_cast<std::uint16_t>(form.palette[i][channel] * 257);
  }
  TIFFSetField(tiff, TIFFTAG_COLORMAP, columns[0].data(), columns[1].data(), columns[2].data());
}

} // namespace

Outcome<Done> write_tiff(const std::filesystem::path &file, const TiffForm &form, std::string_view rows) {
  Handle tiff = open(file, form.size);
  if (!tiff) return unwritable(file);
  TIFFSetField(tiff.get(), TIFFTAG_SAMPLESPERPIXEL, static_cast<std::uint16_t>(form.channels));
  TIFFSetField(tiff.get(), TIFFTAG_BITSPERSAMPLE, static_cast<std::uint16_t>(form.bits));
  TIFFSetField(tiff.get(), TIFFTAG_PHOTOMETRIC, static_cast<std::uint16_t>(photometric_of(form.colours)));
  TIFFSetField(tiff.get(), TIFFTAG_COMPRESSION, static_cast<std::uint16_t>(COMPRESSION_ADOBE_DEFLATE));
  TIFFSetField(tiff.get(), TIFFTAG_ZIPQUALITY, 1); // the fastest: the file is read once or twice
  TIFFSetField(tiff.get(), TIFFTAG_ROWSPERSTRIP, TIFFDefaultStripSize(tiff.get(), 0));
  if (!form.icc.empty())
    TIFFSetField(tiff.get(), TIFFTAG_ICCPROFILE, static_cast<std::uint32_t>(form.icc.size()),
                 form.icc.data());
  if (form.colours == TiffColours::palette) set_palette(tiff.get(), form);
  std::vector<std::uint8_t> row(form.row_bytes());
  for (std::int64_t y = 0; y < form.size.height; ++y) {
    const std::size_t from = std::min(rows.size(), static_cast<std::size_t>(y) * row.size());
    const std::string_view given = rows.substr(from, row.size());
    std::fill(std::copy(given.begin(), given.end(), row.begin()), row.end(), std::uint8_t{0});
    if (form.bits == 16 && !TIFFIsBigEndian(tiff.get()))
      TIFFSwabArrayOfShort(reinterpret_cast<std::uint16_t *>(row.data()),
                           static_cast<tmsize_t>(row.size() / 2));
    if (TIFFWriteScanline(tiff.get(), row.data(), static_cast<std::uint32_t>(y), 0) != 1)
      return unwritable(file);
  }
  return TIFFFlush(tiff.get()) == 1 ? Outcome<Done>(Done{}) : unwritable(file);
}

Outcome<Done> write_fax_tiff(const std::filesystem::path &file, const FaxForm &form, std::string_view coded) {
  Handle tiff = open(file, form.size);
  if (!tiff) return unwritable(file);
  TIFFSetField(tiff.get(), TIFFTAG_SAMPLESPERPIXEL, static_cast<std::uint16_t>(1));
  TIFFSetField(tiff.get(), TIFFTAG_BITSPERSAMPLE, static_cast<std::uint16_t>(1));
  TIFFSetField(tiff.get(), TIFFTAG_PHOTOMETRIC,
               static_cast<std::uint16_t>(form.inverted ? PHOTOMETRIC_MINISBLACK : PHOTOMETRIC_MINISWHITE));
  const bool group4 = form.k < 0;
  TIFFSetField(tiff.get(), TIFFTAG_COMPRESSION,
               static_cast<std::uint16_t>(group4 ? COMPRESSION_CCITTFAX4 : COMPRESSION_CCITTFAX3));
  if (!group4) {
    const std::uint32_t options =
        (form.k > 0 ? GROUP3OPT_2DENCODING : 0u) | (form.byte_aligned ? GROUP3OPT_FILLBITS : 0u);
    TIFFSetField(tiff.get(), TIFFTAG_GROUP3OPTIONS, options);
  }
  TIFFSetField(tiff.get(), TIFFTAG_ROWSPERSTRIP, static_cast<std::uint32_t>(form.size.height));
  std::string data(coded); // libtiff takes it as writable
  if (TIFFWriteRawStrip(tiff.get(), 0, data.data(), static_cast<tmsize_t>(data.size())) < 0)
    return unwritable(file);
  return TIFFFlush(tiff.get()) == 1 ? Outcome<Done>(Done{}) : unwritable(file);
}

} // namespace stoneproof
