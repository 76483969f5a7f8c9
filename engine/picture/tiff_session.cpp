// Opens a TIFF with handlers of its own, so that sessions in several threads do not meet.
// Only ways in: TiffSession and the two namings. Tested in tests/engine/picture/facts.test.cpp.
#include "engine/picture/tiff_session.h"

#include "engine/picture/faults.h"

#include <cstdarg>
#include <cstdio>
#include <cstring>
#include <fmt/format.h>

namespace stoneproof {

namespace {

// What libtiff is told is the file's name. It puts it before some of its messages, whose path is told
// elsewhere.
constexpr char own_name[] = "picture";
constexpr std::string_view own_name_prefix = "picture: ";

} // namespace

Outcome<std::unique_ptr<TiffSession>> TiffSession::open(const PictureFile &file,
                                                        const PictureLimits &limits) {
  std::unique_ptr<TiffSession> session(new TiffSession(file));
  const std::unique_ptr<TIFFOpenOptions, decltype(&TIFFOpenOptionsFree)> options(TIFFOpenOptionsAlloc(),
                                                                                 TIFFOpenOptionsFree);
  TIFFOpenOptionsSetErrorHandlerExtR(options.get(), on_error, session.get());
  TIFFOpenOptionsSetWarningHandlerExtR(options.get(), on_warning, session.get());
  TIFFOpenOptionsSetMaxSingleMemAlloc(options.get(), static_cast<tmsize_t>(limits.most_memory));
  // m: no memory map, in which a file cut short while it is read would kill the program.
  // O: strip offsets are read when they are needed.
  session->tiff_ = TIFFClientOpenExt(
      own_name, "rmO", session.get(), on_read, [](thandle_t, void *, tmsize_t) -> tmsize_t { return 0; },
      on_seek, [](thandle_t) { return 0; },
      [](thandle_t handle) -> toff_t { return static_cast<TiffSession *>(handle)->file_.size(); },
      [](thandle_t, void **, toff_t *) { return 0; }, [](thandle_t, void *, toff_t) {}, options.get());
  if (!session->tiff_) return faults::broken_header(file.path(), "TIFF", session->error());
  session->read_header();
  const PixelSize size{session->header_.width, session->header_.height};
  if (size.width == 0 || size.height == 0)
    return faults::broken_header(file.path(), "TIFF", "it names no width or no height");
  if (!faults::within(size, limits)) return faults::too_many_pixels(file.path(), size, limits);
  session->error_[0] = '\0'; // errors in tags that nobody needs
  return session;
}

TiffSession::~TiffSession() {
  if (tiff_) TIFFClose(tiff_);
}

void TiffSession::read_header() {
  const auto word = [this](std::uint32_t number, int otherwise) {
    return int{tag<std::uint16_t>(number, static_cast<std::uint16_t>(otherwise))};
  };
  header_.width = tag<std::uint32_t>(TIFFTAG_IMAGEWIDTH, 0);
  header_.height = tag<std::uint32_t>(TIFFTAG_IMAGELENGTH, 0);
  header_.bits = word(TIFFTAG_BITSPERSAMPLE, 1);
  header_.samples = word(TIFFTAG_SAMPLESPERPIXEL, 1);
  header_.sample_format = word(TIFFTAG_SAMPLEFORMAT, SAMPLEFORMAT_UINT);
  header_.compression = word(TIFFTAG_COMPRESSION, COMPRESSION_NONE);
  header_.ink_set = word(TIFFTAG_INKSET, INKSET_CMYK);
  header_.orientation = word(TIFFTAG_ORIENTATION, 1);
  header_.planar =
      word(TIFFTAG_PLANARCONFIG, PLANARCONFIG_CONTIG) == PLANARCONFIG_SEPARATE && header_.samples > 1;
  header_.tiled = TIFFIsTiled(tiff_) != 0;
  const bool fax = header_.compression == COMPRESSION_CCITTRLE ||
                   header_.compression == COMPRESSION_CCITTFAX3 ||
                   header_.compression == COMPRESSION_CCITTFAX4;
  const int usual = header_.samples >= 3 ? PHOTOMETRIC_RGB
                    : fax                ? PHOTOMETRIC_MINISWHITE
                                         : PHOTOMETRIC_MINISBLACK;
  header_.photometric = word(TIFFTAG_PHOTOMETRIC, usual);
  std::uint16_t count = 0;
  const std::uint16_t *kinds = nullptr;
  if (TIFFGetField(tiff_, TIFFTAG_EXTRASAMPLES, &count, &kinds) != 1 || count > header_.samples) return;
  for (int i = 0; i < count; ++i) {
    if (kinds[i] != EXTRASAMPLE_ASSOCALPHA && kinds[i] != EXTRASAMPLE_UNASSALPHA) continue;
    header_.alpha = header_.samples - count + i;
    header_.multiplied = kinds[i] == EXTRASAMPLE_ASSOCALPHA;
    return;
  }
}

int TiffSession::on_error(TIFF *, void *user, const char *, const char *format, va_list arguments) {
  auto &error = static_cast<TiffSession *>(user)->error_;
  if (error[0] != '\0') return 1;
  std::vsnprintf(error.data(), error.size(), format, arguments);
  const std::string_view text = error.data();
  if (text.starts_with(own_name_prefix))
    std::memmove(error.data(), error.data() + own_name_prefix.size(),
                 text.size() - own_name_prefix.size() + 1);
  return 1; // handled: libtiff's own handlers, which print, are left out
}

int TiffSession::on_warning(TIFF *, void *user, const char *module, const char *format, va_list arguments) {
  if (module && std::strcmp(module, "JPEGLib") == 0)
    return on_error(nullptr, user, module, format, arguments);
  return 1;
}

tmsize_t TiffSession::on_read(thandle_t handle, void *to, tmsize_t count) {
  auto &session = *static_cast<TiffSession *>(handle);
  const std::size_t got = session.file_.read_at(session.place_, to, static_cast<std::size_t>(count));
  session.place_ += got;
  return static_cast<tmsize_t>(got);
}

toff_t TiffSession::on_seek(thandle_t handle, toff_t offset, int from) {
  auto &session = *static_cast<TiffSession *>(handle);
  if (from == SEEK_CUR) offset += session.place_;
  if (from == SEEK_END) offset += session.file_.size();
  return session.place_ = offset;
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
  case PHOTOMETRIC_SEPARATED:
    return header.ink_set == INKSET_CMYK && header.samples >= 4 ? ColourModel::cmyk : ColourModel::other;
  case PHOTOMETRIC_CIELAB:
  case PHOTOMETRIC_ICCLAB:
  case PHOTOMETRIC_ITULAB: return ColourModel::lab;
  default: return ColourModel::other;
  }
}

} // namespace stoneproof
