// Reads strips by the row and tiles by the row of tiles. Only way in: TiffPlane.
// Tested through previews in tests/engine/picture/preview_formats.test.cpp.
#include "engine/picture/tiff_planes.h"

#include <algorithm>
#include <cstring>

namespace stoneproof {

namespace {

struct TileColumns {
  std::int64_t tile_width, tile_height, first, count;
};

TileColumns columns_of(const TiffSession &session, const TiffPart &part) {
  const std::int64_t width = std::max<std::int64_t>(1, session.tag<std::uint32_t>(TIFFTAG_TILEWIDTH, 1));
  const std::int64_t height = std::max<std::int64_t>(1, session.tag<std::uint32_t>(TIFFTAG_TILELENGTH, 1));
  const std::int64_t first = part.x / width;
  return {width, height, first, (part.x + part.width + width - 1) / width - first};
}

std::uint64_t tile_bytes(const TiffSession &session) { return TIFFTileSize64(session.tiff()); }

} // namespace

std::uint64_t TiffPlane::bytes_needed(const TiffSession &session, const TiffPart &part) {
  if (!session.header().tiled) return TIFFScanlineSize64(session.tiff());
  // Dividing first: hostile tiles are so large that their product with the count would wrap.
  const std::uint64_t tiles = static_cast<std::uint64_t>(columns_of(session, part).count) + 1;
  const std::uint64_t bytes = tile_bytes(session);
  return bytes > UINT64_MAX / tiles ? UINT64_MAX : bytes * tiles;
}

TiffPlane::TiffPlane(std::unique_ptr<TiffSession> session, int plane, const TiffPart &part)
    : session_(std::move(session)), plane_(plane), part_(part), row_(part.y) {
  TIFF *tiff = session_->tiff();
  if (!session_->header().tiled) {
    row_bytes_ = static_cast<std::size_t>(TIFFScanlineSize64(tiff));
    bytes_.resize(row_bytes_);
    // A strip can be entered at its top only; the rows above the part are decoded and dropped.
    const std::int64_t rows =
        std::max<std::int64_t>(1, session_->tag<std::uint32_t>(TIFFTAG_ROWSPERSTRIP, UINT32_MAX));
    row_ = part.y / rows * rows;
    return;
  }
  const TileColumns columns = columns_of(*session_, part);
  tile_width_ = columns.tile_width;
  tile_height_ = columns.tile_height;
  first_pixel_ = columns.first * columns.tile_width;
  row_bytes_ = static_cast<std::size_t>(TIFFTileRowSize64(tiff)) * static_cast<std::size_t>(columns.count);
  tile_.resize(static_cast<std::size_t>(tile_bytes(*session_)));
  bytes_.resize(row_bytes_ * static_cast<std::size_t>(tile_height_));
}

const std::uint8_t *TiffPlane::next() {
  if (!session_->header().tiled) {
    do {
      if (!read_strip_row()) return nullptr;
    } while (row_ <= part_.y);
    return bytes_.data();
  }
  const bool first = row_ == part_.y;
  if ((first || row_ % tile_height_ == 0) && !read_tile_row()) return nullptr;
  return bytes_.data() + row_bytes_ * static_cast<std::size_t>(row_++ % tile_height_);
}

bool TiffPlane::read_strip_row() {
  const int result = TIFFReadScanline(session_->tiff(), bytes_.data(), static_cast<std::uint32_t>(row_),
                                      static_cast<std::uint16_t>(plane_));
  ++row_;
  return result == 1 && !session_->is_damaged();
}

bool TiffPlane::read_tile_row() {
  TIFF *tiff = session_->tiff();
  const auto tile_row_bytes = static_cast<std::size_t>(TIFFTileRowSize64(tiff));
  const std::size_t count = row_bytes_ / tile_row_bytes;
  for (std::size_t i = 0; i < count; ++i) {
    const auto x = static_cast<std::uint32_t>(first_pixel_ + static_cast<std::int64_t>(i) * tile_width_);
    const std::uint32_t tile =
        TIFFComputeTile(tiff, x, static_cast<std::uint32_t>(row_), 0, static_cast<std::uint16_t>(plane_));
    const tmsize_t got = TIFFReadEncodedTile(tiff, tile, tile_.data(), static_cast<tmsize_t>(tile_.size()));
    if (got < 0 || session_->is_damaged()) return false;
    for (std::size_t y = 0; y < static_cast<std::size_t>(tile_height_); ++y)
      std::memcpy(bytes_.data() + y * row_bytes_ + i * tile_row_bytes, tile_.data() + y * tile_row_bytes,
                  tile_row_bytes);
  }
  return true;
}

} // namespace stoneproof
