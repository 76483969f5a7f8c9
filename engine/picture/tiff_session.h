// One libtiff handle over a PictureFile, at the picture that is used. Its messages end here.
#pragma once

#include "engine/outcome.h"
#include "engine/picture/facts.h"
#include "engine/picture/picture_file.h"

#include <array>
#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include <tiffio.h>

namespace stoneproof {

/// What a directory says of its picture. Tags that the file leaves out have their defaults of TIFF 6.0.
struct TiffHeader {
  std::int64_t width = 0, height = 0;
  int bits = 1, samples = 1; ///< a sample; a pixel
  int sample_format = SAMPLEFORMAT_UINT;
  int photometric = PHOTOMETRIC_MINISBLACK, compression = COMPRESSION_NONE;
  int orientation = 1;
  bool planar = false, tiled = false;
  bool cmyk = false;       ///< of separated inks: the first four are cyan, magenta, yellow and black
  int alpha = -1;          ///< the sample that holds opacity, or -1
  bool multiplied = false; ///< the colours are already multiplied by the opacity
};

/// The header of the directory that the handle is at.
TiffHeader read_tiff_header(TIFF *tiff);
/// The name of a compression for people, e.g. "LZW".
std::string tiff_compression_name(int compression);
ColourModel tiff_colour(const TiffHeader &header);

/// The value of a tag that the directory has; else `otherwise`.
template <class Value>
Value tiff_tag(TIFF *tiff, std::uint32_t number, Value otherwise) {
  Value value{};
  return TIFFGetField(tiff, number, &value) == 1 ? value : otherwise;
}

/// The file must outlive the session. Several sessions may share one file. The picture is that of the first
/// directory, but where this is marked as a reduced copy or a mask (tag 254): then of the first one after it
/// that is neither, and no smaller.
class TiffSession {
public:
  /// `directory` is the place of another directory in the file; 0: the picture's. Faults: a broken header, or
  /// beyond the limit of pixels.
  static Outcome<std::unique_ptr<TiffSession>> open(const PictureFile &file, const PictureLimits &limits,
                                                    std::uint64_t directory = 0);
  ~TiffSession();
  TiffSession(const TiffSession &) = delete;
  TiffSession &operator=(const TiffSession &) = delete;

  TIFF *tiff() const { return tiff_; }
  const TiffHeader &header() const { return header_; }
  template <class Value>
  Value tag(std::uint32_t number, Value otherwise) const {
    return tiff_tag(tiff_, number, otherwise);
  }

  /// The first error of libtiff, or empty. A warning counts only from the JPEG decoder, where it means lost
  /// pixels; others are about unknown tags and sloppy writers.
  std::string error() const { return error_.data(); }
  bool is_damaged() const { return error_[0] != '\0'; }

private:
  explicit TiffSession(const PictureFile &file) : file_(file) {}
  void choose_picture();
  static int on_error(TIFF *, void *user, const char *module, const char *format, va_list arguments);
  static int on_warning(TIFF *, void *user, const char *module, const char *format, va_list arguments);
  static tmsize_t on_read(thandle_t handle, void *to, tmsize_t count);
  static toff_t on_seek(thandle_t handle, toff_t offset, int from);

  const PictureFile &file_;
  std::uint64_t place_ = 0;
  TIFF *tiff_ = nullptr;
  TiffHeader header_;
  std::array<char, 256> error_{};
};

/// The embedded ICC profile; empty: none.
std::vector<std::uint8_t> tiff_icc(const TiffSession &session);

/// How many pictures the file holds: its directories that are no reduced copies and no masks, at least 1 and
/// up to 10,000; a chain that loops is counted once round.
int count_tiff_pages(const PictureFile &file);

} // namespace stoneproof
