// Scans of one scanner made by arithmetic: different subjects, the same glass.
#pragma once

#include "engine/measure/glass_meter.h"
#include "tests/engine/measure/made_rows.h"

#include <algorithm>
#include <cmath>
#include <random>

namespace made {

/// A subject of slow waves, different for each number; a textured one has fine waves and grain as well.
inline Raster subject(unsigned number, bool textured, int width = 240, int height = 300) {
  std::mt19937 random(number);
  const auto some = [&](double from, double to) {
    return from + (to - from) * static_cast<double>(random()) / 4294967295.0;
  };
  Raster r{width, height, 1, 8, {}};
  const double a = some(0.01, 0.04), b = some(0.01, 0.04), c = some(0, 6), d = some(0.3, 0.9),
               e = some(0.3, 0.9);
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      double level = 128 + 50 * std::sin(a * x + c) * std::cos(b * y) + some(-3, 3);
      if (textured) level += 8 * std::sin(d * x + c) * std::sin(e * y) + some(-6, 6);
      r.samples.push_back(static_cast<std::uint16_t>(std::clamp(level, 0.0, 255.0)));
    }
  return r;
}

/// Adds levels to a pixel, within 0 to 255; nothing outside the picture.
inline void add_levels(Raster &r, int x, int y, int levels) {
  if (x < 0 || y < 0 || x >= r.width || y >= r.height) return;
  auto &sample = r.at(x, y, 0);
  sample = static_cast<std::uint16_t>(std::clamp(sample + levels, 0, 255));
}

/// A round speck.
inline void add_speck(Raster &r, int x0, int y0, int radius, int levels) {
  for (int y = -radius; y <= radius; ++y)
    for (int x = -radius; x <= radius; ++x)
      if (x * x + y * y <= radius * radius) add_levels(r, x0 + x, y0 + y, levels);
}

inline Raster mirrored(const Raster &r) {
  Raster turned = r;
  for (int y = 0; y < r.height; ++y)
    for (int x = 0; x < r.width; ++x) turned.at(x, y, 0) = r.at(r.width - 1 - x, y, 0);
  return turned;
}

inline stoneproof::GlassMap glass_map(const Raster &r,
                                      stoneproof::ColourModel colour = stoneproof::ColourModel::gray) {
  const stoneproof::RowLayout layout = layout_of(r, colour);
  stoneproof::GlassMeter meter(layout);
  for (int y = 0; y < r.height; ++y) meter.add(row_of(r, y).data());
  return meter.take();
}

} // namespace made
