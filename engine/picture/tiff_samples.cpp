// Converts samples one by one. Only way in: TiffSamples.
// Tested in tests/engine/picture/tiff_samples.test.cpp.
#include "engine/picture/tiff_samples.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstring>

namespace stoneproof {

namespace {

template <class Value>
Value value_at(const std::uint8_t *row, std::size_t index) {
  Value value;
  std::memcpy(&value, row + index * sizeof(Value), sizeof(Value));
  return value;
}

// libtiff gives samples of 16, 24, 32 and 64 bits in the machine's byte order, all others packed from the
// highest bit on.
std::uint64_t raw_at(const std::uint8_t *row, std::size_t index, int bits) {
  const auto wide = static_cast<std::size_t>(bits);
  switch (bits) {
  case 1:
  case 2:
  case 4: return (unsigned{row[index * wide / 8]} >> (8 - wide - index * wide % 8)) & ((1u << wide) - 1);
  case 8: return row[index];
  case 16: return value_at<std::uint16_t>(row, index);
  case 24: {
    const std::uint8_t *b = row + index * 3;
    constexpr bool little = std::endian::native == std::endian::little;
    return (unsigned{b[little ? 2 : 0]} << 16) | (unsigned{b[1]} << 8) | b[little ? 0 : 2];
  }
  case 32: return value_at<std::uint32_t>(row, index);
  case 64: return value_at<std::uint64_t>(row, index);
  default: break;
  }
  std::uint64_t value = 0;
  for (std::size_t bit = index * wide; bit < (index + 1) * wide; ++bit)
    value = value << 1 | ((unsigned{row[bit / 8]} >> (7 - bit % 8)) & 1u);
  return value;
}

// A floating-point number of few bits: sign, exponent, fraction, as in IEEE 754.
double small_float(std::uint64_t raw, int exponent_bits, int fraction_bits) {
  const auto exponent = static_cast<int>(raw >> fraction_bits & ((1u << exponent_bits) - 1));
  const auto fraction = static_cast<double>(raw & ((1u << fraction_bits) - 1));
  const int bias = (1 << (exponent_bits - 1)) - 1, largest = (1 << exponent_bits) - 1;
  const double sign = (raw >> (exponent_bits + fraction_bits) & 1) != 0 ? -1 : 1;
  if (exponent == largest) return fraction > 0 ? NAN : sign * HUGE_VAL;
  const double whole = exponent > 0 ? std::ldexp(1.0, fraction_bits) : 0;
  return sign * std::ldexp(whole + fraction, std::max(exponent, 1) - bias - fraction_bits);
}

// IEEE 754 binary16, binary32, binary64, and the 24 bits of Adobe's TIFF Technical Note 3 (7 of exponent).
double float_of(std::uint64_t raw, int bits) {
  switch (bits) {
  case 16: return small_float(raw, 5, 10);
  case 24: return small_float(raw, 7, 16);
  case 32: return std::bit_cast<float>(static_cast<std::uint32_t>(raw));
  default: return std::bit_cast<double>(raw);
  }
}

} // namespace

bool TiffSamples::can_convert(const TiffHeader &header) {
  const int bits = header.bits;
  switch (header.sample_format) {
  case SAMPLEFORMAT_UINT:
  case SAMPLEFORMAT_VOID:
  case SAMPLEFORMAT_INT: return (bits >= 1 && bits <= 32) || bits == 64;
  case SAMPLEFORMAT_IEEEFP: return bits == 16 || bits == 24 || bits == 32 || bits == 64;
  default: return false;
  }
}

TiffSamples::TiffSamples(const TiffSession &session) {
  const TiffHeader &header = session.header();
  stored_bits_ = header.bits;
  bits_ = std::min(stored_bits_, 16);
  // Single bits, indices and the parts of a Lab colour keep their coding.
  const ColourModel colour = tiff_colour(header);
  if (colour == ColourModel::bilevel || colour == ColourModel::indexed || colour == ColourModel::lab) return;
  if (header.sample_format == SAMPLEFORMAT_IEEEFP) kind_ = Kind::floating;
  if (header.sample_format == SAMPLEFORMAT_INT) kind_ = Kind::moved;
  if (kind_ == Kind::same) return;
  const double least = session.tag<double>(TIFFTAG_SMINSAMPLEVALUE, 0);
  const double most = session.tag<double>(TIFFTAG_SMAXSAMPLEVALUE, 0);
  if (least < most && std::isfinite(most - least)) {
    least_ = least;
    most_ = most;
    if (kind_ == Kind::moved) kind_ = Kind::ranged;
  }
  if (kind_ != Kind::moved) bits_ = 16;
}

std::uint16_t TiffSamples::in_range(double value) const {
  const double share = (value - least_) / (most_ - least_);
  if (!(share > 0)) return 0; // not a number ends here too
  return static_cast<std::uint16_t>(std::min(share, 1.0) * 65535 + 0.5);
}

std::uint16_t TiffSamples::converted(std::uint64_t raw) const {
  const std::uint64_t half = std::uint64_t{1} << (stored_bits_ - 1);
  switch (kind_) {
  case Kind::floating: return in_range(float_of(raw, stored_bits_));
  case Kind::ranged: return in_range(static_cast<double>(raw ^ half) - static_cast<double>(half));
  case Kind::moved: raw ^= half; break;
  case Kind::same: break;
  }
  return static_cast<std::uint16_t>(raw >> (stored_bits_ - bits_));
}

void TiffSamples::convert(const std::uint8_t *row, std::size_t first, std::size_t count, std::uint8_t *to,
                          std::size_t stride) const {
  for (std::size_t i = 0; i < count; ++i) {
    const std::uint16_t value = converted(raw_at(row, first + i, stored_bits_));
    if (bits_ <= 8)
      to[i * stride] = static_cast<std::uint8_t>(value);
    else
      std::memcpy(to + i * stride * 2, &value, 2);
  }
}

} // namespace stoneproof
