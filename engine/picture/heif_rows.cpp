// Rows of a HEIC or AVIF, which libheif decodes whole, in one call that no clock can stop. Only way in:
// heif_rows. Tested in tests/engine/picture/heif.test.cpp.
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/heif_session.h"

#include <optional>
#include <utility>

namespace stoneproof {

namespace {

class HeifRows final : public RowSource {
public:
  HeifRows(PictureFile file, Format format)
      : file_(std::move(file)), name_(format == Format::avif ? "AVIF" : "HEIC") {}

  std::optional<Fault> start(const RowOrder &order, const PictureLimits &limits);
  Outcome<std::span<const std::uint8_t>> next() override;

private:
  void describe(const RowOrder &order);
  std::uint64_t bytes_needed() const;
  std::optional<Fault> decode();
  Fault damaged(std::string_view why) const { return faults::damaged(file_.path(), name_, why); }

  PictureFile file_;
  std::string_view name_;
  std::optional<HeifSession> session_; ///< until the picture is decoded
  MemoryBudget::Hold hold_;
  HeifImage image_;
  const std::uint8_t *next_row_ = nullptr;
  std::size_t stride_ = 0, row_bytes_ = 0;
};

void HeifRows::describe(const RowOrder &order) {
  const HeifSession &session = *session_;
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
std::uint64_t HeifRows::bytes_needed() const {
  const HeifSession &session = *session_;
  const std::uint64_t each = session.bits() > 8 ? (session.alpha() ? 34 : 24) : (session.alpha() ? 18 : 10);
  const std::uint64_t pixels =
      static_cast<std::uint64_t>(session.size().width) * static_cast<std::uint64_t>(session.size().height);
  return file_.size() + pixels * each;
}

std::optional<Fault> HeifRows::start(const RowOrder &order, const PictureLimits &limits) {
  if (file_.size() > limits.most_memory) return faults::too_much_memory(file_.path(), file_.size(), limits);
  HeifSession &session = session_.emplace(file_);
  if (!session.open()) return faults::broken_header(file_.path(), name_, session.error());
  if (!faults::within(session.size(), limits))
    return faults::too_many_pixels(file_.path(), session.size(), limits);
  if (order.x + order.width > session.size().width || order.y + order.height > session.size().height)
    return faults::changed(file_.path());
  const std::uint64_t bytes = bytes_needed();
  if (bytes > limits.most_memory) return faults::too_much_memory(file_.path(), bytes, limits);
  hold_ = MemoryBudget::take(limits.budget, bytes);
  describe(order);
  return std::nullopt;
}

std::optional<Fault> HeifRows::decode() {
  image_ = session_->decode();
  if (!image_) return damaged(session_->error());
  session_.reset();
  const PixelSize decoded{heif_image_get_width(image_.get(), heif_channel_interleaved),
                          heif_image_get_height(image_.get(), heif_channel_interleaved)};
  int stride = 0;
  const std::uint8_t *plane = heif_image_get_plane_readonly(image_.get(), heif_channel_interleaved, &stride);
  if (!plane || stride <= 0 || decoded != layout_.stored)
    return damaged("its header and its data give different sizes");
  if (heif_image_get_bits_per_pixel_range(image_.get(), heif_channel_interleaved) != layout_.bits)
    return damaged("its header and its data give different bits");
  const std::size_t pixel = static_cast<std::size_t>(layout_.channels) * (layout_.bits > 8 ? 2 : 1);
  stride_ = static_cast<std::size_t>(stride);
  row_bytes_ = static_cast<std::size_t>(layout_.width) * pixel;
  next_row_ =
      plane + static_cast<std::size_t>(layout_.y) * stride_ + static_cast<std::size_t>(layout_.x) * pixel;
  return std::nullopt;
}

Outcome<std::span<const std::uint8_t>> HeifRows::next() {
  if (!image_)
    if (auto fault = decode()) return *fault;
  return std::span<const std::uint8_t>(std::exchange(next_row_, next_row_ + stride_), row_bytes_);
}

} // namespace

Outcome<Rows> heif_rows(PictureFile file, Format format, const RowOrder &order, const PictureLimits &limits) {
  auto rows = std::make_unique<HeifRows>(std::move(file), format);
  if (auto fault = rows->start(order, limits)) return *fault;
  return Rows(std::move(rows));
}

} // namespace stoneproof
