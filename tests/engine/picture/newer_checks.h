// What the tests of GIF, WebP, HEIC and AVIF share: whole previews, parts of them, and what a cut file gives.
#pragma once

#include "engine/picture/preview.h"
#include "engine/picture/rows.h"
#include "tests/engine/picture/make_newer.h"
#include "tests/engine/picture/slow_average.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

namespace made {

/// Previews of the whole picture, and of parts that begin at odd places, against what each pixel should be.
inline void check_previews(const std::filesystem::path &file, const Look &look, double tolerance) {
  using namespace stoneproof;
  const auto facts = read_facts(file);
  if (!facts) FAIL(facts.fault().what);
  const PixelSize size = facts.value().size;
  const auto width = static_cast<double>(size.width), height = static_cast<double>(size.height);
  const PreviewOrder orders[] = {
      {{0, 0, width, height}, static_cast<int>(width), static_cast<int>(height)},
      {{0, 0, width, height}, static_cast<int>(width / 3), static_cast<int>(height / 4)},
      {{5, 7, width - 9, height - 12}, static_cast<int>(width - 9), static_cast<int>(height - 12)},
      {{width / 2 + 1, height / 2 + 1, width / 4, height / 4}, 5, 3}};
  for (const PreviewOrder &order : orders) {
    CAPTURE(order.part.x, order.part.y, order.width, order.height);
    const auto preview = read_preview(file, facts.value(), order);
    if (!preview) FAIL(preview.fault().what);
    CHECK(worst_difference(preview.value(), look) <= tolerance);
  }
}

/// Samples of three or four channels over white, as 0 to 255.
inline Look over_white(const Raster &r) {
  return [&r](int x, int y) {
    const double most = (1 << r.bits) - 1, opacity = r.channels == 4 ? r.at(x, y, 3) / most : 1;
    Rgb colour{};
    for (int c = 0; c < 3; ++c)
      colour[static_cast<std::size_t>(c)] = 255 * (r.at(x, y, c) / most * opacity + 1 - opacity);
    return colour;
  };
}

/// Slow ramps, which survive where colours of neighbours are stored together: every part lies where it
/// should.
inline Raster ramps(int width, int height, int channels, int bits) {
  Raster r{width, height, channels, bits, {}};
  const double most = (1 << bits) - 1;
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      const double across = double(x) / width, down = double(y) / height;
      const double levels[] = {across, down, 1 - (across + down) / 2, 0.3 + across / 2};
      for (int c = 0; c < channels; ++c) r.samples.push_back(static_cast<std::uint16_t>(levels[c] * most));
    }
  return r;
}

/// The fault that reading the whole picture ends in; empty where it does not.
inline stoneproof::Fault fault_of(const std::filesystem::path &file,
                                  const stoneproof::PictureLimits &limits = {}) {
  using namespace stoneproof;
  const auto facts = read_facts(file, limits);
  if (!facts) return facts.fault();
  const PixelSize size = facts.value().size;
  const auto preview =
      read_preview(file, facts.value(),
                   {{0, 0, static_cast<double>(size.width), static_cast<double>(size.height)}, 9, 9}, limits);
  return preview ? Fault{} : preview.fault();
}

/// The file cut off at many places gives a whole fault each time.
inline void check_cuts(const std::filesystem::path &file, std::size_t least_tail) {
  const Bytes whole = read_bytes(file);
  const auto cut = file.parent_path() / "cut";
  for (std::size_t at = 16; at + least_tail < whole.size(); at += 1 + whole.size() / 37) {
    CAPTURE(at);
    write_bytes(cut, Bytes(whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(at)));
    const auto fault = fault_of(cut);
    CHECK((!fault.what.empty() && fault.where == cut.string() && !fault.remedy.empty()));
  }
}

/// The embedded profile as the rows hand it on.
inline Bytes icc_of(const std::filesystem::path &file) {
  const auto rows = stoneproof::open_rows(file, {0, 0, 1, 1, 1, 1});
  if (!rows) FAIL(rows.fault().what);
  return rows.value()->layout().icc;
}

/// As many different bytes as asked for; no sound profile.
inline Bytes some_bytes(int count) {
  Bytes bytes;
  for (int i = 0; i < count; ++i) bytes.push_back(static_cast<std::uint8_t>(i * 7 + 3));
  return bytes;
}

/// Exif of an orientation and 300 ppi, without the name of a JPEG's segment.
inline Bytes bare_exif(int orientation) {
  const Bytes segment = exif_segment({.orientation = orientation, .x = 300, .y = 200, .unit = 2});
  return Bytes(segment.begin() + 6, segment.end());
}

/// `look` as it is seen after an Exif orientation of 6: turned clockwise by a quarter.
inline Look turned_right(const Look &look, int stored_height) {
  return [=](int x, int y) { return look(y, stored_height - 1 - x); };
}

} // namespace made
