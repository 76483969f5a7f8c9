// Samples of a PDF -> samples of a TIFF. The only ways in are tiff_rows and inverted; tested in
// tests/engine/import/picture_export.test.cpp.
#include "engine/import/sample_layout.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

namespace stoneproof::finished {

namespace {

using Byte = unsigned char;

Byte to_byte(double share) { return static_cast<Byte>(std::lround(std::clamp(share, 0.0, 1.0) * 255)); }

/// One row of samples as shares of their range, 0 to 1, whatever their bits.
class RowReader {
public:
  explicit RowReader(const Samples &samples) : samples_(samples), most_((1u << samples.bits) - 1) {}

  unsigned value(std::string_view row, std::size_t sample) const {
    const auto bits = static_cast<std::size_t>(samples_.bits);
    const std::size_t at = sample * bits / 8;
    const auto byte = [&](std::size_t i) {
      return i < row.size() ? unsigned{static_cast<Byte>(row[i])} : 0u;
    };
    if (bits == 16) return byte(at) * 256 + byte(at + 1);
    if (bits == 8) return byte(at);
    return byte(at) >> (8 - bits - sample * bits % 8) & most_;
  }
  /// After the decode array (ISO 32000-1, 8.9.5.2), of a space whose own range is 0 to 1.
  double share(std::string_view row, std::size_t sample) const {
    const double plain = static_cast<double>(value(row, sample)) / most_;
    if (samples_.decode.empty()) return plain;
    const std::size_t channel = sample % static_cast<std::size_t>(samples_.space.channels);
    const double least = samples_.decode[2 * channel], most = samples_.decode[2 * channel + 1];
    return least + plain * (most - least);
  }

private:
  const Samples &samples_;
  unsigned most_;
};

TiffForm form_of(const Samples &samples, TiffColours colours, int channels, int bits) {
  return {samples.size, channels, bits, colours, {}, samples.space.icc};
}

/// Every pixel through a function from its samples to so many bytes.
template <class Convert>
std::string converted(const Samples &samples, const std::string &decoded, std::size_t bytes,
                      Convert convert) {
  const RowReader reader(samples);
  const auto width = static_cast<std::size_t>(samples.size.width);
  std::string rows;
  rows.reserve(width * static_cast<std::size_t>(samples.size.height) * bytes);
  for (std::int64_t y = 0; y < samples.size.height; ++y) {
    const std::size_t from = std::min(decoded.size(), static_cast<std::size_t>(y) * samples.row_bytes());
    const std::string_view row = std::string_view(decoded).substr(from, samples.row_bytes());
    for (std::size_t x = 0; x < width; ++x) convert(reader, row, x, rows);
  }
  return rows;
}

/// To 8 bits, the decode array applied.
TiffRows to_bytes(const Samples &samples, const std::string &decoded, TiffColours colours) {
  const auto channels = static_cast<std::size_t>(samples.space.channels);
  return {form_of(samples, colours, samples.space.channels, 8),
          converted(samples, decoded, channels,
                    [&](const RowReader &reader, auto row, std::size_t x, auto &rows) {
                      for (std::size_t c = 0; c < channels; ++c)
                        rows += static_cast<char>(to_byte(reader.share(row, x * channels + c)));
                    })};
}

/// ICC Lab of TIFF: L* over 0 to 255, a* and b* as they are, plus 128.
TiffRows from_lab(const Samples &samples, const std::string &decoded) {
  const auto &range = samples.space.lab_range;
  Samples plain = samples;
  plain.decode.clear();
  return {form_of(samples, TiffColours::icc_lab, 3, 8),
          converted(plain, decoded, 3, [&](const RowReader &reader, auto row, std::size_t x, auto &rows) {
            rows += static_cast<char>(to_byte(reader.share(row, 3 * x)));
            for (std::size_t c = 1; c < 3; ++c) {
              const double least = range[2 * c - 2], most = range[2 * c - 1];
              const double value = least + reader.share(row, 3 * x + c) * (most - least);
              rows +=
                  static_cast<char>(static_cast<std::int8_t>(std::lround(std::clamp(value, -128.0, 127.0))));
            }
          })};
}

/// Where an ink stands among the four of print; one that is none of them darkens as black does.
std::size_t place_of(const std::string &ink) {
  constexpr std::string_view names[] = {"Cyan", "Magenta", "Yellow", "Black"};
  const auto found = std::find(std::begin(names), std::end(names), ink);
  return found == std::end(names) ? 3 : static_cast<std::size_t>(found - std::begin(names));
}

TiffRows from_inks(const Samples &samples, const std::string &decoded) {
  const auto &inks = samples.space.inks;
  const bool single = inks.size() == 1 && place_of(inks[0]) == 3;
  if (single) return to_bytes(samples, decoded, TiffColours::white_is_zero);
  return {form_of(samples, TiffColours::cmyk, 4, 8),
          converted(samples, decoded, 4, [&](const RowReader &reader, auto row, std::size_t x, auto &rows) {
            std::array<double, 4> amounts{};
            for (std::size_t i = 0; i < inks.size(); ++i)
              amounts[place_of(inks[i])] += inks[i] == "None" ? 0 : reader.share(row, x * inks.size() + i);
            for (const double amount : amounts) rows += static_cast<char>(to_byte(amount));
          })};
}

TiffRows from_palette(const Samples &samples, std::string decoded) {
  const ColourSpace &space = samples.space;
  const auto entry = [&](std::size_t index, std::size_t channel) {
    const std::size_t at = index * static_cast<std::size_t>(space.base_channels) + channel;
    return at < space.lookup.size() ? static_cast<Byte>(space.lookup[at]) : Byte{0};
  };
  const std::size_t entries = std::size_t{1} << std::min(samples.bits, 8);
  if (space.base == Colours::rgb && samples.bits <= 8) {
    TiffRows rows{form_of(samples, TiffColours::palette, 1, samples.bits), std::move(decoded)};
    for (std::size_t i = 0; i < entries; ++i)
      rows.form.palette.push_back({entry(i, 0), entry(i, 1), entry(i, 2)});
    return rows;
  }
  Samples base = samples; // the samples of the base, a byte each
  base.bits = 8;
  base.decode.clear();
  base.space.colours = space.base;
  base.space.channels = space.base_channels;
  const auto channels = static_cast<std::size_t>(space.base_channels);
  return tiff_rows(base, converted(samples, decoded, channels,
                                   [&](const RowReader &reader, auto row, std::size_t x, auto &rows) {
                                     const std::size_t index = reader.value(row, x);
                                     for (std::size_t c = 0; c < channels; ++c)
                                       rows += static_cast<char>(entry(index, c));
                                   }));
}

} // namespace

bool inverted(const Samples &samples) {
  return samples.decode.size() >= 2 && samples.decode[0] > samples.decode[1];
}

TiffRows tiff_rows(const Samples &samples, std::string decoded) {
  const ColourSpace &space = samples.space;
  if (space.colours == Colours::indexed) return from_palette(samples, std::move(decoded));
  if (space.colours == Colours::lab) return from_lab(samples, decoded);
  if (space.colours == Colours::inks) return from_inks(samples, decoded);
  const TiffColours colours = space.colours == Colours::rgb    ? TiffColours::rgb
                              : space.colours == Colours::cmyk ? TiffColours::cmyk
                                                               : TiffColours::black_is_zero;
  if (samples.bits == 1 && space.channels == 1)
    return {
        form_of(samples, inverted(samples) ? TiffColours::white_is_zero : TiffColours::black_is_zero, 1, 1),
        std::move(decoded)};
  if (samples.bits >= 8 && samples.decode.empty())
    return {form_of(samples, colours, space.channels, samples.bits), std::move(decoded)};
  return to_bytes(samples, decoded, colours);
}

} // namespace stoneproof::finished
