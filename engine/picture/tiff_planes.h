// The stored bytes of a TIFF, row by row, from one or several planes of samples.
#pragma once

#include "engine/picture/tiff_session.h"

#include <memory>
#include <optional>
#include <vector>

namespace stoneproof {

/// A rectangle of stored pixels to be read.
struct TiffPart {
  std::int64_t x = 0, y = 0, width = 0, height = 0;
};

/// Reads the rows of one plane (the only one, where samples are interleaved) downwards. Each plane has a
/// session of its own, because libtiff keeps one strip at a time.
class TiffPlane {
public:
  /// Bytes that `plane` of this file will hold; to be asked before one is made.
  static std::uint64_t bytes_needed(const TiffSession &session, const TiffPart &part);

  TiffPlane(std::unique_ptr<TiffSession> session, int plane, const TiffPart &part);

  /// The pixel at which the rows begin: 0 for strips, the left edge of a tile for tiles.
  std::int64_t first_pixel() const { return first_pixel_; }
  /// The packed bytes of the next row of the part; null when the file is damaged, `session().error()` says
  /// how.
  const std::uint8_t *next();
  const TiffSession &session() const { return *session_; }

private:
  bool read_strip_row();
  bool read_tile_row();

  std::unique_ptr<TiffSession> session_;
  int plane_;
  TiffPart part_;
  std::int64_t row_; ///< the stored row that comes next
  std::int64_t first_pixel_ = 0;
  std::int64_t tile_width_ = 0, tile_height_ = 0;
  std::size_t row_bytes_ = 0;              ///< of one row in `bytes_`
  std::vector<std::uint8_t> bytes_, tile_; ///< a row of the picture or a row of tiles; one tile
};

} // namespace stoneproof
