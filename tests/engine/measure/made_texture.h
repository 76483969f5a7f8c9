// Textures without any file's past, and what saving them as a JPEG makes of them.
#pragma once

#include "engine/measure/tile.h"
#include "tests/engine/measure/made_rows.h"
#include "tests/support/files.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace made {

/// Smooth noise with a little grain, from 30 to 225 or so. The same for the same seed.
inline Raster texture(int width, int height, std::uint32_t seed = 1) {
  Raster r{width, height, 1, 8, {}};
  const auto cells = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
  std::vector<double> noise(cells), smooth(cells);
  for (double &value : noise) {
    seed = seed * 1664525U + 1013904223U; // a linear congruential generator
    value = static_cast<double>(seed >> 8) / (1U << 24) - 0.5;
  }
  const auto at = [&](const std::vector<double> &from, int x, int y) {
    return from[static_cast<std::size_t>((y + height) % height) * static_cast<std::size_t>(width) +
                static_cast<std::size_t>((x + width) % width)];
  };
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      double sum = 0;
      for (int j = -2; j <= 2; ++j)
        for (int i = -2; i <= 2; ++i) sum += at(noise, x + i, y + j);
      smooth[static_cast<std::size_t>(y * width + x)] =
          128 + 12 * sum + 8 * at(noise, x, y) + 20 * std::sin(x * 0.05) * std::sin(y * 0.04);
    }
  for (const double value : smooth)
    r.samples.push_back(static_cast<std::uint16_t>(std::lround(std::clamp(value, 30.0, 225.0))));
  return r;
}

/// The part from (x, y) on.
inline Raster cropped(const Raster &r, int x, int y) {
  Raster part{r.width - x, r.height - y, 1, 8, {}};
  for (int row = 0; row < part.height; ++row)
    for (int column = 0; column < part.width; ++column) part.samples.push_back(r.at(x + column, y + row, 0));
  return part;
}

inline Raster mirrored(const Raster &r) {
  Raster other{r.width, r.height, 1, 8, {}};
  for (int y = 0; y < r.height; ++y)
    for (int x = 0; x < r.width; ++x) other.samples.push_back(r.at(r.width - 1 - x, y, 0));
  return other;
}

/// Rows become columns.
inline Raster turned(const Raster &r) {
  Raster other{r.height, r.width, 1, 8, {}};
  for (int y = 0; y < other.height; ++y)
    for (int x = 0; x < other.width; ++x) other.samples.push_back(r.at(y, x, 0));
  return other;
}

/// A saved picture: its pixels as they are decoded, and the table that they were saved with.
struct Saved {
  Raster pixels;
  stoneproof::QuantTable table;
};

inline Saved saved(const Raster &r, const JpegKind &kind) {
  const stoneproof::test::Folder folder;
  const auto file = folder / "a.jpg";
  write_jpeg(file, r, kind);
  const auto facts = stoneproof::read_facts(file);
  auto rows = stoneproof::open_rows(file, {0, 0, r.width, r.height, r.width, r.height});
  Saved result{{r.width, r.height, 1, 8, {}}, *facts.value().jpeg->luma};
  for (int y = 0; y < r.height; ++y) {
    const auto row = rows.value()->next();
    result.pixels.samples.insert(result.pixels.samples.end(), row.value().begin(), row.value().end());
  }
  return result;
}

inline Saved saved(const Raster &r, int quality) {
  JpegKind kind;
  kind.quality = quality;
  return saved(r, kind);
}

inline std::vector<stoneproof::Tile> tiles_of(const Raster &r) {
  const stoneproof::RowLayout layout = layout_of(r, stoneproof::ColourModel::gray);
  stoneproof::TileSampler sampler({0, 0, r.width, r.height}, layout);
  feed(sampler, r);
  return sampler.take();
}

} // namespace made
