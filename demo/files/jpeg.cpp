// JPEG files by libjpeg, with a small hand-made Exif block. Only way in: files.h.
#include "demo/files/files.h"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <memory>
#include <stdexcept>

#include <jpeglib.h>

namespace stoneproof::demo {

namespace {

void put(std::vector<unsigned char> &out, unsigned value, int bytes) {
  for (int i = 0; i < bytes; ++i) out.push_back(static_cast<unsigned char>((value >> (8 * i)) & 255));
}

/// An Exif block (Exif 2.32: "Exif" and a little-endian TIFF directory) with orientation 274 and maker 271.
std::vector<unsigned char> exif_block(int orientation, const std::string &camera) {
  std::vector<unsigned char> out = {'E', 'x', 'i', 'f', 0, 0, 'I', 'I', 42, 0, 8, 0, 0, 0};
  constexpr unsigned entries = 2, text_at = 8 + 2 + entries * 12 + 4;
  put(out, entries, 2);
  put(out, 271, 2);
  put(out, 2, 2);
  put(out, static_cast<unsigned>(camera.size()) + 1, 4);
  put(out, text_at, 4);
  put(out, 274, 2);
  put(out, 3, 2);
  put(out, 1, 4);
  put(out, static_cast<unsigned>(orientation), 4);
  put(out, 0, 4);
  out.insert(out.end(), camera.begin(), camera.end());
  out.push_back(0);
  return out;
}

/// The colour at a stored place, so that a viewer who obeys the orientation sees the canvas upright.
Colour stored(const Canvas &canvas, int x, int y, int orientation) {
  if (orientation == 6) return canvas.get(canvas.width() - 1 - y, x);
  if (orientation == 8) return canvas.get(y, canvas.height() - 1 - x);
  return canvas.get(x, y);
}

struct Compressor {
  jpeg_compress_struct state{};
  jpeg_error_mgr errors{};
  Compressor() {
    // The library's own error exit ends the program with a message; for a generator that is right.
    state.err = jpeg_std_error(&errors);
    jpeg_create_compress(&state);
  }
  Compressor(const Compressor &) = delete;
  Compressor &operator=(const Compressor &) = delete;
  ~Compressor() { jpeg_destroy_compress(&state); }
};

void set_up(jpeg_compress_struct &state, const Canvas &canvas, const Storage &how) {
  const bool turned = how.orientation >= 5;
  const bool gray = how.samples != Samples::rgb8;
  state.image_width = static_cast<JDIMENSION>(turned ? canvas.height() : canvas.width());
  state.image_height = static_cast<JDIMENSION>(turned ? canvas.width() : canvas.height());
  state.input_components = gray ? 1 : 3;
  state.in_color_space = gray ? JCS_GRAYSCALE : JCS_RGB;
  jpeg_set_defaults(&state);
  jpeg_set_quality(&state, how.quality, TRUE);
  if (how.progressive) jpeg_simple_progression(&state);
  if (how.ppi > 0) {
    state.density_unit = 1; // dots per inch (JFIF 1.02)
    state.X_density = state.Y_density = static_cast<UINT16>(how.ppi);
  }
}

void write_markers(jpeg_compress_struct &state, const Storage &how) {
  if (how.orientation != 1 || !how.camera.empty()) {
    const auto exif = exif_block(how.orientation, how.camera);
    jpeg_write_marker(&state, JPEG_APP0 + 1, exif.data(), static_cast<unsigned>(exif.size()));
  }
  if (const auto icc = profile_bytes(how.profile); !icc.empty())
    jpeg_write_icc_profile(&state, icc.data(), static_cast<unsigned>(icc.size()));
}

void write_rows(jpeg_compress_struct &state, const Canvas &canvas, int orientation) {
  Canvas row(static_cast<int>(state.image_width), 1);
  for (int y = 0; y < static_cast<int>(state.image_height); ++y) {
    for (int x = 0; x < row.width(); ++x) row.set(x, 0, stored(canvas, x, y, orientation));
    auto bytes = packed_row(row, 0, state.input_components == 1 ? Samples::gray8 : Samples::rgb8);
    JSAMPROW start = bytes.data();
    jpeg_write_scanlines(&state, &start, 1);
  }
}

} // namespace

std::string jpeg_bytes(const Canvas &canvas, const Storage &how) {
  unsigned char *start = nullptr;
  unsigned long size = 0;
  {
    Compressor jpeg;
    jpeg_mem_dest(&jpeg.state, &start, &size);
    set_up(jpeg.state, canvas, how);
    jpeg_start_compress(&jpeg.state, TRUE);
    write_markers(jpeg.state, how);
    write_rows(jpeg.state, canvas, how.orientation);
    jpeg_finish_compress(&jpeg.state);
  }
  const std::unique_ptr<unsigned char, void (*)(void *)> hold(start, std::free);
  return {start, start + size};
}

void write_jpeg(const std::filesystem::path &file, const Canvas &canvas, const Storage &how) {
  std::ofstream out(file, std::ios::binary);
  out << jpeg_bytes(canvas, how);
  out.close();
  if (!out) throw std::runtime_error("cannot write " + file.string());
}

void pass_through_jpeg(Canvas &canvas, int quality) {
  Storage how;
  how.quality = quality;
  const std::string bytes = jpeg_bytes(canvas, how);
  jpeg_decompress_struct state{};
  jpeg_error_mgr errors{};
  state.err = jpeg_std_error(&errors);
  jpeg_create_decompress(&state);
  const std::vector<unsigned char> file(bytes.begin(), bytes.end());
  jpeg_mem_src(&state, file.data(), file.size());
  jpeg_read_header(&state, TRUE);
  jpeg_start_decompress(&state);
  std::vector<unsigned char> row(static_cast<std::size_t>(canvas.width()) * 3);
  for (int y = 0; y < canvas.height(); ++y) {
    JSAMPROW start = row.data();
    jpeg_read_scanlines(&state, &start, 1);
    for (int x = 0; x < canvas.width(); ++x) {
      const unsigned char *pixel = row.data() + static_cast<std::size_t>(x) * 3;
      canvas.set(x, y, {pixel[0] / 255.0, pixel[1] / 255.0, pixel[2] / 255.0});
    }
  }
  jpeg_finish_decompress(&state);
  jpeg_destroy_decompress(&state);
}

} // namespace stoneproof::demo
