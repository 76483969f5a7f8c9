// Rows of a HEIC or AVIF, which libheif decodes whole. Only way in: heif_rows.
// Tested in tests/engine/picture/heif.test.cpp.
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/heif_session.h"

#include <optional>
#include <utility>

namespace stoneproof {

namespace {

class HeifRows final : public RowSource {
public:
  std::optional<Fault> start(const PictureFile &file, Format format, const RowOrder &order,
                             const PictureLimits &limits);
  Outcome<std::span<const std::uint8_t>> next() override;

private:
  void describe(const HeifSession &session, const RowOrder &order);

  MemoryBudget::Hold hold_;
  HeifImage image_;
  const std::uint8_t *next_row_ = nullptr;
  std::size_t stride_ = 0, row_bytes_ = 0;
};

void HeifRows::describe(const HeifSession &session, const RowOrder &order) {
  layout_.stored = session.size();
  layout_.x = order.x, layout_.y = order.y;
  layout_.width = order.width, layout_.height = order.height;
  layout_.channels = session.alpha() ? 4 : 3;
  layout_.bits = session.bits();
  if (session.alpha()) layout_.alpha = 3;
  layout_.multiplied = session.alpha() && heif_image_handle_is_premultiplied_alpha(session.picture());
  layout_.icc = session.icc();
}

/// libheif 1.15 holds several copies at the same time: the decoder's, the picture's, the opacity's, the
/// interleaved one. Measured on 12 megapixels of HEVC and AV1, bytes a pixel: at most 9.8, with opacity 17.4;
/// beyond 8 bits 23.6, with opacity 31.5. The packed data is held besides.
std::uint64_t bytes_needed(const HeifSession &session, const PictureFile &file) {
  const std::uint64_t each = session.bits() > 8 ? (session.alpha() ? 34 : 24) : (session.alpha() ? 18 : 10);
  const std::uint64_t pixels =
      static_cast<std::uint64_t>(session.size().width) * static_cast<std::uint64_t>(session.size().height);
  return file.size() + pixels * each;
}

std::optional<Fault> HeifRows::start(const PictureFile &file, Format format, const RowOrder &order,
                                     const PictureLimits &limits) {
  const std::string_view name = format == Format::avif ? "AVIF" : "HEIC";
  if (file.size() > limits.most_memory) return faults::too_much_memory(file.path(), file.size(), limits);
  HeifSession session(file);
  if (!session.open()) return faults::broken_header(file.path(), name, session.error());
  if (!faults::within(session.size(), limits))
    return faults::too_many_pixels(file.path(), session.size(), limits);
  if (order.x + order.width > session.size().width || order.y + order.height > session.size().height)
    return faults::changed(file.path());
  const std::uint64_t bytes = bytes_needed(session, file);
  if (bytes > limits.most_memory) return faults::too_much_memory(file.path(), bytes, limits);
  hold_ = MemoryBudget::take(limits.budget, bytes);
  describe(session, order);
  image_ = session.decode();
  if (!image_) return faults::damaged(file.path(), name, session.error());
  const PixelSize decoded{heif_image_get_width(image_.get(), heif_channel_interleaved),
                          heif_image_get_height(image_.get(), heif_channel_interleaved)};
  int stride = 0;
  const std::uint8_t *plane = heif_image_get_plane_readonly(image_.get(), heif_channel_interleaved, &stride);
  if (!plane || stride <= 0 || decoded != layout_.stored)
    return faults::damaged(file.path(), name, "its header and its data give different sizes");
  const int bits = heif_image_get_bits_per_pixel_range(image_.get(), heif_channel_interleaved);
  if ((bits > 8) != (layout_.bits > 8) || bits > 16)
    return faults::damaged(file.path(), name, "its header and its data give different bits");
  if (layout_.bits > 8) layout_.bits = bits;
  const std::size_t pixel = static_cast<std::size_t>(layout_.channels) * (layout_.bits > 8 ? 2 : 1);
  stride_ = static_cast<std::size_t>(stride);
  row_bytes_ = static_cast<std::size_t>(layout_.width) * pixel;
  next_row_ = plane + static_cast<std::size_t>(order.y) * stride_ + static_cast<std::size_t>(order.x) * pixel;
  return std::nullopt;
}

Outcome<std::span<const std::uint8_t>> HeifRows::next() {
  return std::span<const std::uint8_t>(std::exchange(next_row_, next_row_ + stride_), row_bytes_);
}

} // namespace

Outcome<Rows> heif_rows(PictureFile file, Format format, const RowOrder &order, const PictureLimits &limits) {
  auto rows = std::make_unique<HeifRows>();
  if (auto fault = rows->start(file, format, order, limits)) return *fault;
  return Rows(std::move(rows));
}

} // namespace stoneproof
