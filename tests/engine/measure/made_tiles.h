// Made pictures for the measures of detail: textures of known sharpness, enlarged, blurred and turned by
// plain code.
#pragma once

#include "engine/measure/tile.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <random>
#include <vector>

namespace stoneproof::made {

/// A gray picture in doubles.
struct Gray {
  int width = 0, height = 0;
  std::vector<double> values;
  double at(int x, int y) const {
    x = std::clamp(x, 0, width - 1), y = std::clamp(y, 0, height - 1);
    return values[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                  static_cast<std::size_t>(x)];
  }
};

inline Gray drawn(int width, int height, const std::function<double(int, int)> &value) {
  Gray gray{width, height, {}};
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) gray.values.push_back(value(x, y));
  return gray;
}

/// Overlapping discs of many sizes and levels, with grain: edges in every direction, as sharp as pixels allow
/// (each is the mean of 16 points).
inline Gray discs(int width, int height, unsigned seed = 1, double grain = 2) {
  std::mt19937 random(seed);
  struct Disc {
    double x, y, radius, level;
  };
  std::vector<Disc> all;
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  for (int i = 0; i < width * height / 400; ++i)
    all.push_back(
        {between(0, width), between(0, height), 2 + 30 * std::pow(between(0, 1), 4), between(30, 225)});
  Gray gray = drawn(width, height, [](int, int) { return 128.0; });
  for (const Disc &disc : all)
    for (int y = std::max(0, static_cast<int>(disc.y - disc.radius) - 1);
         y < std::min(height, static_cast<int>(disc.y + disc.radius) + 2); ++y)
      for (int x = std::max(0, static_cast<int>(disc.x - disc.radius) - 1);
           x < std::min(width, static_cast<int>(disc.x + disc.radius) + 2); ++x) {
        int inside = 0;
        for (int part = 0; part < 16; ++part)
          inside +=
              std::hypot(x + (part % 4 + 0.5) / 4 - disc.x, y + (part / 4 + 0.5) / 4 - disc.y) < disc.radius;
        double &value = gray.values[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                                    static_cast<std::size_t>(x)];
        value += (disc.level - value) * inside / 16;
      }
  std::normal_distribution<double> noise(0, grain);
  if (grain > 0)
    for (double &value : gray.values) value += noise(random);
  return gray;
}

using Kernel = double (*)(double);
inline double triangle(double x) { return std::max(0.0, 1 - std::abs(x)); }
/// Catmull and Rom, 1974.
inline double cubic(double x) {
  x = std::abs(x);
  return x < 1 ? 1.5 * x * x * x - 2.5 * x * x + 1 : x < 2 ? -0.5 * x * x * x + 2.5 * x * x - 4 * x + 2 : 0;
}
inline double nearest(double x) { return x >= -0.5 && x < 0.5 ? 1 : 0; }

inline Gray transposed(const Gray &gray) {
  return drawn(gray.height, gray.width, [&](int x, int y) { return gray.at(y, x); });
}
inline Gray mirrored(const Gray &gray) {
  return drawn(gray.width, gray.height, [&](int x, int y) { return gray.at(gray.width - 1 - x, y); });
}

/// Along the rows only.
inline Gray widened(const Gray &gray, double factor, Kernel kernel) {
  return drawn(static_cast<int>(gray.width * factor), gray.height, [&](int x, int y) {
    const double centre = (x + 0.5) / factor - 0.5;
    double sum = 0, weights = 0;
    for (int k = static_cast<int>(std::floor(centre)) - 2; k <= static_cast<int>(std::floor(centre)) + 3;
         ++k) {
      const double weight = kernel(centre - k);
      sum += weight * gray.at(k, y), weights += weight;
    }
    return sum / weights;
  });
}
inline Gray enlarged(const Gray &gray, double factor, Kernel kernel) {
  return transposed(widened(transposed(widened(gray, factor, kernel)), factor, kernel));
}

/// By area, both ways, to a share of its size.
inline Gray reduced(const Gray &gray, double share) {
  const auto along = [&](const Gray &from) {
    return drawn(static_cast<int>(from.width * share), from.height, [&](int x, int y) {
      const double begin = x / share, end = (x + 1) / share;
      double sum = 0;
      for (int k = static_cast<int>(begin); k < end; ++k)
        sum += from.at(k, y) * (std::min(end, k + 1.0) - std::max(begin, static_cast<double>(k)));
      return sum * share;
    });
  };
  return transposed(along(transposed(along(gray))));
}

/// By a Gaussian, both ways.
inline Gray blurred(const Gray &gray, double sigma) {
  const int reach = static_cast<int>(std::ceil(4 * sigma));
  const auto along = [&](const Gray &from) {
    return drawn(from.width, from.height, [&](int x, int y) {
      double sum = 0, weights = 0;
      for (int k = -reach; k <= reach; ++k) {
        const double weight = std::exp(-k * k / (2 * sigma * sigma));
        sum += weight * from.at(x + k, y), weights += weight;
      }
      return sum / weights;
    });
  };
  return transposed(along(transposed(along(gray))));
}

inline std::vector<std::uint8_t> bytes_of(const Gray &gray) {
  std::vector<std::uint8_t> bytes;
  for (const double value : gray.values)
    bytes.push_back(static_cast<std::uint8_t>(std::clamp(std::lround(value), 0L, 255L)));
  return bytes;
}

inline RowLayout gray_layout(const Gray &gray) {
  RowLayout layout;
  layout.stored = {gray.width, gray.height};
  layout.width = gray.width, layout.height = gray.height;
  layout.channels = 1;
  layout.colour = ColourModel::gray;
  return layout;
}

/// The tiles of a whole picture, or of a part.
inline std::vector<Tile> tiles_of(const Gray &gray, std::optional<PixelPart> part = {}) {
  const RowLayout layout = gray_layout(gray);
  const std::vector<std::uint8_t> bytes = bytes_of(gray);
  TileSampler sampler(part.value_or(PixelPart{0, 0, gray.width, gray.height}), layout);
  for (int y = 0; y < gray.height; ++y)
    sampler.add(y, bytes.data() + static_cast<std::size_t>(y) * static_cast<std::size_t>(gray.width));
  return sampler.take();
}

} // namespace stoneproof::made
