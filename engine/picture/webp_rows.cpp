// Rows of a WebP's first picture, placed on its canvas. libwebp gives the part asked for whole; of a lossy
// picture it holds a few rows besides, of a lossless one all its pixels. Only way in: webp_rows.
// Tested in tests/engine/picture/webp.test.cpp.
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

class WebpRows final : public RowSource {
public:
  std::optional<Fault> start(const PictureFile &file, const RowOrder &order, const PictureLimits &limits);
  Outcome<std::span<const std::uint8_t>> next() override;

private:
  void describe(const WebpChunks &chunks, const RowOrder &order);
  std::uint64_t bytes_needed(const WebpChunks &chunks) const;
  VP8StatusCode decode(const WebpChunks &chunks, const std::vector<std::uint8_t> &data);

  MemoryBudget::Hold hold_;
  std::size_t row_bytes_ = 0, row_ = 0;
  std::vector<std::uint8_t> bytes_; ///< all rows
};

// libwebp cuts at even places only, so that colours stored for two pixels stay together.
void WebpRows::describe(const WebpChunks &chunks, const RowOrder &order) {
  const bool alpha = chunks.alpha || !chunks.covers_canvas();
  layout_.stored = chunks.canvas;
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
std::uint64_t WebpRows::bytes_needed(const WebpChunks &chunks) const {
  const auto width = static_cast<std::uint64_t>(chunks.width),
             height = static_cast<std::uint64_t>(chunks.height);
  std::uint64_t bytes =
      chunks.data.bytes + row_bytes_ * static_cast<std::uint64_t>(layout_.height) + width * 64;
  if (chunks.lossless || chunks.alpha) bytes += width * (height + 17) * 5;
  if (!chunks.lossless && chunks.alpha) bytes += width * height;
  return bytes;
}

VP8StatusCode WebpRows::decode(const WebpChunks &chunks, const std::vector<std::uint8_t> &data) {
  const std::int64_t left = std::max(layout_.x, chunks.x), top = std::max(layout_.y, chunks.y);
  const std::int64_t right = std::min(layout_.x + layout_.width, chunks.x + chunks.width);
  const std::int64_t bottom = std::min(layout_.y + layout_.height, chunks.y + chunks.height);
  if (left >= right || top >= bottom) return VP8_STATUS_OK; // the part lies beside the picture
  WebPDecoderConfig config;
  if (!WebPInitDecoderConfig(&config)) return VP8_STATUS_INVALID_PARAM;
  config.options.use_cropping = 1;
  config.options.crop_left = static_cast<int>(left - chunks.x);
  config.options.crop_top = static_cast<int>(top - chunks.y);
  config.options.crop_width = static_cast<int>(right - left);
  config.options.crop_height = static_cast<int>(bottom - top);
  const std::size_t first = static_cast<std::size_t>(top - layout_.y) * row_bytes_ +
                            static_cast<std::size_t>((left - layout_.x) * layout_.channels);
  config.output.colorspace = layout_.alpha >= 0 ? MODE_RGBA : MODE_RGB;
  config.output.is_external_memory = 1;
  config.output.u.RGBA = {bytes_.data() + first, static_cast<int>(row_bytes_), bytes_.size() - first};
  const VP8StatusCode status = WebPDecode(data.data(), data.size(), &config);
  WebPFreeDecBuffer(&config.output);
  return status;
}

std::optional<Fault> WebpRows::start(const PictureFile &file, const RowOrder &order,
                                     const PictureLimits &limits) {
  const WebpWalk walk = read_webp_chunks(file);
  if (!walk.chunks) return faults::broken_header(file.path(), "WebP", walk.error);
  const WebpChunks &chunks = *walk.chunks;
  if (!faults::within(chunks.canvas, limits))
    return faults::too_many_pixels(file.path(), chunks.canvas, limits);
  if (order.x + order.width > chunks.canvas.width || order.y + order.height > chunks.canvas.height)
    return faults::changed(file.path());
  describe(chunks, order);
  const std::uint64_t bytes = bytes_needed(chunks);
  if (bytes > limits.most_memory) return faults::too_much_memory(file.path(), bytes, limits);
  hold_ = MemoryBudget::take(limits.budget, bytes);
  layout_.icc = webp_bytes(file, chunks.icc, most_webp_extra);
  bytes_.resize(row_bytes_ * static_cast<std::size_t>(layout_.height));
  const std::vector<std::uint8_t> data = webp_bytes(file, chunks.data, chunks.data.bytes);
  const VP8StatusCode status = decode(chunks, data);
  if (status != VP8_STATUS_OK) return faults::damaged(file.path(), "WebP", words_of(status));
  return std::nullopt;
}

Outcome<std::span<const std::uint8_t>> WebpRows::next() {
  return std::span<const std::uint8_t>(bytes_.data() + row_++ * row_bytes_, row_bytes_);
}

} // namespace

Outcome<Rows> webp_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits) {
  auto rows = std::make_unique<WebpRows>();
  if (auto fault = rows->start(file, order, limits)) return *fault;
  return Rows(std::move(rows));
}

} // namespace stoneproof
