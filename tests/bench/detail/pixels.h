// Pictures in memory for the benchmarks of detail: read, written as a JPEG and read again, cut into tiles.
#pragma once

#include "engine/measure/small_picture.h"
#include "engine/measure/tile.h"

#include <cstdint>
#include <filesystem>
#include <random>
#include <string>
#include <vector>

namespace bench {

/// 8-bit RGB.
struct Pixels {
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgb;

  Pixels() = default;
  Pixels(int w, int h)
      : width(w), height(h), rgb(static_cast<std::size_t>(w) * static_cast<std::size_t>(h) * 3) {}
  std::uint8_t *at(int x, int y) {
    return rgb.data() +
           (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)) * 3;
  }
  const std::uint8_t *at(int x, int y) const { return const_cast<Pixels *>(this)->at(x, y); }
  /// Between pixels, which stand at whole numbers; beyond the edge the last one.
  double between(double x, double y, int channel) const;
  double luma(int x, int y) const {
    const std::uint8_t *p = at(x, y);
    return 0.299 * p[0] + 0.587 * p[1] + 0.114 * p[2];
  }
};

inline std::uint8_t byte(double value) {
  return static_cast<std::uint8_t>(value < 0 ? 0 : value > 255 ? 255 : value + 0.5);
}

inline double between(std::mt19937 &random, double low, double high) {
  return std::uniform_real_distribution<double>(low, high)(random);
}

/// The whole picture as it is seen; ends the program where it cannot be read.
Pixels load(const std::filesystem::path &file);
std::vector<std::filesystem::path> pictures_of(const std::filesystem::path &folder);
/// Through a JPEG of that quality; `scratch` is a file to write.
Pixels through_jpeg(const Pixels &picture, int quality, const std::filesystem::path &scratch);
Pixels cut(const Pixels &picture, int x, int y, int width, int height);
/// To another size: means of areas when smaller, between pixels when larger.
Pixels resized(const Pixels &picture, int width, int height);
Pixels with_noise(const Pixels &picture, double deviation, std::mt19937 &random);
Pixels blurred(const Pixels &picture, double sigma);
/// Its rows as a decoder would hand them over.
stoneproof::RowLayout layout_of(const Pixels &picture);
/// As WholeMeter makes it of those rows.
stoneproof::SmallPicture small(const Pixels &picture);
std::vector<stoneproof::Tile> tiles_of(const Pixels &picture);

} // namespace bench
