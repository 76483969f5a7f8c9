// Watches over the rows of any format. Only way in: bounded. Tested in
// tests/engine/picture/bounded_rows.test.cpp.
#include "engine/picture/bounded_rows.h"

#include "engine/picture/faults.h"

#include <algorithm>
#include <utility>

namespace stoneproof {

namespace {

/// Below this many bytes of pixels nothing is asked: a small blank picture may pack as tightly as it likes.
constexpr double harmless_bytes = 256e6;

/// A clock counts nanoseconds; more time than this is no limit, and might not fit.
constexpr std::chrono::seconds longest = std::chrono::hours(10'000);

double row_bytes(const RowLayout &layout) {
  return static_cast<double>(layout.width) * layout.channels * (layout.bits > 8 ? 2 : 1);
}

class BoundedRows final : public RowSource {
public:
  BoundedRows(Rows rows, std::filesystem::path file, std::chrono::steady_clock::time_point end,
              std::chrono::seconds most)
      : rows_(std::move(rows)), file_(std::move(file)), end_(end), most_(most) {
    layout_ = rows_->layout();
  }

  Outcome<std::span<const std::uint8_t>> next() override {
    if (std::chrono::steady_clock::now() > end_) return faults::too_slow(file_, most_);
    return rows_->next();
  }

private:
  Rows rows_;
  std::filesystem::path file_;
  std::chrono::steady_clock::time_point end_;
  std::chrono::seconds most_;
};

} // namespace

Outcome<Rows> bounded(Rows rows, const std::filesystem::path &file, std::uint64_t file_bytes,
                      std::chrono::steady_clock::time_point begun, const PictureLimits &limits) {
  const RowLayout &layout = rows->layout();
  const double bytes = row_bytes(layout) * static_cast<double>(layout.height);
  if (bytes > harmless_bytes && bytes > limits.most_expansion * static_cast<double>(file_bytes))
    return faults::too_much_expansion(file, bytes / static_cast<double>(file_bytes), limits);
  const auto end = begun + std::min(limits.most_time, longest);
  return Rows(std::make_unique<BoundedRows>(std::move(rows), file, end, limits.most_time));
}

} // namespace stoneproof
