// Rows of a TIFF: strips or tiles, interleaved or in planes, 1 to 64 bits a sample. Only way in: tiff_rows.
// Tested in tests/engine/picture/preview_formats.test.cpp.
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/tiff_itu_lab.h"
#include "engine/picture/tiff_planes.h"
#include "engine/picture/tiff_reduced.h"
#include "engine/picture/tiff_rgba_rows.h"
#include "engine/picture/tiff_samples.h"

#include <algorithm>
#include <fmt/format.h>
#include <optional>
#include <utility>

namespace stoneproof {

namespace {

int colour_channels(ColourModel colour) {
  switch (colour) {
  case ColourModel::rgb:
  case ColourModel::lab: return 3;
  case ColourModel::cmyk: return 4;
  default: return 1;
  }
}

// What keeps a sound TIFF from being decoded, in words that complete "the TIFF holds ...".
std::optional<std::string> obstacle(const TiffSession &session) {
  const TiffHeader &header = session.header();
  if (header.compression == COMPRESSION_OJPEG ||
      !TIFFIsCODECConfigured(static_cast<std::uint16_t>(header.compression)))
    return fmt::format("pixels packed by {}", tiff_compression_name(header.compression));
  const ColourModel colour = tiff_colour(header);
  if (header.photometric == PHOTOMETRIC_SEPARATED && !header.cmyk)
    return fmt::format("{} inks that are not cyan, magenta, yellow and black", header.samples);
  if (colour == ColourModel::other) return "an unusual colour model";
  if (!TiffSamples::can_convert(header))
    return fmt::format("samples of {} bits{}", header.bits,
                       header.sample_format >= SAMPLEFORMAT_COMPLEXINT ? " in pairs" : "");
  const bool floating = header.sample_format == SAMPLEFORMAT_IEEEFP;
  if (colour == ColourModel::indexed && (header.bits > 16 || floating)) return "a palette of unusual indices";
  if (header.photometric == PHOTOMETRIC_ITULAB) return itu_lab_obstacle(session);
  if (colour == ColourModel::lab && ((header.bits != 8 && header.bits != 16) || floating))
    return "Lab in unusual bits";
  if (header.samples < colour_channels(colour)) return "too few channels for its colour model";
  return std::nullopt;
}

class TiffRows final : public RowSource {
public:
  explicit TiffRows(PictureFile file) : file_(std::move(file)) {}

  std::optional<Fault> start(const RowOrder &order, const PictureLimits &limits);
  /// The same from a reduced copy of the picture, whose rows then speak of the picture itself.
  std::optional<Fault> start(const TiffReduced &copy, const RowOrder &order, const PictureLimits &limits);
  Outcome<std::span<const std::uint8_t>> next() override;

private:
  void describe(const TiffSession &session, const RowOrder &order);
  std::vector<int> wanted_planes(const TiffHeader &header) const;
  std::optional<Fault> open_planes(std::unique_ptr<TiffSession> first, const RowOrder &order,
                                   const PictureLimits &limits);

  PictureFile file_;
  std::uint64_t directory_ = 0; ///< as TiffSession::open takes it
  std::optional<TiffSamples> samples_;
  std::vector<TiffPlane> planes_;
  std::vector<std::uint8_t> row_;
  bool itu_lab_ = false;
  std::vector<std::uint16_t> lab_row_; ///< of ITULab: the row in the coding of ICC
  MemoryBudget::Hold hold_;
};

std::vector<std::array<std::uint8_t, 3>> palette_of(const TiffSession &session) {
  std::uint16_t *red = nullptr, *green = nullptr, *blue = nullptr;
  if (TIFFGetField(session.tiff(), TIFFTAG_COLORMAP, &red, &green, &blue) != 1) return {};
  const std::size_t count = std::size_t{1} << session.header().bits;
  // Some writers fill the 16-bit map with 8-bit values (libtiff's own converter looks for the same).
  const auto large = [&](const std::uint16_t *map) {
    return std::any_of(map, map + count, [](std::uint16_t v) { return v >= 256; });
  };
  const int shift = large(red) || large(green) || large(blue) ? 8 : 0;
  std::vector<std::array<std::uint8_t, 3>> palette(count);
  for (std::size_t i = 0; i < count; ++i)
    palette[i] = {static_cast<std::uint8_t>(red[i] >> shift), static_cast<std::uint8_t>(green[i] >> shift),
                  static_cast<std::uint8_t>(blue[i] >> shift)};
  return palette;
}

void TiffRows::describe(const TiffSession &session, const RowOrder &order) {
  const TiffHeader &header = session.header();
  layout_.stored = {header.width, header.height};
  layout_.y = order.y;
  layout_.height = order.height;
  layout_.x = order.x;
  layout_.width = order.width;
  layout_.bits = samples_->bits();
  layout_.colour = tiff_colour(header);
  layout_.inverted = header.photometric == PHOTOMETRIC_MINISWHITE;
  layout_.signed_ab = header.photometric == PHOTOMETRIC_CIELAB;
  layout_.alpha = header.alpha;
  layout_.multiplied = header.multiplied;
  layout_.channels = header.samples;
  layout_.icc = tiff_icc(session);
  if (layout_.colour == ColourModel::indexed) layout_.palette = palette_of(session);
}

std::vector<int> TiffRows::wanted_planes(const TiffHeader &header) const {
  if (!header.planar) return {0};
  std::vector<int> planes;
  for (int i = 0; i < colour_channels(layout_.colour); ++i) planes.push_back(i);
  if (header.alpha >= colour_channels(layout_.colour)) planes.push_back(header.alpha);
  return planes;
}

std::optional<Fault> TiffRows::open_planes(std::unique_ptr<TiffSession> session, const RowOrder &order,
                                           const PictureLimits &limits) {
  const TiffHeader header = session->header();
  const TiffPart part{order.x, order.y, order.width, order.height};
  const std::vector<int> planes = wanted_planes(header);
  const std::uint64_t bytes = TiffPlane::bytes_needed(*session, part);
  if (bytes == 0) return faults::broken_header(file_.path(), "TIFF", "its strips or tiles have no size");
  if (bytes > limits.most_memory / planes.size()) return faults::too_much_memory(file_.path(), bytes, limits);
  hold_ = MemoryBudget::take(limits.budget, bytes * planes.size());
  for (const int plane : planes) {
    if (!session) {
      auto another = TiffSession::open(file_, limits, directory_);
      if (!another) return another.fault();
      session = std::move(another).value();
    }
    planes_.emplace_back(std::exchange(session, nullptr), plane, part);
  }
  if (header.planar) {
    layout_.channels = static_cast<int>(planes.size());
    layout_.alpha = header.alpha >= 0 ? layout_.channels - 1 : -1;
  }
  const std::size_t sample_bytes = layout_.bits > 8 ? 2 : 1;
  const auto samples = static_cast<std::size_t>(layout_.width) * static_cast<std::size_t>(layout_.channels);
  row_.resize(samples * sample_bytes);
  if (itu_lab_) {
    lab_row_.resize(samples);
    layout_.bits = 16;
  }
  return std::nullopt;
}

std::optional<Fault> TiffRows::start(const RowOrder &order, const PictureLimits &limits) {
  auto opened = TiffSession::open(file_, limits, directory_);
  if (!opened) return opened.fault();
  std::unique_ptr<TiffSession> session = std::move(opened).value();
  const TiffHeader &header = session->header();
  if (order.x + order.width > header.width || order.y + order.height > header.height)
    return faults::changed(file_.path());
  if (const auto kind = obstacle(*session)) return faults::not_decoded(file_.path(), "TIFF", *kind);
  // libjpeg turns YCbCr into RGB by itself.
  if (header.photometric == PHOTOMETRIC_YCBCR)
    TIFFSetField(session->tiff(), TIFFTAG_JPEGCOLORMODE, JPEGCOLORMODE_RGB);
  samples_.emplace(*session);
  itu_lab_ = header.photometric == PHOTOMETRIC_ITULAB;
  describe(*session, order);
  if (layout_.colour == ColourModel::indexed && layout_.palette.empty())
    return faults::broken_header(file_.path(), "TIFF", "its palette is missing");
  return open_planes(std::move(session), order, limits);
}

std::optional<Fault> TiffRows::start(const TiffReduced &copy, const RowOrder &order,
                                     const PictureLimits &limits) {
  directory_ = copy.directory;
  if (auto fault = start(copy.order(order), limits)) return fault;
  layout_.stored = copy.full;
  layout_.scale = copy.scale;
  return std::nullopt;
}

Outcome<std::span<const std::uint8_t>> TiffRows::next() {
  const std::size_t sample_bytes = samples_->bits() > 8 ? 2 : 1;
  const auto channels = static_cast<std::size_t>(layout_.channels);
  const std::size_t in_plane = planes_.size() == 1 ? channels : 1; // samples a pixel
  const auto width = static_cast<std::size_t>(layout_.width);
  for (std::size_t p = 0; p < planes_.size(); ++p) {
    const std::uint8_t *packed = planes_[p].next();
    if (!packed) return faults::damaged(file_.path(), "TIFF", planes_[p].session().error());
    const std::size_t first = static_cast<std::size_t>(layout_.x - planes_[p].first_pixel()) * in_plane;
    if (itu_lab_) return itu_lab_to_icc(packed + first, channels, lab_row_);
    if (samples_->is_plain() && in_plane == channels)
      return std::span(packed + first * sample_bytes, row_.size());
    samples_->convert(packed, first, width * in_plane, row_.data() + p * sample_bytes, channels / in_plane);
  }
  return std::span<const std::uint8_t>(row_);
}

} // namespace

Outcome<Rows> tiff_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits) {
  auto opened = TiffSession::open(file, limits);
  if (!opened) return opened.fault();
  if (needs_tiff_rgba(opened.value()->header())) return tiff_rgba_rows(std::move(file), order, limits);
  if (const auto copy = find_reduced(file, *opened.value(), order, limits))
    if (auto again = PictureFile::open(file.path())) {
      auto rows = std::make_unique<TiffRows>(std::move(again).value());
      if (!rows->start(*copy, order, limits)) return Rows(std::move(rows));
    }
  auto rows = std::make_unique<TiffRows>(std::move(file));
  if (auto fault = rows->start(order, limits)) return *fault;
  return Rows(std::move(rows));
}

} // namespace stoneproof
