// From fax Lab to ICC Lab by three tables. Only ways in: the functions of tiff_itu_lab.h.
// Tested in tests/engine/picture/tiff_samples.test.cpp.
#include "engine/picture/tiff_itu_lab.h"

#include <array>
#include <cmath>

namespace stoneproof {

namespace {

using Tables = std::array<std::array<std::uint16_t, 256>, 4>;

// RFC 2301, 5.2.2: by default L* runs from 0 to 100; a* is (sample - 128) * 170 / 255 and b* is
// (sample - 96) * 200 / 255. ICC.1, 16 bits: L* 100 is 0xFF00, a* and b* are moved up by 128 in steps of
// 1/256.
Tables make_tables() {
  Tables tables;
  for (std::size_t i = 0; i < 256; ++i) {
    const auto sample = static_cast<double>(i);
    const auto ab = [](double value) { return static_cast<std::uint16_t>(std::lround((value + 128) * 256)); };
    tables[0][i] = static_cast<std::uint16_t>(i * 0xFF00 / 255);
    tables[1][i] = ab((sample - 128) * 170 / 255);
    tables[2][i] = ab((sample - 96) * 200 / 255);
    tables[3][i] = static_cast<std::uint16_t>(i * 257);
  }
  return tables;
}

} // namespace

std::optional<std::string> itu_lab_obstacle(const TiffSession &session) {
  const TiffHeader &header = session.header();
  if (header.bits != 8 || header.samples < 3 || header.planar) return "fax Lab in unusual samples";
  // libtiff gives tags that it does not know as a count and an array.
  std::uint32_t count = 0;
  const void *range = nullptr;
  if (TIFFGetField(session.tiff(), TIFFTAG_DECODE, &count, &range) == 1)
    return "fax Lab of a range of its own";
  return std::nullopt;
}

std::span<const std::uint8_t> itu_lab_to_icc(const std::uint8_t *row, std::size_t channels,
                                             std::vector<std::uint16_t> &to) {
  static const Tables tables = make_tables();
  for (std::size_t i = 0; i < to.size(); i += channels)
    for (std::size_t c = 0; c < channels; ++c) to[i + c] = tables[c < 3 ? c : 3][row[i + c]];
  return {reinterpret_cast<const std::uint8_t *>(to.data()), to.size() * sizeof(std::uint16_t)};
}

} // namespace stoneproof
