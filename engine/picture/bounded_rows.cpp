// Watches over the rows of any format. Only way in: bounded. Tested in
// tests/engine/picture/bounded_rows.test.cpp.
#include "engine/picture/bounded_rows.h"

#include "engine/picture/deadline.h"
#include "engine/picture/faults.h"

#include <utility>

namespace stoneproof {

namespace {

/// Below this many bytes of pixels nothing is asked: a small blank picture may pack as tightly as it likes.
constexpr double harmless_bytes = 256e6;

double row_bytes(const RowLayout &layout) {
  return static_cast<double>(layout.width) * layout.channels * (layout.bits > 8 ? 2 : 1);
}

class BoundedRows final : public RowSource {
public:
  BoundedRows(Rows rows, std::filesystem::path file, Deadline deadline, std::chrono::seconds most)
      : rows_(std::move(rows)), file_(std::move(file)), deadline_(deadline), most_(most) {
    layout_ = rows_->layout();
  }

  Outcome<std::span<const std::uint8_t>> next() override {
    auto row = rows_->next();
    if (row && deadline_.passed()) return faults::too_slow(file_, most_);
    return row;
  }

private:
  Rows rows_;
  std::filesystem::path file_;
  Deadline deadline_;
  std::chrono::seconds most_;
};

} // namespace

std::optional<Fault> over_expanded(const RowLayout &layout, const std::filesystem::path &file,
                                   std::uint64_t file_bytes, const PictureLimits &limits) {
  const double bytes = row_bytes(layout) * static_cast<double>(layout.height);
  if (bytes <= harmless_bytes || bytes <= limits.most_expansion * static_cast<double>(file_bytes))
    return std::nullopt;
  return faults::too_much_expansion(file, bytes / static_cast<double>(file_bytes), limits);
}

Outcome<Rows> bounded(Rows rows, const std::filesystem::path &file, std::uint64_t file_bytes,
                      std::chrono::steady_clock::time_point begun, const PictureLimits &limits) {
  if (auto fault = over_expanded(rows->layout(), file, file_bytes, limits)) return *fault;
  const Deadline deadline(limits.most_time, begun);
  return Rows(std::make_unique<BoundedRows>(std::move(rows), file, deadline, limits.most_time));
}

} // namespace stoneproof
