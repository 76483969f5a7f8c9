// Rows of the first picture of a GIF, placed on its screen; an interlaced one is held whole. Only way in:
// gif_rows. Tested in tests/engine/picture/gif.test.cpp.
#include "engine/picture/deadline.h"
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/gif_session.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace stoneproof {

namespace {

class GifRows final : public RowSource {
public:
  GifRows(PictureFile file, std::chrono::seconds most_time)
      : file_(std::move(file)), session_(file_), most_time_(most_time) {}

  std::optional<Fault> start(const RowOrder &order, const PictureLimits &limits);
  Outcome<std::span<const std::uint8_t>> next() override;

private:
  void describe(const RowOrder &order);
  std::optional<Fault> read_interlaced();
  const std::uint8_t *samples_of(std::int64_t row);
  void spread(const std::uint8_t *samples);
  Fault failure() const { return faults::damaged(file_.path(), "GIF", session_.error()); }

  PictureFile file_;
  GifSession session_;
  std::chrono::seconds most_time_;
  MemoryBudget::Hold hold_;
  std::int64_t row_ = 0;              ///< of the screen, the one that comes next
  std::int64_t lines_read_ = 0;       ///< of the picture
  std::vector<std::uint8_t> samples_; ///< one line of the picture, or all where interlaced
  std::vector<std::uint8_t> row_bytes_;
};

std::optional<Fault> GifRows::start(const RowOrder &order, const PictureLimits &limits) {
  if (!session_.open()) return faults::broken_header(file_.path(), "GIF", session_.error());
  const GifFrame &frame = session_.frame();
  if (!faults::within(frame.screen, limits))
    return faults::too_many_pixels(file_.path(), frame.screen, limits);
  if (order.x + order.width > frame.screen.width || order.y + order.height > frame.screen.height)
    return faults::changed(file_.path());
  const auto lines = static_cast<std::uint64_t>(frame.interlaced ? frame.height : 1);
  const std::uint64_t bytes =
      static_cast<std::uint64_t>(frame.width) * lines + static_cast<std::uint64_t>(frame.screen.width) * 4;
  if (bytes > limits.most_memory) return faults::too_much_memory(file_.path(), bytes, limits);
  hold_ = MemoryBudget::take(limits.budget, bytes);
  describe(order);
  samples_.resize(static_cast<std::size_t>(frame.width));
  row_bytes_.resize(static_cast<std::size_t>(layout_.width * layout_.channels));
  return std::nullopt;
}

void GifRows::describe(const RowOrder &order) {
  const GifFrame &frame = session_.frame();
  layout_.stored = frame.screen;
  layout_.width = frame.screen.width;
  layout_.y = row_ = order.y;
  layout_.height = order.height;
  layout_.channels = frame.alpha() ? 4 : 3;
  if (frame.alpha()) layout_.alpha = 3;
  layout_.icc = frame.icc;
}

// GIF89a specification, appendix E: every eighth line from 0 and from 4, every fourth from 2, every second
// from 1.
std::optional<Fault> GifRows::read_interlaced() {
  constexpr std::pair<std::int64_t, std::int64_t> passes[] = {{0, 8}, {4, 8}, {2, 4}, {1, 2}};
  const GifFrame &frame = session_.frame();
  samples_.resize(static_cast<std::size_t>(frame.width) * static_cast<std::size_t>(frame.height));
  const Deadline deadline(most_time_);
  for (const auto &[first, step] : passes)
    for (std::int64_t y = first; y < frame.height; y += step, ++lines_read_) {
      if (!session_.read_line(samples_.data() + y * frame.width)) return failure();
      if (deadline.passed()) return faults::too_slow(file_.path(), most_time_);
    }
  return std::nullopt;
}

/// The samples of a row of the picture, or null where the file does not give them.
const std::uint8_t *GifRows::samples_of(std::int64_t row) {
  if (session_.frame().interlaced) return samples_.data() + row * session_.frame().width;
  for (; lines_read_ <= row; ++lines_read_)
    if (!session_.read_line(samples_.data())) return nullptr;
  return samples_.data();
}

void GifRows::spread(const std::uint8_t *samples) {
  const GifFrame &frame = session_.frame();
  std::uint8_t *out = row_bytes_.data() + frame.x * layout_.channels;
  for (std::int64_t x = 0; x < frame.width; ++x, out += layout_.channels) {
    std::copy_n(frame.palette[samples[x]].begin(), 3, out);
    if (layout_.alpha >= 0) out[3] = samples[x] == frame.see_through ? 0 : 255;
  }
}

// What the picture leaves free of the screen is transparent, as viewers commonly show it.
Outcome<std::span<const std::uint8_t>> GifRows::next() {
  const GifFrame &frame = session_.frame();
  if (frame.interlaced && lines_read_ == 0)
    if (auto fault = read_interlaced()) return *fault;
  const std::int64_t line = row_++ - frame.y;
  if (line < 0 || line >= frame.height) {
    std::ranges::fill(row_bytes_, std::uint8_t{0});
  } else {
    const std::uint8_t *samples = samples_of(line);
    if (!samples) return failure();
    std::fill_n(row_bytes_.data(), frame.x * layout_.channels, std::uint8_t{0});
    spread(samples);
    std::fill(row_bytes_.data() + (frame.x + frame.width) * layout_.channels,
              row_bytes_.data() + row_bytes_.size(), std::uint8_t{0});
  }
  return std::span<const std::uint8_t>(row_bytes_);
}

} // namespace

Outcome<Rows> gif_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits) {
  auto rows = std::make_unique<GifRows>(std::move(file), limits.most_time);
  if (auto fault = rows->start(order, limits)) return *fault;
  return Rows(std::move(rows));
}

} // namespace stoneproof
