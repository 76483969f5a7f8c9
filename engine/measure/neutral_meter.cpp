// Counts coloured pixels. Only way in: NeutralMeter. Tested in tests/engine/measure/neutral_meter.test.cpp.
#include "engine/measure/neutral_meter.h"

#include <algorithm>
#include <cstring>

namespace stoneproof {

namespace {

template <class Sample>
std::int64_t coloured_in(const std::uint8_t *row, std::int64_t pixels, int channels, unsigned tolerance) {
  std::int64_t count = 0;
  const std::size_t pixel_bytes = static_cast<std::size_t>(channels) * sizeof(Sample);
  for (std::int64_t i = 0; i < pixels; ++i, row += pixel_bytes) {
    Sample rgb[3];
    std::memcpy(rgb, row, sizeof rgb);
    const unsigned largest = std::max({rgb[0], rgb[1], rgb[2]}),
                   smallest = std::min({rgb[0], rgb[1], rgb[2]});
    count += largest - smallest > tolerance;
  }
  return count;
}

} // namespace

NeutralMeter::NeutralMeter(const RowLayout &layout)
    : layout_(layout), asks_(layout.colour == ColourModel::rgb), bound_(layout.width * layout.height / 1000) {
}

void NeutralMeter::add(const std::uint8_t *row) {
  if (!is_neutral()) return;
  const unsigned tolerance = ((1u << layout_.bits) - 1) * 8 / 255;
  coloured_ += layout_.bits > 8 ? coloured_in<std::uint16_t>(row, layout_.width, layout_.channels, tolerance)
                                : coloured_in<std::uint8_t>(row, layout_.width, layout_.channels, tolerance);
}

} // namespace stoneproof
