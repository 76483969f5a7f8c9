// Means of lightness. Only way in: ReducedLuma. Tested in tests/engine/measure/glass_meter.test.cpp.
#include "engine/measure/reduced_luma.h"

#include <algorithm>

namespace stoneproof {

namespace {

// 0.299, 0.587 and 0.114 in 65,536ths (ITU-T T.871).
constexpr std::uint64_t red = 19595, green = 38470, blue = 7471;

void add_samples(const std::uint8_t *samples, std::size_t count, std::uint16_t *sums) {
  for (std::size_t i = 0; i < count; ++i) sums[i] = static_cast<std::uint16_t>(sums[i] + samples[i]);
}

} // namespace

ReducedLuma::ReducedLuma(const RowLayout &layout, int factor)
    : layout_(layout), to_rgb_(layout), gray_(layout.colour == ColourModel::gray && layout.channels == 1 &&
                                              layout.bits == 8 && !layout.inverted),
      plain_rgb_(to_rgb_.is_plain()), factor_(factor), width_(layout.width / factor),
      height_(layout.height / factor),
      rgb_(gray_ || plain_rgb_ ? 0 : static_cast<std::size_t>(layout.width) * 3),
      sums_(static_cast<std::size_t>(layout.width) * (gray_ ? 1 : 3)),
      out_(static_cast<std::size_t>(width_)) {}

bool ReducedLuma::add(const std::uint8_t *row) {
  if (!gray_ && !plain_rgb_) {
    to_rgb_.convert(row, 0, layout_.width, rgb_.data());
    row = rgb_.data();
  }
  add_samples(row, sums_.size(), sums_.data());
  if (++rows_ < factor_) return false;
  reduce();
  std::fill(sums_.begin(), sums_.end(), std::uint16_t{0});
  rows_ = 0;
  return true;
}

void ReducedLuma::reduce() {
  const auto area = static_cast<std::uint64_t>(factor_) * static_cast<std::uint64_t>(factor_);
  const std::uint64_t scale = (std::uint64_t{1} << 24) / area; // instead of a division for each pixel
  const std::uint16_t *sums = sums_.data();
  for (std::uint8_t &out : out_) {
    std::uint32_t r = 0, g = 0, b = 0;
    if (gray_) {
      for (int i = 0; i < factor_; ++i) g += *sums++;
      out = static_cast<std::uint8_t>((g * scale + (1u << 23)) >> 24);
      continue;
    }
    for (int i = 0; i < factor_; ++i, sums += 3) r += sums[0], g += sums[1], b += sums[2];
    const std::uint64_t luma = (red * r + green * g + blue * b) >> 8; // in 256ths, so that 64 bits hold all
    out = static_cast<std::uint8_t>((luma * scale + (std::uint64_t{1} << 31)) >> 32);
  }
}

} // namespace stoneproof
