// Limits of time and of expansion on rows that are made up.
#include "engine/picture/bounded_rows.h"

#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <optional>
#include <thread>

using namespace stoneproof;

namespace {

/// A gray picture whose every sample is the row's number.
class MadeUp final : public RowSource {
public:
  MadeUp(std::int64_t width, std::int64_t height, int channels = 1, int bits = 8) {
    layout_.stored = {width, height};
    layout_.width = width, layout_.height = height;
    layout_.channels = channels;
    layout_.bits = bits;
    layout_.colour = ColourModel::gray;
  }
  Outcome<std::span<const std::uint8_t>> next() override {
    row_.assign(8, rows_++);
    if (rows_ > layout_.height) return Fault{"past the end", "", ""};
    return std::span<const std::uint8_t>(row_);
  }

private:
  std::vector<std::uint8_t> row_;
  std::uint8_t rows_ = 0;
};

using Clock = std::chrono::steady_clock;

Outcome<Rows> bounded_rows(std::unique_ptr<MadeUp> rows, std::uint64_t file_bytes, Clock::time_point begun,
                           const PictureLimits &limits) {
  return bounded(std::move(rows), "a file", file_bytes, begun, limits);
}

} // namespace

TEST_CASE("rows in time come through as they are, with their layout and their own faults") {
  PictureLimits limits;
  for (const auto most : {std::chrono::seconds(3600), std::chrono::seconds::max()}) {
    limits.most_time = most;
    auto rows = bounded_rows(std::make_unique<MadeUp>(8, 3), 100, Clock::now(), limits);
    REQUIRE(rows);
    CHECK(rows.value()->layout().width == 8);
    CHECK(rows.value()->layout().height == 3);
    CHECK(rows.value()->layout().colour == ColourModel::gray);
    for (std::uint8_t y = 0; y < 3; ++y) {
      const auto row = rows.value()->next();
      REQUIRE(row);
      CHECK(std::vector(row.value().begin(), row.value().end()) == std::vector<std::uint8_t>(8, y));
    }
    CHECK(rows.value()->next().fault().what == "past the end");
  }
}

TEST_CASE("a row that comes after the time is over is a fault") {
  PictureLimits limits;
  limits.most_time = std::chrono::seconds(0);
  auto rows =
      bounded_rows(std::make_unique<MadeUp>(8, 3), 100, Clock::now() - std::chrono::seconds(1), limits);
  REQUIRE(rows);
  const auto row = rows.value()->next();
  REQUIRE_FALSE(row);
  CHECK(row.fault().where == "a file");
  CHECK(row.fault().what == "decoding the picture takes longer than 0 s, the limit");
  CHECK_FALSE(row.fault().remedy.empty());

  limits.most_time = std::chrono::seconds(5);
  CHECK_FALSE(
      bounded_rows(std::make_unique<MadeUp>(8, 3), 100, Clock::now() - std::chrono::seconds(6), limits)
          .value()
          ->next());
}

TEST_CASE("a file that is given no time at all gives no row") {
  const test::Folder folder;
  made::write_png(folder / "p", made::busy(20, 10, 3));
  PictureLimits limits;
  limits.most_time = std::chrono::seconds(0);
  auto rows = open_rows(folder / "p", {0, 0, 20, 10, 20, 10}, limits);
  REQUIRE(rows);
  CHECK_FALSE(rows.value()->next());
}

TEST_CASE("waiting for memory that another picture holds is no time of this one") {
  const test::Folder folder;
  made::write_png(folder / "p", made::busy(20, 10, 3));
  PictureLimits limits;
  limits.most_time = std::chrono::seconds(2);
  limits.budget = std::make_shared<MemoryBudget>(1'000'000);
  std::optional other(MemoryBudget::take(limits.budget, 1'000'000));
  bool in_time = false;
  std::thread waiting([&] {
    auto rows = open_rows(folder / "p", {0, 0, 20, 10, 20, 10}, limits);
    in_time = rows && rows.value()->next();
  });
  std::this_thread::sleep_for(std::chrono::milliseconds(2200));
  other.reset();
  waiting.join();
  CHECK(in_time);
}

TEST_CASE("few bytes that make many pixels are refused beyond the bound, and what is small is not asked") {
  struct Case {
    std::int64_t width, height;
    int channels, bits;
    std::uint64_t file_bytes; ///< the fewest that are accepted at 1,000 for one
  };
  for (const Case &c : {Case{20'000, 20'000, 1, 8, 400'000}, Case{20'000, 20'000, 1, 1, 400'000},
                        Case{20'000, 10'000, 1, 16, 400'000}, Case{10'000, 10'000, 4, 8, 400'000},
                        Case{256'000, 1000, 1, 8, 1}, Case{256'001, 1000, 1, 8, 256'001}}) {
    CAPTURE(c.width, c.height, c.channels, c.bits);
    PictureLimits limits;
    limits.most_expansion = 1000;
    const auto opened = [&](std::uint64_t file_bytes) {
      return bounded_rows(std::make_unique<MadeUp>(c.width, c.height, c.channels, c.bits), file_bytes,
                          Clock::now(), limits);
    };
    CHECK(opened(c.file_bytes));
    if (c.file_bytes == 1) continue;
    const auto refused = opened(c.file_bytes - 1);
    REQUIRE_FALSE(refused);
    CHECK(refused.fault().where == "a file");
    CHECK_FALSE(refused.fault().remedy.empty());
    limits.most_expansion = 1001;
    CHECK(opened(c.file_bytes - 1));
  }
}
