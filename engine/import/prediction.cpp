// Undoes the predictors of Flate and LZW (ISO 32000-1, 7.4.4.4; TIFF 6.0, section 14; PNG, clause 9). The
// only way in is unpredicted; tested in tests/engine/import/filters.test.cpp.
#include "engine/import/filters.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <vector>

namespace stoneproof::finished {

namespace {

using Byte = unsigned char;

Byte paeth(int left, int up, int corner) {
  const int guess = left + up - corner;
  const int by_left = std::abs(guess - left), by_up = std::abs(guess - up);
  const int by_corner = std::abs(guess - corner);
  return static_cast<Byte>(by_left <= by_up && by_left <= by_corner ? left
                           : by_up <= by_corner                     ? up
                                                                    : corner);
}

/// One row of PNG's; `above` is the row before it, or all zero.
void unfilter(int kind, std::string &row, const std::string &above, std::size_t pixel) {
  for (std::size_t i = 0; i < row.size(); ++i) {
    const Byte left = i >= pixel ? static_cast<Byte>(row[i - pixel]) : Byte{0};
    const Byte up = static_cast<Byte>(above[i]);
    const Byte corner = i >= pixel ? static_cast<Byte>(above[i - pixel]) : Byte{0};
    const int guess = kind == 1   ? left
                      : kind == 2 ? up
                      : kind == 3 ? (left + up) / 2
                      : kind == 4 ? paeth(left, up, corner)
                                  : 0;
    row[i] = static_cast<char>(static_cast<Byte>(row[i]) + guess);
  }
}

Filtered from_png(const std::string &bytes, std::size_t row_bytes, std::size_t pixel) {
  Filtered filtered;
  std::string above(row_bytes, '\0'), row;
  for (std::size_t at = 0; at < bytes.size(); at += row_bytes + 1) {
    const int kind = static_cast<Byte>(bytes[at]);
    const std::string_view stored = std::string_view(bytes).substr(at + 1, row_bytes);
    row.assign(stored);
    row.resize(row_bytes, '\0');
    unfilter(kind, row, above, pixel);
    filtered.bytes.append(row, 0, stored.size());
    filtered.whole = filtered.whole && stored.size() == row_bytes && kind <= 4;
    above.swap(row);
  }
  return filtered;
}

/// One row of TIFF's: each sample is the difference from the one a pixel before.
void add_up(std::string &bytes, std::size_t from, std::size_t to, const Prediction &prediction) {
  const auto colours = static_cast<std::size_t>(prediction.colours);
  const auto byte_at = [&](std::size_t i) { return static_cast<Byte>(bytes[i]); };
  const auto word_at = [&](std::size_t i) { return byte_at(i) * 256 + byte_at(i + 1); };
  if (prediction.bits == 8)
    for (std::size_t i = from + colours; i < to; ++i)
      bytes[i] = static_cast<char>(byte_at(i) + byte_at(i - colours));
  else if (prediction.bits == 16)
    for (std::size_t i = from + 2 * colours; i + 1 < to; i += 2) {
      const int sum = word_at(i) + word_at(i - 2 * colours);
      bytes[i] = static_cast<char>(sum >> 8);
      bytes[i + 1] = static_cast<char>(sum);
    }
  else {
    const unsigned bits = static_cast<unsigned>(prediction.bits), mask = (1u << bits) - 1;
    std::vector<unsigned> before(colours);
    std::size_t sample = 0;
    for (std::size_t i = from; i < to; ++i)
      for (unsigned shift = 8; shift >= bits; ++sample) {
        shift -= bits;
        unsigned &sum = before[sample % colours];
        sum = (sum + (unsigned{byte_at(i)} >> shift)) & mask;
        bytes[i] = static_cast<char>((byte_at(i) & ~(mask << shift)) | sum << shift);
      }
  }
}

} // namespace

Filtered unpredicted(std::string bytes, const Prediction &prediction) {
  if (prediction.predictor <= 1) return {std::move(bytes), true, false};
  const auto [predictor, colours, bits, columns] = prediction;
  const bool sound = colours >= 1 && colours <= 64 && columns >= 1 && columns <= 1'000'000'000 &&
                     (bits == 1 || bits == 2 || bits == 4 || bits == 8 || bits == 16);
  if (!sound) return {std::move(bytes), false, false};
  const std::size_t pixel_bits = static_cast<std::size_t>(colours) * static_cast<std::size_t>(bits);
  const std::size_t row_bytes = (pixel_bits * static_cast<std::size_t>(columns) + 7) / 8;
  if (row_bytes > bytes.size() + 1) return {std::move(bytes), false, false};
  if (predictor >= 10) return from_png(bytes, row_bytes, std::max<std::size_t>(1, pixel_bits / 8));
  for (std::size_t at = 0; at < bytes.size(); at += row_bytes)
    add_up(bytes, at, std::min(at + row_bytes, bytes.size()), prediction);
  return {std::move(bytes), true, false};
}

} // namespace stoneproof::finished
