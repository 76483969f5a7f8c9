// Canvas rows as file samples, and files that broke off. Only way in: files.h.
#include "demo/files/files.h"

namespace stoneproof::demo {

namespace {

unsigned char byte_of(double v) { return static_cast<unsigned char>(clamp01(v) * 255 + 0.5); }

} // namespace

std::vector<unsigned char> packed_row(const Canvas &canvas, int y, Samples samples) {
  std::vector<unsigned char> row;
  if (samples == Samples::bilevel) row.resize(static_cast<std::size_t>((canvas.width() + 7) / 8));
  for (int x = 0; x < canvas.width(); ++x) {
    const Colour c = canvas.get(x, y);
    switch (samples) {
    case Samples::indexed: // the writer chooses the palette's nearest
    case Samples::rgb8: row.insert(row.end(), {byte_of(c.r), byte_of(c.g), byte_of(c.b)}); break;
    case Samples::rgba8: row.insert(row.end(), {byte_of(c.r), byte_of(c.g), byte_of(c.b), 255}); break;
    case Samples::cmyk8: row.insert(row.end(), 4, byte_of(1 - luminance(c))); break;
    case Samples::gray8: row.push_back(byte_of(luminance(c))); break;
    case Samples::gray16: {
      const auto v = static_cast<std::uint16_t>(clamp01(luminance(c)) * 65535 + 0.5);
      const auto *bytes = reinterpret_cast<const unsigned char *>(&v);
      row.insert(row.end(), {bytes[0], bytes[1]});
      break;
    }
    case Samples::bilevel:
      if (luminance(c) < 0.5) {
        auto &cell = row[static_cast<std::size_t>(x / 8)];
        cell = static_cast<unsigned char>(cell | (0x80 >> (x % 8)));
      }
      break;
    }
  }
  return row;
}

void break_off(const std::filesystem::path &file, double share) {
  const auto bytes = static_cast<double>(std::filesystem::file_size(file));
  std::filesystem::resize_file(file, static_cast<std::uintmax_t>(bytes * share));
}

} // namespace stoneproof::demo
