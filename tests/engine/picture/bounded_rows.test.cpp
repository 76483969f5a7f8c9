// Limits of time and of expansion on rows that are made up.
#include "engine/picture/bounded_rows.h"

#include "engine/picture/formats.h"

#include "tests/engine/picture/make_newer.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <algorithm>
#include <functional>
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

namespace {

struct Kind {
  const char *name;
  std::function<void(const std::filesystem::path &, const made::Raster &)> write;
};

/// Those whose rows are complete only when all of the picture is decoded.
std::vector<Kind> whole_kinds() {
  const auto gif = [](const auto &file, const made::Raster &picture) {
    made::Raster indices = picture;
    for (std::uint16_t &sample : indices.samples) sample &= 1;
    made::write_gif(file, indices, {.interlaced = true, .palette = {{0, 0, 0}, {255, 255, 255}}});
  };
  return {{"gif", gif},
          {"webp", [](const auto &file, const auto &picture) { made::write_webp(file, picture); }},
          {"heic", [](const auto &file, const auto &picture) { made::write_heif(file, picture); }},
          {"avif",
           [](const auto &file, const auto &picture) { made::write_heif(file, picture, {.avif = true}); }},
          {"png", [](const auto &file,
                     const auto &picture) { made::write_png(file, picture, {.interlaced = true}); }},
          {"jpeg", [](const auto &file, const auto &picture) {
             made::write_jpeg(file, picture, {.progressive = true});
           }}};
}

} // namespace

TEST_CASE("a picture that is decoded whole has its time too") {
  const test::Folder folder;
  for (const Kind &kind : whole_kinds()) {
    CAPTURE(kind.name);
    const int channels = std::string_view(kind.name) == "gif" ? 1 : 3;
    kind.write(folder / kind.name, made::busy(64, 48, channels));
    PictureLimits limits;
    CHECK(open_rows(folder / kind.name, {0, 0, 64, 48, 64, 48}, limits).value()->next());
    limits.most_time = std::chrono::seconds(0);
    auto rows = open_rows(folder / kind.name, {0, 0, 64, 48, 64, 48}, limits);
    const auto late = rows ? rows.value()->next() : rows.fault();
    REQUIRE_FALSE(late);
    if (rows)
      CHECK(late.fault().what == "decoding the picture takes longer than 0 s, the limit");
    else
      CHECK(late.fault().what.find("more scans than there is time for") != std::string::npos);
  }
}

TEST_CASE("decoding a picture whole stops when its time is over, not at its end") {
  const test::Folder folder;
  PictureLimits limits;
  limits.most_time = std::chrono::seconds(0);
  const RowOrder order{0, 0, 64, 48, 64, 48};
  const auto first_row = [&](Outcome<Rows> rows) { return rows.value()->next(); };
  for (const Kind &kind : whole_kinds()) {
    const std::string_view name = kind.name;
    if (name != "gif" && name != "webp" && name != "png") continue;
    CAPTURE(name);
    kind.write(folder / kind.name, made::busy(64, 48, name == "gif" ? 1 : 3));
    // The readers themselves, without what watches over rows.
    auto opened = PictureFile::open(folder / kind.name);
    REQUIRE(opened);
    PictureFile file = std::move(opened).value();
    const auto row = name == "gif"    ? first_row(gif_rows(std::move(file), order, limits))
                     : name == "webp" ? first_row(webp_rows(std::move(file), order, limits))
                                      : first_row(png_rows(std::move(file), order, limits));
    REQUIRE_FALSE(row);
    CHECK(row.fault().what == "decoding the picture takes longer than 0 s, the limit");
  }
}

TEST_CASE("a claim beyond the expansion is refused before a pixel is decoded") {
  const test::Folder folder;
  PictureLimits limits;
  limits.most_memory = 8'000'000'000;
  const auto refusal = [&](const std::string &name, const RowOrder &order) {
    const auto rows = open_rows(folder / name, order, limits);
    return rows ? std::string("opened") : rows.fault().what;
  };
  const made::Raster picture = made::busy(64, 48, 3);

  // Each file's claim of its size is overwritten, and its data cut off: decoding would find the cut.
  made::write_webp(folder / "webp", picture, {.canvas_width = 66, .canvas_height = 50});
  made::Bytes bytes = made::read_bytes(folder / "webp");
  bytes[25] = bytes[28] = 0x70;
  made::write_bytes(folder / "webp", bytes);
  CHECK(refusal("webp", {0, 0, 28'000, 28'000, 28'000, 28'000}).starts_with("each byte of the file stands"));

  whole_kinds().front().write(folder / "gif", made::busy(64, 48, 1));
  bytes = made::read_bytes(folder / "gif");
  bytes[6] = bytes[8] = 0, bytes[7] = bytes[9] = 0x70;
  bytes.resize(bytes.size() - 40);
  made::write_bytes(folder / "gif", bytes);
  CHECK(refusal("gif", {0, 0, 28'672, 28'672, 28'672, 28'672}).starts_with("each byte of the file stands"));

  made::write_jpeg(folder / "jpeg", picture, {.progressive = true});
  bytes = made::read_bytes(folder / "jpeg");
  const made::Bytes frame_header{0xFF, 0xC2};
  const auto frame = std::ranges::search(bytes, frame_header).begin();
  REQUIRE(frame != bytes.end());
  frame[5] = frame[7] = 0x50;
  bytes.resize(bytes.size() - 40);
  made::write_bytes(folder / "jpeg", bytes);
  CHECK(refusal("jpeg", {0, 0, 20'000, 20'000, 20'000, 20'000}).starts_with("each byte of the file stands"));
}
