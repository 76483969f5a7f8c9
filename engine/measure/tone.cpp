// Shares, range and comb of histograms. Only way in: tone_of. Tested in tests/engine/measure/tone.test.cpp,
// and on photographs in tests/outside/tone.test.cpp.
#include "engine/measure/tone.h"

#include <algorithm>
#include <numeric>

namespace stoneproof {

namespace {

using Counts = std::vector<std::uint64_t>;

/// How many counts lie at values for which `beyond(value, largest value)` holds.
template <class Beyond>
double share_where(const Counts &counts, double pixels, Beyond beyond) {
  std::uint64_t sum = 0;
  for (std::size_t value = 0; value < counts.size(); ++value)
    if (beyond(value, counts.size() - 1)) sum += counts[value];
  return static_cast<double>(sum) / pixels;
}

ChannelTone channel_tone(const Histogram &histogram, double pixels) {
  return {
      share_where(histogram.counts, pixels, [](auto value, auto most) { return value * 255 > most * 250; }),
      share_where(histogram.counts, pixels, [](auto value, auto most) { return value * 255 < most * 5; })};
}

/// The first value at which the sum of counts passes `part` of them all.
std::size_t percentile(const Counts &counts, double part) {
  const auto total = static_cast<double>(std::accumulate(counts.begin(), counts.end(), std::uint64_t{0}));
  double sum = 0;
  for (std::size_t value = 0; value < counts.size(); ++value) {
    sum += static_cast<double>(counts[value]);
    if (sum > part * total) return value;
  }
  return counts.size() - 1;
}

double range_of(const Histograms &histograms) {
  Counts all(histograms.channels[0].counts.size());
  for (const Histogram &histogram : histograms.channels)
    for (std::size_t value = 0; value < all.size(); ++value) all[value] += histogram.counts[value];
  const auto low = percentile(all, 0.005), high = percentile(all, 0.995);
  return static_cast<double>(high - low) / static_cast<double>(all.size() - 1);
}

/// A missing value has at most this part of what the lesser of its neighbours holds, which is at least
/// `often` of all pixels. Our own choice, tried on photographs before and after corrections.
constexpr double missing = 0.1, often = 0.0002;
/// As many values may be missing in a row: a stretch to n times the range leaves n - 1 between any two.
constexpr std::size_t longest_gap = 7;

/// How many values are missing from `first` on, between two neighbours of which none lies beyond `last`.
std::size_t gap_at(const Counts &counts, std::size_t first, std::size_t last, double pixels) {
  const auto count = [&](std::size_t value) { return static_cast<double>(counts[value]); };
  double largest = 0;
  for (std::size_t length = 1; length <= longest_gap && first + length <= last; ++length) {
    largest = std::max(largest, count(first + length - 1));
    const double lesser = std::min(count(first - 1), count(first + length));
    if (lesser >= often * pixels && largest <= missing * lesser) return length;
  }
  return 0;
}

double comb_of(const Counts &counts, double pixels) {
  const std::size_t low = percentile(counts, 0.005), high = percentile(counts, 0.995);
  if (high < low + 32) return 0;
  std::size_t gaps = 0;
  for (std::size_t value = low + 1; value < high; ++value) {
    const std::size_t gap = gap_at(counts, value, high, pixels);
    gaps += gap;
    value += gap; // on to the neighbour behind it
  }
  return static_cast<double>(gaps) / static_cast<double>(high - low - 1);
}

} // namespace

Tone tone_of(const Histograms &histograms) {
  const auto pixels = static_cast<double>(histograms.pixels);
  Tone tone;
  tone.white = tone.black = 1;
  const bool tells_combs = histograms.as_stored && histograms.bits == 8 && histograms.pixels >= 10'000;
  for (const Histogram &histogram : histograms.channels) {
    const ChannelTone channel = channel_tone(histogram, pixels);
    tone.white = std::min(tone.white, channel.clipped_highlights);
    tone.black = std::min(tone.black, channel.clipped_shadows);
    tone.channels.push_back(channel);
    if (tells_combs) tone.comb = std::max(tone.comb, comb_of(histogram.counts, pixels));
  }
  tone.range = range_of(histograms);
  return tone;
}

} // namespace stoneproof
