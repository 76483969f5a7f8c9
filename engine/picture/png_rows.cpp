// Rows of a PNG; an interlaced one is held whole. Only way in: png_rows.
// Tested in tests/engine/picture/preview_formats.test.cpp.
#include "engine/picture/deadline.h"
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/png_session.h"

#include <bit>
#include <optional>
#include <utility>

namespace stoneproof {

namespace {

// Bytes of a pixel as the rows come, with palettes and transparency spread.
std::uint64_t pixel_bytes(png_structp png, png_infop info) {
  const int type = png_get_color_type(png, info);
  const bool alpha = (type & PNG_COLOR_MASK_ALPHA) != 0 || png_get_valid(png, info, PNG_INFO_tRNS) != 0;
  const std::uint64_t colours = (type & PNG_COLOR_MASK_COLOR) != 0 ? 3 : 1;
  return (colours + alpha) * (png_get_bit_depth(png, info) == 16 ? 2u : 1u);
}

class PngRows final : public RowSource {
public:
  PngRows(PictureFile file, std::chrono::seconds most_time)
      : file_(std::move(file)), session_(file_), most_time_(most_time) {}

  std::optional<Fault> start(const RowOrder &order, const PictureLimits &limits);
  Outcome<std::span<const std::uint8_t>> next() override;

private:
  bool read_header();
  void describe(const RowOrder &order);
  std::optional<Fault> read_interlaced();
  bool read_row();
  Fault failure() const { return faults::damaged(file_.path(), "PNG", session_.error()); }

  PictureFile file_;
  PngSession session_;
  std::chrono::seconds most_time_;
  std::size_t row_bytes_ = 0;
  bool interlaced_ = false;
  bool whole_ = false;              ///< an interlaced one is read
  std::int64_t row_ = 0;            ///< the stored row that comes next
  std::vector<std::uint8_t> bytes_; ///< one row, or all where interlaced
  MemoryBudget::Hold hold_;
};

// Palettes and small gray samples are spread to 8 bits, transparency to a channel; 16 bits stay, in our byte
// order.
bool PngRows::read_header() {
  return session_.run([](png_structp png, png_infop info) {
    png_read_info(png, info);
    png_set_expand(png);
    if constexpr (std::endian::native == std::endian::little) png_set_swap(png);
  });
}

void PngRows::describe(const RowOrder &order) {
  const png_structp png = session_.png();
  const png_infop info = session_.info();
  const int type = png_get_color_type(png, info);
  layout_.width = png_get_image_width(png, info);
  layout_.y = order.y;
  layout_.height = order.height;
  layout_.channels = png_get_channels(png, info);
  layout_.bits = png_get_bit_depth(png, info);
  layout_.colour = (type & PNG_COLOR_MASK_COLOR) ? ColourModel::rgb : ColourModel::gray;
  if (type & PNG_COLOR_MASK_ALPHA) layout_.alpha = layout_.channels - 1;
}

std::optional<Fault> PngRows::start(const RowOrder &order, const PictureLimits &limits) {
  if (!read_header()) return faults::broken_header(file_.path(), "PNG", session_.error());
  const png_structp png = session_.png();
  const png_infop info = session_.info();
  layout_.stored = {png_get_image_width(png, info), png_get_image_height(png, info)};
  if (!faults::within(layout_.stored, limits))
    return faults::too_many_pixels(file_.path(), layout_.stored, limits);
  if (order.x + order.width > layout_.stored.width || order.y + order.height > layout_.stored.height)
    return faults::changed(file_.path());
  interlaced_ = png_get_interlace_type(png, info) != PNG_INTERLACE_NONE;
  // libpng holds two rows besides ours.
  const auto rows = static_cast<std::uint64_t>(interlaced_ ? layout_.stored.height : 1) + 2;
  const std::uint64_t needed =
      static_cast<std::uint64_t>(layout_.stored.width) * pixel_bytes(png, info) * rows;
  if (needed > limits.most_memory) return faults::too_much_memory(file_.path(), needed, limits);
  hold_ = MemoryBudget::take(limits.budget, needed);
  layout_.icc = session_.colour().icc;
  if (!session_.run([](png_structp p, png_infop i) {
        png_set_interlace_handling(p);
        png_read_update_info(p, i);
      }))
    return failure();
  describe(order);
  row_bytes_ = png_get_rowbytes(png, info);
  bytes_.resize(row_bytes_);
  return std::nullopt;
}

std::optional<Fault> PngRows::read_interlaced() {
  const std::int64_t height = layout_.stored.height;
  bytes_.resize(row_bytes_ * static_cast<std::size_t>(height));
  const Deadline deadline(most_time_);
  for (std::int64_t line = 0; line < PNG_INTERLACE_ADAM7_PASSES * height; ++line) {
    std::uint8_t *bytes = bytes_.data() + static_cast<std::size_t>(line % height) * row_bytes_;
    if (!session_.run([=](png_structp png, png_infop) { png_read_row(png, bytes, nullptr); }))
      return failure();
    if (deadline.passed()) return faults::too_slow(file_.path(), most_time_);
  }
  if (!session_.run([](png_structp png, png_infop) { png_read_end(png, nullptr); })) return failure();
  whole_ = true;
  return std::nullopt;
}

// The row after the last leads on to the end of the file, where a cut or a wrong check sum still shows.
bool PngRows::read_row() {
  std::uint8_t *bytes = bytes_.data();
  const bool last = ++row_ == layout_.stored.height;
  return session_.run([=](png_structp png, png_infop) {
    png_read_row(png, bytes, nullptr);
    if (last) png_read_end(png, nullptr);
  });
}

Outcome<std::span<const std::uint8_t>> PngRows::next() {
  if (interlaced_) {
    if (!whole_)
      if (auto fault = read_interlaced()) return *fault;
    const std::int64_t row = layout_.y + row_++;
    return std::span<const std::uint8_t>(bytes_.data() + static_cast<std::size_t>(row) * row_bytes_,
                                         row_bytes_);
  }
  do {
    if (!read_row()) return failure();
  } while (row_ <= layout_.y);
  return std::span<const std::uint8_t>(bytes_);
}

} // namespace

Outcome<Rows> png_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits) {
  auto rows = std::make_unique<PngRows>(std::move(file), limits.most_time);
  if (auto fault = rows->start(order, limits)) return *fault;
  return Rows(std::move(rows));
}

} // namespace stoneproof
