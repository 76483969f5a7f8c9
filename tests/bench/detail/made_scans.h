// Scans of one scanner made of photographs, with dirt at known places.
#pragma once

#include "engine/measure/glass_dirt.h"

#include <filesystem>
#include <random>
#include <string>
#include <vector>

namespace bench {

struct Gray {
  int width = 0, height = 0;
  std::vector<float> pixels;
  float &at(int x, int y) { return pixels[static_cast<std::size_t>(y * width + x)]; }
  float at(int x, int y) const { return pixels[static_cast<std::size_t>(y * width + x)]; }
};

Gray read_pgm(const std::filesystem::path &file);

enum class Bed { full, print }; ///< filled by the photograph, or a print of it somewhere on a white lid
struct Kind {
  std::string name;
  Bed bed = Bed::full;
  int jitter = 0;       ///< pixels by which a whole scan may have moved, either way along each axis
  double noise = 2;     ///< standard deviation, levels
  int jpeg_quality = 0; ///< 0: not saved as JPEG
  int scale = 1;        ///< the scan is so many times finer than the bed; its dirt is not
};

/// Something on the glass; places and sizes in pixels of the scan.
struct Dirt {
  bool hair = false;
  double x = 0, y = 0, diameter = 0;
  double length = 0, angle = 0, bend = 0; ///< of a hair
  double opacity = 1, gray = 0;
  std::vector<double> contrasts; ///< by how much it changed the mean of what it covers, in each scan, levels
};
struct Streak {
  int column = -1; ///< -1: none
  double levels = 0;
};

using Random = std::mt19937;
double uniform(Random &random, double from, double to);

std::vector<Dirt> some_dirt(Random &random, int width, int height, int specks, int hairs);
/// Scans of so many different photographs; notes in the dirt what it changed.
std::vector<Gray> make_scans(Random &random, const std::vector<Gray> &photos, std::size_t count,
                             const Kind &kind, std::vector<Dirt> &dirt, const Streak &streak);
stoneproof::GlassMap map_of(const Gray &scan);

} // namespace bench
