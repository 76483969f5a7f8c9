// From the samples that a TIFF holds to those of a RowLayout: 1 to 64 bits, unsigned, signed or floating.
#pragma once

#include "engine/picture/tiff_session.h"

#include <cstddef>
#include <cstdint>

namespace stoneproof {

/// Unsigned samples of up to 16 bits stay as they are, wider ones give their 16 highest bits. Signed ones are
/// moved up by half their range. Floating ones stand for 0 to 1, and become 0 to 65535; what lies outside, or
/// is not a number, is drawn to the nearer end or to 0. For signed and floating samples the tags
/// SMinSampleValue and SMaxSampleValue (TIFF 6.0, tags 340 and 341) may name another range.
class TiffSamples {
public:
  /// Whether samples of this header can be converted at all.
  static bool can_convert(const TiffHeader &header);

  explicit TiffSamples(const TiffSession &session);

  /// Of a converted sample, 1 to 16; up to 8 take one byte, others two.
  int bits() const { return bits_; }
  /// What libtiff gives needs no conversion.
  bool is_plain() const { return kind_ == Kind::same && (stored_bits_ == 8 || stored_bits_ == 16); }
  /// Converts `count` samples from sample `first` of a packed row on; each is written `stride` samples after
  /// the one before.
  void convert(const std::uint8_t *row, std::size_t first, std::size_t count, std::uint8_t *to,
               std::size_t stride) const;

private:
  enum class Kind { same, moved, ranged, floating };
  std::uint16_t in_range(double value) const;
  std::uint16_t converted(std::uint64_t raw) const;

  Kind kind_ = Kind::same;
  int stored_bits_ = 8, bits_ = 8;
  double least_ = 0, most_ = 1; ///< stored values that stand for the two ends
};

} // namespace stoneproof
