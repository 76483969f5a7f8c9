// Subsampled YCbCr by libtiff's own conversion. Only ways in: needs_tiff_rgba, tiff_rgba_rows.
// Tested in tests/engine/picture/preview_formats.test.cpp.
#include "engine/picture/tiff_rgba_rows.h"

#include "engine/picture/faults.h"

#include <algorithm>
#include <fmt/format.h>
#include <optional>
#include <utility>

namespace stoneproof {

namespace {

class TiffRgbaRows final : public RowSource {
public:
  explicit TiffRgbaRows(PictureFile file) : file_(std::move(file)) {}

  std::optional<Fault> start(const RowOrder &order, const PictureLimits &limits);
  Outcome<std::span<const std::uint8_t>> next() override;

private:
  bool read_band(std::int64_t top);
  bool read_tile(std::int64_t column, std::int64_t top);

  PictureFile file_;
  std::unique_ptr<TiffSession> session_;
  std::int64_t unit_width_ = 0, unit_height_ = 0; ///< of a strip or a tile
  std::int64_t band_top_ = -1, row_ = 0;          ///< stored rows
  std::vector<std::uint32_t> unit_, band_;        ///< ABGR; the unit comes bottom row first
  std::vector<std::uint8_t> out_;
  MemoryBudget::Hold hold_;
};

std::optional<Fault> TiffRgbaRows::start(const RowOrder &order, const PictureLimits &limits) {
  auto opened = TiffSession::open(file_, limits);
  if (!opened) return opened.fault();
  session_ = std::move(opened).value();
  const TiffHeader &header = session_->header();
  if (order.x + order.width > header.width || order.y + order.height > header.height)
    return faults::changed(file_.path());
  if (!TIFFIsCODECConfigured(static_cast<std::uint16_t>(header.compression)))
    return faults::not_decoded(file_.path(), "TIFF",
                               "pixels packed by " + tiff_compression_name(header.compression));
  if (header.bits != 8 || header.samples < 3)
    return faults::not_decoded(file_.path(), "TIFF",
                               fmt::format("YCbCr in {} channels of {} bits", header.samples, header.bits));
  const auto size_of = [&](std::uint32_t tag, std::int64_t most) {
    return std::clamp<std::int64_t>(session_->tag<std::uint32_t>(tag, UINT32_MAX), 1, most);
  };
  unit_width_ = header.tiled ? size_of(TIFFTAG_TILEWIDTH, UINT32_MAX) : header.width;
  unit_height_ =
      header.tiled ? size_of(TIFFTAG_TILELENGTH, UINT32_MAX) : size_of(TIFFTAG_ROWSPERSTRIP, header.height);
  const auto row = static_cast<std::uint64_t>(unit_width_ + header.width);
  const std::uint64_t bytes = row * static_cast<std::uint64_t>(unit_height_);
  if (bytes > limits.most_memory / sizeof(std::uint32_t))
    return faults::too_much_memory(file_.path(), bytes > UINT64_MAX / 4 ? UINT64_MAX : bytes * 4, limits);
  hold_ = MemoryBudget::take(limits.budget, bytes * sizeof(std::uint32_t));
  unit_.resize(static_cast<std::size_t>(unit_width_ * unit_height_));
  band_.resize(static_cast<std::size_t>(header.width * unit_height_));
  // Turning the picture is done later, for all formats alike.
  TIFFSetField(session_->tiff(), TIFFTAG_ORIENTATION, ORIENTATION_TOPLEFT);
  layout_.stored = {header.width, header.height};
  layout_.y = row_ = order.y;
  layout_.width = header.width;
  layout_.height = order.height;
  layout_.channels = 3;
  layout_.icc = tiff_icc(*session_);
  out_.resize(static_cast<std::size_t>(header.width) * 3);
  return std::nullopt;
}

bool TiffRgbaRows::read_tile(std::int64_t column, std::int64_t top) {
  TIFF *tiff = session_->tiff();
  const auto x = static_cast<std::uint32_t>(column), y = static_cast<std::uint32_t>(top);
  const int result = session_->header().tiled ? TIFFReadRGBATileExt(tiff, x, y, unit_.data(), 1)
                                              : TIFFReadRGBAStripExt(tiff, y, unit_.data(), 1);
  return result == 1 && !session_->is_damaged();
}

bool TiffRgbaRows::read_band(std::int64_t top) {
  const TiffHeader &header = session_->header();
  // A strip at the bottom comes with its own rows only, a tile always whole.
  const std::int64_t rows = std::min(unit_height_, header.height - top);
  const std::int64_t unit_rows = header.tiled ? unit_height_ : rows;
  for (std::int64_t x = 0; x < header.width; x += unit_width_) {
    if (!read_tile(x, top)) return false;
    const std::int64_t count = std::min(unit_width_, header.width - x);
    for (std::int64_t y = 0; y < rows; ++y)
      std::copy_n(unit_.begin() + (unit_rows - 1 - y) * unit_width_, count,
                  band_.begin() + y * header.width + x);
  }
  band_top_ = top;
  return true;
}

Outcome<std::span<const std::uint8_t>> TiffRgbaRows::next() {
  const std::int64_t top = row_ / unit_height_ * unit_height_;
  if (top != band_top_ && !read_band(top)) return faults::damaged(file_.path(), "TIFF", session_->error());
  const std::uint32_t *from = band_.data() + (row_++ - top) * layout_.width;
  for (std::size_t x = 0; x < static_cast<std::size_t>(layout_.width); ++x) {
    out_[x * 3] = static_cast<std::uint8_t>(TIFFGetR(from[x]));
    out_[x * 3 + 1] = static_cast<std::uint8_t>(TIFFGetG(from[x]));
    out_[x * 3 + 2] = static_cast<std::uint8_t>(TIFFGetB(from[x]));
  }
  return std::span<const std::uint8_t>(out_);
}

} // namespace

bool needs_tiff_rgba(const TiffHeader &header) {
  if (header.photometric != PHOTOMETRIC_YCBCR || header.compression == COMPRESSION_OJPEG) return false;
  return header.compression != COMPRESSION_JPEG || header.planar;
}

Outcome<Rows> tiff_rgba_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits) {
  auto rows = std::make_unique<TiffRgbaRows>(std::move(file));
  if (auto fault = rows->start(order, limits)) return *fault;
  return Rows(std::move(rows));
}

} // namespace stoneproof
