// PNG files by libpng's row interface. Only way in: files.h.
#include "demo/files/files.h"

#include <bit>
#include <cstdio>
#include <memory>
#include <stdexcept>
#include <vector>

#include <png.h>

namespace stoneproof::demo {

namespace {

constexpr double inches_per_metre = 1 / 0.0254;

/// Six steps of each colour, as a picture saved for the screen has them.
constexpr int steps = 6;

std::vector<png_color> palette() {
  const auto level = [](int step) { return static_cast<png_byte>(step * 255 / (steps - 1)); };
  std::vector<png_color> colours;
  for (int index = 0; index < steps * steps * steps; ++index)
    colours.push_back({level(index / (steps * steps)), level(index / steps % steps), level(index % steps)});
  return colours;
}

/// One palette index for each pixel of a row of RGB.
std::vector<std::uint8_t> indexed_row(const std::vector<std::uint8_t> &rgb) {
  const auto step = [&](std::size_t at) { return (rgb[at] * (steps - 1) + 127) / 255; };
  std::vector<std::uint8_t> row;
  for (std::size_t at = 0; at < rgb.size(); at += 3)
    row.push_back(static_cast<std::uint8_t>((step(at) * steps + step(at + 1)) * steps + step(at + 2)));
  return row;
}

int colour_type(Samples samples) {
  if (samples == Samples::indexed) return PNG_COLOR_TYPE_PALETTE;
  if (samples == Samples::rgba8) return PNG_COLOR_TYPE_RGB_ALPHA;
  return samples == Samples::rgb8 ? PNG_COLOR_TYPE_RGB : PNG_COLOR_TYPE_GRAY;
}

[[noreturn]] void refuse(png_structp, png_const_charp message) { throw std::runtime_error(message); }
void ignore(png_structp, png_const_charp) {}

} // namespace

void write_png(const std::filesystem::path &file, const Canvas &canvas, const Storage &how) {
  const std::unique_ptr<std::FILE, int (*)(std::FILE *)> out(std::fopen(file.c_str(), "wb"), std::fclose);
  if (!out) throw std::runtime_error("cannot write " + file.string());
  png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, refuse, ignore);
  png_infop info = png_create_info_struct(png);
  png_init_io(png, out.get());
  png_set_compression_level(png, 3); // quick; the demo is made in one go
  const int depth = how.samples == Samples::gray16 ? 16 : 8;
  png_set_IHDR(png, info, static_cast<png_uint_32>(canvas.width()), static_cast<png_uint_32>(canvas.height()),
               depth, colour_type(how.samples), PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT,
               PNG_FILTER_TYPE_DEFAULT);
  const bool indexed = how.samples == Samples::indexed;
  if (indexed) png_set_PLTE(png, info, palette().data(), steps * steps * steps);
  if (how.ppi > 0) {
    const auto per_metre = static_cast<png_uint_32>(how.ppi * inches_per_metre + 0.5);
    png_set_pHYs(png, info, per_metre, per_metre, PNG_RESOLUTION_METER);
  }
  png_write_info(png, info);
  if (depth == 16 && std::endian::native == std::endian::little) png_set_swap(png);
  for (int y = 0; y < canvas.height(); ++y) {
    const auto row = packed_row(canvas, y, how.samples);
    png_write_row(png, indexed ? indexed_row(row).data() : row.data());
  }
  png_write_end(png, info);
  png_destroy_write_struct(&png, &info);
}

} // namespace stoneproof::demo
