// Colour conversion of rows. Only way in: ToRgb. Tested in tests/engine/picture/preview_formats.test.cpp.
#include "engine/picture/to_rgb.h"

#include <algorithm>
#include <cmath>
#include <cstring>

namespace stoneproof {

namespace {

template <class Sample>
Sample sample_at(const std::uint8_t *pixel, int channel) {
  Sample value;
  std::memcpy(&value, pixel + static_cast<std::size_t>(channel) * sizeof(Sample), sizeof(Sample));
  return value;
}

std::uint8_t times(unsigned a, unsigned b) { return static_cast<std::uint8_t>((a * b + 127) / 255); }

// The sRGB curve (IEC 61966-2-1) in 4096 steps of linear light.
const std::array<std::uint8_t, 4096> &srgb_curve() {
  static const auto curve = [] {
    std::array<std::uint8_t, 4096> table{};
    for (std::size_t i = 0; i < table.size(); ++i) {
      const double linear = static_cast<double>(i) / (table.size() - 1);
      const double coded = linear <= 0.0031308 ? 12.92 * linear : 1.055 * std::pow(linear, 1 / 2.4) - 0.055;
      table[i] = static_cast<std::uint8_t>(std::lround(coded * 255));
    }
    return table;
  }();
  return curve;
}

std::uint8_t coded(float linear) {
  return srgb_curve()[static_cast<std::size_t>(std::clamp(linear, 0.0F, 1.0F) * 4095.0F + 0.5F)];
}

// CIE 1976: the inverse of the Lab function.
float lab_inverse(float t) {
  return t > 6.0F / 29 ? t * t * t : 3 * (6.0F / 29) * (6.0F / 29) * (t - 4.0F / 29);
}

// Lab with the white of D50 to linear sRGB; the matrix is the inverse of the sRGB primaries adapted to D50 by
// Bradford.
void lab_to_rgb(float lightness, float a, float b, std::uint8_t *out) {
  const float fy = (lightness + 16) / 116;
  const float x = 0.9642F * lab_inverse(fy + a / 500), y = lab_inverse(fy);
  const float z = 0.8249F * lab_inverse(fy - b / 200);
  out[0] = coded(3.1338561F * x - 1.6168667F * y - 0.4906146F * z);
  out[1] = coded(-0.9787684F * x + 1.9161415F * y + 0.0334540F * z);
  out[2] = coded(0.0719453F * x - 0.2289914F * y + 1.4052427F * z);
}

// Lab codings of TIFF 6.0 (CIE) and ICC.1: a and b in steps of one, or of 1/256 with 16 bits. Lightness 100
// is the largest sample, but 0xFF00 in the 16 bits of ICC.
float lightness_of(std::uint8_t sample, bool) { return static_cast<float>(sample) * 100 / 255; }
float lightness_of(std::uint16_t sample, bool cie) {
  return static_cast<float>(sample) * 100 / (cie ? 65535.0F : 65280.0F);
}
float ab_of(std::uint8_t sample, bool cie) {
  return static_cast<float>(cie ? static_cast<std::int8_t>(sample) : sample - 128);
}
float ab_of(std::uint16_t sample, bool cie) {
  return static_cast<float>(cie ? static_cast<std::int16_t>(sample) : sample - 32768) / 256;
}

} // namespace

ToRgb::ToRgb(const RowLayout &layout) : layout_(layout) {
  const unsigned most = layout.bits <= 8 ? (1u << layout.bits) - 1 : 255;
  for (unsigned i = 0; i < 256; ++i) {
    const auto value = static_cast<std::uint8_t>((std::min(i, most) * 255 + most / 2) / most);
    levels_[i] = layout.inverted ? static_cast<std::uint8_t>(255 - value) : value;
  }
}

bool ToRgb::is_plain() const {
  return layout_.colour == ColourModel::rgb && layout_.bits == 8 && layout_.channels == 3 &&
         layout_.alpha < 0;
}

std::uint8_t ToRgb::level(std::uint16_t sample) const {
  const unsigned most = (1u << layout_.bits) - 1;
  const unsigned value = (std::min<unsigned>(sample, most) * 255 + most / 2) / most;
  return static_cast<std::uint8_t>(layout_.inverted ? 255 - value : value);
}

template <class Sample>
void ToRgb::colour(const std::uint8_t *pixel, std::uint8_t *out) const {
  switch (layout_.colour) {
  case ColourModel::rgb:
    for (int c = 0; c < 3; ++c) out[c] = level(sample_at<Sample>(pixel, c));
    return;
  case ColourModel::cmyk: {
    const unsigned paper = 255u - level(sample_at<Sample>(pixel, 3));
    for (int c = 0; c < 3; ++c) out[c] = times(255u - level(sample_at<Sample>(pixel, c)), paper);
    return;
  }
  case ColourModel::lab: {
    const bool cie = layout_.signed_ab;
    lab_to_rgb(lightness_of(sample_at<Sample>(pixel, 0), cie), ab_of(sample_at<Sample>(pixel, 1), cie),
               ab_of(sample_at<Sample>(pixel, 2), cie), out);
    return;
  }
  case ColourModel::indexed: {
    const std::size_t index = sample_at<Sample>(pixel, 0);
    const auto found =
        index < layout_.palette.size() ? layout_.palette[index] : std::array<std::uint8_t, 3>{};
    std::copy(found.begin(), found.end(), out);
    return;
  }
  default: std::fill_n(out, 3, level(sample_at<Sample>(pixel, 0))); return;
  }
}

template <class Sample>
void ToRgb::convert_all(const std::uint8_t *row, std::int64_t count, std::uint8_t *out) const {
  const std::size_t pixel_bytes = static_cast<std::size_t>(layout_.channels) * sizeof(Sample);
  const unsigned most = (1u << layout_.bits) - 1;
  for (std::int64_t i = 0; i < count; ++i, row += pixel_bytes, out += 3) {
    colour<Sample>(row, out);
    if (layout_.alpha < 0) continue;
    const unsigned opacity = (sample_at<Sample>(row, layout_.alpha) * 255u + most / 2) / most;
    for (int c = 0; c < 3; ++c) {
      const unsigned shown = layout_.multiplied ? out[c] : times(out[c], opacity);
      out[c] = static_cast<std::uint8_t>(std::min(255u, shown + 255u - opacity));
    }
  }
}

void ToRgb::convert(const std::uint8_t *row, std::int64_t first, std::int64_t count,
                    std::uint8_t *out) const {
  const std::size_t sample_bytes = layout_.bits > 8 ? 2 : 1;
  row += static_cast<std::size_t>(first * layout_.channels) * sample_bytes;
  if (is_plain())
    std::copy_n(row, static_cast<std::size_t>(count) * 3, out);
  else if (sample_bytes == 2)
    convert_all<std::uint16_t>(row, count, out);
  else
    convert_all<std::uint8_t>(row, count, out);
}

} // namespace stoneproof
