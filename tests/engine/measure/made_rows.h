// Rows as a decoder hands them on, made of rasters without any file.
#pragma once

#include "engine/picture/rows.h"
#include "tests/engine/picture/make_pictures.h"

#include <cstring>

namespace made {

/// The layout of a raster that begins at (x, y) of its picture.
inline stoneproof::RowLayout layout_of(const Raster &r, stoneproof::ColourModel colour, std::int64_t x = 0,
                                       std::int64_t y = 0) {
  stoneproof::RowLayout layout;
  layout.stored = {r.width + x, r.height + y};
  layout.x = x, layout.y = y;
  layout.width = r.width, layout.height = r.height;
  layout.channels = r.channels;
  layout.bits = r.bits;
  layout.colour = colour;
  return layout;
}

/// One row: a byte a sample, beyond 8 bits two in the machine's order.
inline Bytes row_of(const Raster &r, int y) {
  const auto count = static_cast<std::size_t>(r.width * r.channels);
  const std::uint16_t *samples = r.samples.data() + static_cast<std::size_t>(y) * count;
  if (r.bits <= 8) return Bytes(samples, samples + count);
  Bytes row(count * 2);
  std::memcpy(row.data(), samples, row.size());
  return row;
}

/// Hands every row of the raster to a meter whose rows have a place.
template <class Meter>
void feed(Meter &meter, const Raster &r, std::int64_t first_row = 0) {
  for (int y = 0; y < r.height; ++y) meter.add(first_row + y, row_of(r, y).data());
}

} // namespace made
