// One libheif context over a PictureFile, and its primary picture. libheif's errors end here, and so do C++
// exceptions that it lets through.
#pragma once

#include "engine/destroy.h"
#include "engine/picture/picture_file.h"
#include "engine/units/geometry.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <libheif/heif.h>

namespace stoneproof {

using HeifContext = std::unique_ptr<heif_context, Destroy<heif_context_free>>;
using HeifHandle = std::unique_ptr<heif_image_handle, Destroy<heif_image_handle_release>>;
using HeifImage = std::unique_ptr<heif_image, Destroy<heif_image_release>>;
using HeifNclx = std::unique_ptr<heif_color_profile_nclx, Destroy<heif_nclx_color_profile_free>>;
using HeifOptions = std::unique_ptr<heif_decoding_options, Destroy<heif_decoding_options_free>>;

/// The file must outlive the session.
class HeifSession {
public:
  explicit HeifSession(const PictureFile &file) : file_(file) {}
  HeifSession(const HeifSession &) = delete;
  HeifSession &operator=(const HeifSession &) = delete;

  /// Reads the boxes, no pixels; false when libheif gave up, `error` then says why.
  bool open();
  const heif_image_handle *picture() const { return handle_.get(); }
  int pages() const;
  /// As the picture is seen: libheif turns, mirrors and cuts it as the file asks.
  PixelSize size() const;
  int bits() const;
  bool alpha() const;
  std::vector<std::uint8_t> icc() const; ///< empty: none
  HeifNclx nclx() const;                 ///< null: none
  /// The first Exif block, with the name that begins it in a JPEG; empty: none.
  std::vector<std::uint8_t> exif() const;
  /// All pixels as interleaved RGB or RGBA: a byte a sample, or two in the machine's order beyond 8 bits.
  /// Null when libheif gave up, `error` then says why.
  HeifImage decode();
  std::string error() const { return error_; }

private:
  bool check(const heif_error &error);
  static std::int64_t on_position(void *session);
  static int on_read(void *to, std::size_t count, void *session);
  static int on_seek(std::int64_t place, void *session);
  static heif_reader_grow_status on_wait(std::int64_t size, void *session);
  static const heif_reader reader;

  const PictureFile &file_;
  std::uint64_t place_ = 0;
  std::string error_;
  HeifContext context_;
  HeifHandle handle_;
};

} // namespace stoneproof
