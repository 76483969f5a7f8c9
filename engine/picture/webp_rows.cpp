// Rows of a WebP's first picture, placed on its canvas. libwebp gives the part asked for whole; of a lossy
// picture it holds a few rows besides, of a lossless one all its pixels. Only way in: webp_rows.
// Tested in tests/engine/picture/webp.test.cpp.
#include "engine/destroy.h"
#include "engine/picture/deadline.h"
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/webp_chunks.h"

#include <algorithm>
#include <optional>
#include <utility>

#include <webp/decode.h>

namespace stoneproof {

namespace {

std::string_view words_of(VP8StatusCode status) {
  switch (status) {
  case VP8_STATUS_NOT_ENOUGH_DATA:
  case VP8_STATUS_SUSPENDED: return "the file ends too early";
  case VP8_STATUS_OUT_OF_MEMORY: return "there is not enough memory";
  default: return "its data makes no picture";
  }
}

/// Between two of these the clock is not asked.
constexpr std::size_t piece_bytes = 16 * 1024;

class WebpRows final : public RowSource {
public:
  WebpRows(PictureFile file, std::chrono::seconds most_time)
      : file_(std::move(file)), most_time_(most_time) {}

  std::optional<Fault> start(const RowOrder &order, const PictureLimits &limits);
  Outcome<std::span<const std::uint8_t>> next() override;

private:
  void describe(const RowOrder &order);
  std::uint64_t bytes_needed() const;
  std::optional<Fault> decode();
  std::optional<Fault> decode_into(WebPDecoderConfig &config);
  Fault failure(VP8StatusCode status) const {
    return faults::damaged(file_.path(), "WebP", words_of(status));
  }

  PictureFile file_;
  std::chrono::seconds most_time_;
  MemoryBudget::Hold hold_;
  WebpChunks chunks_;
  std::size_t row_bytes_ = 0, row_ = 0;
  std::vector<std::uint8_t> bytes_; ///< all rows, once they are decoded
};

// libwebp cuts at even places only, so that colours stored for two pixels stay together.
void WebpRows::describe(const RowOrder &order) {
  const bool alpha = chunks_.alpha || !chunks_.covers_canvas();
  layout_.stored = chunks_.canvas;
  layout_.x = order.x & ~std::int64_t{1};
  layout_.y = order.y & ~std::int64_t{1};
  layout_.width = order.x + order.width - layout_.x;
  layout_.height = order.y + order.height - layout_.y;
  layout_.channels = alpha ? 4 : 3;
  if (alpha) layout_.alpha = 3;
  row_bytes_ = static_cast<std::size_t>(layout_.width * layout_.channels);
}

// libwebp 1.2: a lossless picture takes four bytes a pixel, 17 rows more, and up to three maps with a
// sixteenth of its pixels each; packed opacity takes as much besides one byte a pixel.
std::uint64_t WebpRows::bytes_needed() const {
  const auto width = static_cast<std::uint64_t>(chunks_.width),
             height = static_cast<std::uint64_t>(chunks_.height);
  std::uint64_t bytes =
      chunks_.data.bytes + row_bytes_ * static_cast<std::uint64_t>(layout_.height) + width * 64;
  if (chunks_.lossless || chunks_.alpha) bytes += width * (height + 17) * 5;
  if (!chunks_.lossless && chunks_.alpha) bytes += width * height;
  return bytes;
}

std::optional<Fault> WebpRows::decode() {
  const std::int64_t left = std::max(layout_.x, chunks_.x), top = std::max(layout_.y, chunks_.y);
  const std::int64_t right = std::min(layout_.x + layout_.width, chunks_.x + chunks_.width);
  const std::int64_t bottom = std::min(layout_.y + layout_.height, chunks_.y + chunks_.height);
  if (left >= right || top >= bottom) return std::nullopt; // the part lies beside the picture
  WebPDecoderConfig config;
  if (!WebPInitDecoderConfig(&config)) return failure(VP8_STATUS_INVALID_PARAM);
  config.options.use_cropping = 1;
  config.options.crop_left = static_cast<int>(left - chunks_.x);
  config.options.crop_top = static_cast<int>(top - chunks_.y);
  config.options.crop_width = static_cast<int>(right - left);
  config.options.crop_height = static_cast<int>(bottom - top);
  const std::size_t first = static_cast<std::size_t>(top - layout_.y) * row_bytes_ +
                            static_cast<std::size_t>((left - layout_.x) * layout_.channels);
  config.output.colorspace = layout_.alpha >= 0 ? MODE_RGBA : MODE_RGB;
  config.output.is_external_memory = 1;
  config.output.u.RGBA = {bytes_.data() + first, static_cast<int>(row_bytes_), bytes_.size() - first};
  return decode_into(config);
}

// The data is handed over piece by piece, so that a clock can stop it.
std::optional<Fault> WebpRows::decode_into(WebPDecoderConfig &config) {
  const std::vector<std::uint8_t> data = webp_bytes(file_, chunks_.data, chunks_.data.bytes);
  const Deadline deadline(most_time_);
  const std::unique_ptr<WebPIDecoder, Destroy<WebPIDelete>> decoder(WebPIDecode(nullptr, 0, &config));
  if (!decoder) return failure(VP8_STATUS_OUT_OF_MEMORY);
  VP8StatusCode status = VP8_STATUS_SUSPENDED;
  for (std::size_t given = 0; given < data.size() && status == VP8_STATUS_SUSPENDED;) {
    given = std::min(data.size(), given + piece_bytes);
    status = WebPIUpdate(decoder.get(), data.data(), given);
    if (deadline.passed()) return faults::too_slow(file_.path(), most_time_);
  }
  if (status != VP8_STATUS_OK) return failure(status);
  return std::nullopt;
}

std::optional<Fault> WebpRows::start(const RowOrder &order, const PictureLimits &limits) {
  const WebpWalk walk = read_webp_chunks(file_);
  if (!walk.chunks) return faults::broken_header(file_.path(), "WebP", walk.error);
  chunks_ = *walk.chunks;
  if (!faults::within(chunks_.canvas, limits))
    return faults::too_many_pixels(file_.path(), chunks_.canvas, limits);
  if (order.x + order.width > chunks_.canvas.width || order.y + order.height > chunks_.canvas.height)
    return faults::changed(file_.path());
  describe(order);
  const std::uint64_t bytes = bytes_needed();
  if (bytes > limits.most_memory) return faults::too_much_memory(file_.path(), bytes, limits);
  hold_ = MemoryBudget::take(limits.budget, bytes);
  layout_.icc = webp_bytes(file_, chunks_.icc, most_webp_extra);
  return std::nullopt;
}

Outcome<std::span<const std::uint8_t>> WebpRows::next() {
  if (bytes_.empty()) {
    bytes_.resize(row_bytes_ * static_cast<std::size_t>(layout_.height));
    if (auto fault = decode()) return *fault;
  }
  return std::span<const std::uint8_t>(bytes_.data() + row_++ * row_bytes_, row_bytes_);
}

} // namespace

Outcome<Rows> webp_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits) {
  auto rows = std::make_unique<WebpRows>(std::move(file), limits.most_time);
  if (auto fault = rows->start(order, limits)) return *fault;
  return Rows(std::move(rows));
}

} // namespace stoneproof
