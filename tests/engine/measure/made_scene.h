// Scenes of soft blobs, and pictures of them.
#pragma once

#include "engine/measure/copy_fingerprint.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <random>
#include <vector>

namespace stoneproof::test {

using Scene = std::function<double(double, double)>;

/// So many soft blobs of chance over the square from 0 to 1.
inline Scene scene(unsigned seed, int count = 60) {
  struct Blob {
    double x, y, size, light;
  };
  std::mt19937 random(seed);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  std::vector<Blob> blobs;
  for (int i = 0; i < count; ++i)
    blobs.push_back({between(0, 1), between(0, 1), between(0.02, 0.2), between(-70, 70)});
  return [=](double x, double y) {
    double light = 128;
    for (const Blob &b : blobs)
      light += b.light * std::exp(-((x - b.x) * (x - b.x) + (y - b.y) * (y - b.y)) / (b.size * b.size));
    return light;
  };
}

inline SmallPicture seen(const Scene &scene, int width, int height, const GrayPart &part = {}) {
  SmallPicture picture{width, height, {}};
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      const double light = scene(part.left + (x + 0.5) / width * (part.right - part.left),
                                 part.top + (y + 0.5) / height * (part.bottom - part.top));
      picture.rgb.insert(picture.rgb.end(), 3, static_cast<std::uint8_t>(std::clamp(light, 0.0, 255.0)));
    }
  return picture;
}

} // namespace stoneproof::test
