// One giflib reader over a PictureFile, led up to the first picture of the file.
#pragma once

#include "engine/picture/picture_file.h"
#include "engine/units/geometry.h"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include <gif_lib.h>

namespace stoneproof {

/// The first picture of a GIF, and the screen that it is placed on (GIF89a specification, sections 18 and
/// 20).
struct GifFrame {
  PixelSize screen; ///< grown where the picture reaches beyond what the file calls its screen
  std::int64_t x = 0, y = 0, width = 0, height = 0;
  bool interlaced = false;
  int bits = 8; ///< of the palette
  std::array<std::array<std::uint8_t, 3>, 256> palette{};
  int see_through = -1;          ///< the sample value that is transparent, or -1
  std::vector<std::uint8_t> icc; ///< empty: none

  bool covers_screen() const { return width == screen.width && height == screen.height; }
  bool alpha() const { return see_through >= 0 || !covers_screen(); }
};

/// The file must outlive the session.
class GifSession {
public:
  explicit GifSession(const PictureFile &file) : file_(file) {}
  ~GifSession();
  GifSession(const GifSession &) = delete;
  GifSession &operator=(const GifSession &) = delete;

  /// Reads up to the first picture's data; false when the file holds none, `error` then says why.
  bool open();
  const GifFrame &frame() const { return frame_; }
  /// The next line of the picture as it is stored: frame().width bytes. False: as open.
  bool read_line(std::uint8_t *to);
  /// The byte of the file that is read next.
  std::uint64_t place() const { return place_; }
  std::string error() const;

private:
  static int on_read(GifFileType *gif, GifByteType *to, int count);
  bool read_extension();
  void describe();

  const PictureFile &file_;
  std::uint64_t place_ = 0;
  GifFileType *gif_ = nullptr;
  int error_ = 0; ///< of giflib; 0: the file holds no pixels
  GifFrame frame_;
};

} // namespace stoneproof
