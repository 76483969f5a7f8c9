// The lossless filters against data of published examples and against zlib (ISO 32000-1, 7.4).
#include "engine/import/filters.h"

#include "tests/support/catch.h"

#include <zlib.h>

#include <vector>

using namespace stoneproof::finished;

namespace {

constexpr std::size_t limit = 1'000'000;

std::string deflated(const std::string &bytes) {
  uLongf size = compressBound(bytes.size());
  std::string packed(size, '\0');
  compress(reinterpret_cast<Bytef *>(packed.data()), &size, reinterpret_cast<const Bytef *>(bytes.data()),
           bytes.size());
  return packed.substr(0, size);
}

std::string bytes_of(std::initializer_list<int> values) {
  std::string bytes;
  for (const int value : values) bytes += static_cast<char>(value);
  return bytes;
}

} // namespace

TEST_CASE("deflated bytes come back, and no more than the limit of them") {
  const std::string text(300'000, 'x');
  const Filtered all = inflated(deflated(text), limit);
  CHECK(all.bytes == text);
  CHECK(all.whole);
  const Filtered some = inflated(deflated(text), 1'000);
  CHECK(some.bytes == text.substr(0, 1'000));
  CHECK_FALSE(some.whole);
  CHECK(some.beyond_limit);
  const std::string packed = deflated("a line of words");
  const Filtered cut = inflated(packed.substr(0, packed.size() - 6), limit);
  CHECK_FALSE(cut.whole);
  CHECK_FALSE(cut.beyond_limit);
  CHECK_FALSE(inflated("nonsense", limit).whole);
}

TEST_CASE("LZW gives back the example of the standard") {
  // ISO 32000-1, 7.4.4.2, example 1: 45 45 45 45 45 65 45 45 45 66.
  const Filtered filtered =
      unpacked_lzw(bytes_of({0x80, 0x0B, 0x60, 0x50, 0x22, 0x0C, 0x0C, 0x85, 0x01}), true, limit);
  CHECK(filtered.bytes == bytes_of({45, 45, 45, 45, 45, 65, 45, 45, 45, 66}));
  CHECK(filtered.whole);
  CHECK_FALSE(unpacked_lzw(bytes_of({0xFF, 0xFF, 0xFF}), true, limit).whole);
}

TEST_CASE("runs, hexadecimal and base-85 digits come back") {
  CHECK(unpacked_runs(bytes_of({2, 'a', 'b', 'c', 254, 'x', 128, 'y'}), limit).bytes == "abcxxx");
  CHECK(unpacked_runs(bytes_of({129, 'x'}), 100).bytes == std::string(100, 'x'));
  CHECK(from_hex("48 65\n6C6c6F7>..", limit).bytes == "Hellop");
  CHECK_FALSE(from_hex("4G", limit).whole);
  CHECK(from_ascii85("87cURD]i,\"Ebo80~>", limit).bytes == "Hello World!");
  CHECK(from_ascii85("z9`~>", limit).bytes == std::string(4, '\0') + "M");
  CHECK_FALSE(from_ascii85("\x7f\x7f", limit).whole);
}

TEST_CASE("PNG's predictors are undone row by row") {
  // PNG, clause 9: None, Sub, Up, Average, Paeth over rows of three pixels of one byte, each row ending as 1
  // 3 6.
  const std::string rows = bytes_of({0, 1, 3, 6, 1, 1, 2, 3, 2, 0, 0, 0, 3, 1, 1, 2, 4, 0, 0, 0});
  const Filtered plain = unpredicted(rows, {15, 1, 8, 3});
  CHECK(plain.bytes == bytes_of({1, 3, 6, 1, 3, 6, 1, 3, 6, 1, 3, 6, 1, 3, 6}));
  CHECK(plain.whole);
  CHECK_FALSE(unpredicted(rows.substr(0, 10), {15, 1, 8, 3}).whole);
  CHECK(unpredicted(rows.substr(0, 10), {15, 1, 8, 3}).bytes == bytes_of({1, 3, 6, 1, 3, 6, 1}));
}

TEST_CASE("TIFF's predictor is undone for every number of bits") {
  CHECK(unpredicted(bytes_of({10, 20, 1, 2, 1, 2}), {2, 2, 8, 3}).bytes ==
        bytes_of({10, 20, 11, 22, 12, 24}));
  CHECK(unpredicted(bytes_of({0, 255, 0, 1}), {2, 1, 16, 2}).bytes == bytes_of({0, 255, 1, 0}));
  // 1, +1, +1, +15 of four bits: 1 2 3 2.
  CHECK(unpredicted(bytes_of({0x11, 0x1F}), {2, 1, 4, 4}).bytes == bytes_of({0x12, 0x32}));
}

TEST_CASE("a prediction that makes no sense leaves the bytes alone") {
  for (const Prediction &wrong : {Prediction{15, 0, 8, 3}, Prediction{15, 1, 7, 3}, Prediction{2, 1, 8, -1},
                                  Prediction{15, 60, 16, 999'999'999}}) {
    const Filtered same = unpredicted("abc", wrong);
    CHECK(same.bytes == "abc");
    CHECK_FALSE(same.whole);
  }
}
