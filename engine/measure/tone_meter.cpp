// Counting samples. Only way in: ToneMeter. Tested in tests/engine/measure/tone_meter.test.cpp.
#include "engine/measure/tone_meter.h"

#include <algorithm>
#include <cstring>
#include <utility>

namespace stoneproof {

namespace {

bool counts_as_stored(const RowLayout &layout) {
  const bool gray = layout.colour == ColourModel::gray || layout.colour == ColourModel::bilevel;
  return layout.alpha < 0 &&
         ((gray && layout.channels == 1) || (layout.colour == ColourModel::rgb && layout.channels == 3));
}

constexpr std::int64_t enough_pixels = 8'000'000;

} // namespace

ToneMeter::ToneMeter(const PixelPart &part, const RowLayout &layout)
    : part_(part), layout_(layout), to_rgb_(layout), as_stored_(counts_as_stored(layout)),
      channels_(as_stored_ ? layout.channels : 3), bits_(as_stored_ ? layout.bits : 8),
      row_step_(std::max<std::int64_t>(1, part.pixels() / enough_pixels)) {
  counts_.resize(static_cast<std::size_t>(channels_));
  for (Histogram &histogram : counts_) histogram.counts.resize(std::size_t{1} << bits_);
  if (bits_ <= 8) quick_.resize(2 * 256 * static_cast<std::size_t>(channels_));
  if (!as_stored_) rgb_.resize(static_cast<std::size_t>(part.width) * 3);
}

void ToneMeter::add(std::int64_t y, const std::uint8_t *row) {
  if (!part_.has_row(y) || (y - part_.y) % row_step_ != 0) return;
  ++rows_;
  const std::int64_t first = part_.x - layout_.x;
  if (!as_stored_) {
    to_rgb_.convert(row, first, part_.width, rgb_.data());
    return count_bytes(rgb_.data(), part_.width);
  }
  const std::uint8_t *samples = row + first * channels_ * (bits_ > 8 ? 2 : 1);
  bits_ > 8 ? count_wide(samples, part_.width) : count_bytes(samples, part_.width);
}

void ToneMeter::count_bytes(const std::uint8_t *samples, std::int64_t pixels) {
  quick_pixels_ += pixels;
  if (quick_pixels_ > std::int64_t{1} << 31) {
    empty_quick();
    quick_pixels_ = pixels;
  }
  std::uint32_t *even = quick_.data(), *odd = even + 256 * channels_;
  const std::int64_t count = pixels * channels_;
  std::int64_t i = 0;
  if (channels_ == 3)
    for (; i + 6 <= count; i += 6, samples += 6) {
      ++even[samples[0]], ++even[256 + samples[1]], ++even[512 + samples[2]];
      ++odd[samples[3]], ++odd[256 + samples[4]], ++odd[512 + samples[5]];
    }
  else
    for (; i + 2 <= count; i += 2, samples += 2) ++even[samples[0]], ++odd[samples[1]];
  for (int channel = 0; i < count; ++i, ++channel) ++even[256 * channel + *samples++];
}

void ToneMeter::count_wide(const std::uint8_t *samples, std::int64_t pixels) {
  const std::size_t most = counts_[0].counts.size() - 1;
  for (std::int64_t i = 0; i < pixels; ++i)
    for (Histogram &histogram : counts_) {
      std::uint16_t value;
      std::memcpy(&value, samples, sizeof value);
      samples += sizeof value;
      ++histogram.counts[std::min<std::size_t>(value, most)];
    }
}

// Bytes beyond the depth, which a sound file does not hold, count as the brightest.
void ToneMeter::empty_quick() {
  for (std::size_t set = 0; set < 2; ++set)
    for (std::size_t c = 0; c < counts_.size(); ++c)
      for (std::size_t value = 0; value < 256; ++value) {
        std::uint32_t &count = quick_[(set * counts_.size() + c) * 256 + value];
        auto &counts = counts_[c].counts;
        counts[std::min(value, counts.size() - 1)] += std::exchange(count, 0);
      }
}

Histograms ToneMeter::take() {
  if (bits_ <= 8) empty_quick();
  Histograms histograms{bits_, rows_ * part_.width, std::move(counts_), as_stored_};
  if (as_stored_ && layout_.inverted)
    for (Histogram &histogram : histograms.channels)
      std::reverse(histogram.counts.begin(), histogram.counts.end());
  return histograms;
}

} // namespace stoneproof
