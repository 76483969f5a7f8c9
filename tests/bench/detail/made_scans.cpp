// Makes scans with dirt. Only ways in: made_scans.h. Used by tests/bench/detail/glass.cpp, which shows its
// rates.
#include "tests/bench/detail/made_scans.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <numeric>

#include <jpeglib.h>

namespace bench {

using namespace stoneproof;

double uniform(Random &random, double from, double to) {
  return from + (to - from) * std::uniform_real_distribution<double>(0, 1)(random);
}

namespace {

int whole(Random &random, int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); }

Gray empty_bed(int width, int height, float level) {
  return {width, height, std::vector<float>(static_cast<std::size_t>(width * height), level)};
}

Gray placed(Random &random, const Gray &photo, Bed bed) {
  Gray scan = empty_bed(850, 1100, 244);
  const bool mirror = whole(random, 0, 1) == 1, turn = whole(random, 0, 1) == 1;
  const int dx = whole(random, 0, std::abs(photo.width - scan.width)),
            dy = whole(random, 0, std::abs(photo.height - scan.height));
  const int left = bed == Bed::print ? dx : 0, top = bed == Bed::print ? dy : 0;
  const int width = std::min(scan.width, photo.width), height = std::min(scan.height, photo.height);
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      int u = x + (photo.width > scan.width ? dx : 0), v = y + (photo.height > scan.height ? dy : 0);
      if (mirror) u = photo.width - 1 - u;
      if (turn) u = photo.width - 1 - u, v = photo.height - 1 - v;
      scan.at(left + x, top + y) = photo.at(u, v);
    }
  return scan;
}

/// What lens and sensor of the scanner blur: a Gaussian of 0.6 pixels, which leaves 0.68, 0.16 of a pixel in
/// itself and its neighbours.
void blur(Gray &scan) {
  const auto weigh = [](float a, float b, float c) { return 0.16f * a + 0.68f * b + 0.16f * c; };
  Gray across = scan;
  for (int y = 0; y < scan.height; ++y)
    for (int x = 1; x + 1 < scan.width; ++x)
      across.at(x, y) = weigh(scan.at(x - 1, y), scan.at(x, y), scan.at(x + 1, y));
  scan = across;
  for (int y = 1; y + 1 < scan.height; ++y)
    for (int x = 0; x < scan.width; ++x)
      scan.at(x, y) = weigh(across.at(x, y - 1), across.at(x, y), across.at(x, y + 1));
}

/// Finer by a whole factor: between pixels in straight lines.
Gray finer(const Gray &scan, int scale) {
  if (scale == 1) return scan;
  Gray fine = empty_bed(scan.width * scale, scan.height * scale, 0);
  for (int y = 0; y < fine.height; ++y)
    for (int x = 0; x < fine.width; ++x) {
      const double u = std::clamp((x + 0.5) / scale - 0.5, 0.0, scan.width - 1.001),
                   v = std::clamp((y + 0.5) / scale - 0.5, 0.0, scan.height - 1.001);
      const int i = static_cast<int>(u), k = static_cast<int>(v);
      const auto a = static_cast<float>(u - i), b = static_cast<float>(v - k);
      fine.at(x, y) = (scan.at(i, k) * (1 - a) + scan.at(i + 1, k) * a) * (1 - b) +
                      (scan.at(i, k + 1) * (1 - a) + scan.at(i + 1, k + 1) * a) * b;
    }
  return fine;
}

/// How far a point lies from the dirt's middle line; a hair is an arc, as a row of points.
double distance(const Dirt &dirt, double x, double y) {
  if (!dirt.hair) return std::hypot(x, y);
  double nearest = 1e9;
  for (double t = -0.5; t <= 0.5; t += 0.5 / dirt.length) {
    const double along = t * dirt.length, aside = dirt.bend * (4 * t * t - 0.5) * dirt.length / 2;
    const double u = along * std::cos(dirt.angle) - aside * std::sin(dirt.angle),
                 v = along * std::sin(dirt.angle) + aside * std::cos(dirt.angle);
    nearest = std::min(nearest, std::hypot(x - u, y - v));
  }
  return nearest;
}

void lay(Gray &scan, Dirt &dirt, double x0, double y0) {
  const int reach = static_cast<int>(dirt.hair ? dirt.length : dirt.diameter) + 6;
  double changed = 0, most = 0;
  for (int y = std::max(0, static_cast<int>(y0) - reach);
       y < std::min(scan.height, static_cast<int>(y0) + reach); ++y)
    for (int x = std::max(0, static_cast<int>(x0) - reach);
         x < std::min(scan.width, static_cast<int>(x0) + reach); ++x) {
      const double beyond = distance(dirt, x - x0, y - y0) - dirt.diameter / 2;
      const double cover = dirt.opacity / (1 + std::exp(std::min(beyond / 0.4, 40.0)));
      if (cover < 0.02) continue;
      float &pixel = scan.at(x, y);
      const double change = cover * (dirt.gray - static_cast<double>(pixel));
      pixel += static_cast<float>(change);
      if (cover > 0.5 * dirt.opacity) changed += change, most += 1;
    }
  dirt.contrasts.push_back(most > 0 ? std::abs(changed) / most : 0);
}

void save_as_jpeg(Gray &scan, int quality) {
  std::vector<JSAMPLE> pixels(scan.pixels.size());
  std::transform(scan.pixels.begin(), scan.pixels.end(), pixels.begin(),
                 [](float p) { return static_cast<JSAMPLE>(p); });
  unsigned char *bytes = nullptr;
  unsigned long size = 0;
  jpeg_error_mgr errors{};
  jpeg_compress_struct to{};
  to.err = jpeg_std_error(&errors);
  jpeg_create_compress(&to);
  jpeg_mem_dest(&to, &bytes, &size);
  to.image_width = static_cast<JDIMENSION>(scan.width),
  to.image_height = static_cast<JDIMENSION>(scan.height);
  to.input_components = 1, to.in_color_space = JCS_GRAYSCALE;
  jpeg_set_defaults(&to);
  jpeg_set_quality(&to, quality, TRUE);
  jpeg_start_compress(&to, TRUE);
  for (std::size_t y = 0; y < to.image_height; ++y) {
    JSAMPROW row = pixels.data() + y * to.image_width;
    jpeg_write_scanlines(&to, &row, 1);
  }
  jpeg_finish_compress(&to);
  jpeg_destroy_compress(&to);

  jpeg_decompress_struct from{};
  from.err = jpeg_std_error(&errors);
  jpeg_create_decompress(&from);
  jpeg_mem_src(&from, bytes, size);
  jpeg_read_header(&from, TRUE);
  jpeg_start_decompress(&from);
  while (from.output_scanline < from.output_height) {
    JSAMPROW row = pixels.data() + std::size_t{from.output_scanline} * from.output_width;
    jpeg_read_scanlines(&from, &row, 1);
  }
  jpeg_finish_decompress(&from);
  jpeg_destroy_decompress(&from);
  std::free(bytes);
  std::transform(pixels.begin(), pixels.end(), scan.pixels.begin(),
                 [](JSAMPLE p) { return static_cast<float>(p); });
}

} // namespace

Gray read_pgm(const std::filesystem::path &file) {
  std::ifstream in(file, std::ios::binary);
  std::string magic;
  Gray gray;
  int most = 0;
  in >> magic >> gray.width >> gray.height >> most;
  in.get();
  std::vector<char> bytes(static_cast<std::size_t>(gray.width * gray.height));
  in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  if (!in || magic != "P5" || most != 255) {
    std::fprintf(stderr, "%s is no PGM of 8 bits\n", file.c_str());
    std::exit(1);
  }
  for (const char byte : bytes) gray.pixels.push_back(static_cast<float>(static_cast<unsigned char>(byte)));
  return gray;
}

std::vector<Dirt> some_dirt(Random &random, int width, int height, int specks, int hairs) {
  constexpr double grays[] = {60, 110, 190, 225};
  std::vector<Dirt> dirt;
  for (int i = 0; i < specks + hairs; ++i) {
    Dirt d;
    d.hair = i >= specks;
    const double room = 60;
    d.x = uniform(random, room, width - room), d.y = uniform(random, room, height - room);
    d.diameter = (d.hair ? uniform(random, 1, 2) : uniform(random, 2, 8));
    d.opacity = uniform(random, 0.2, 1);
    d.gray = grays[whole(random, 0, 3)];
    if (d.hair) {
      d.length = uniform(random, 20, 55);
      d.angle = uniform(random, 0, 3.14159);
      d.bend = uniform(random, -0.4, 0.4);
    }
    dirt.push_back(d);
  }
  return dirt;
}

std::vector<Gray> make_scans(Random &random, const std::vector<Gray> &photos, std::size_t count,
                             const Kind &kind, std::vector<Dirt> &dirt, const Streak &streak) {
  std::vector<std::size_t> order(photos.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::shuffle(order.begin(), order.end(), random);
  std::normal_distribution<float> noise(0, static_cast<float>(kind.noise));
  std::vector<Gray> scans;
  for (std::size_t i = 0; i < count; ++i) {
    Gray scan = placed(random, photos[order[i]], kind.bed);
    blur(scan);
    scan = finer(scan, kind.scale);
    const int dx = whole(random, -kind.jitter, kind.jitter), dy = whole(random, -kind.jitter, kind.jitter);
    for (Dirt &d : dirt) lay(scan, d, d.x + dx, d.y + dy);
    if (streak.column >= 0)
      for (int y = 0; y < scan.height; ++y)
        scan.at(streak.column + dx, y) += static_cast<float>(streak.levels);
    for (float &pixel : scan.pixels) pixel = std::round(std::clamp(pixel + noise(random), 0.0f, 255.0f));
    if (kind.jpeg_quality) save_as_jpeg(scan, kind.jpeg_quality);
    scans.push_back(std::move(scan));
  }
  return scans;
}

GlassMap map_of(const Gray &scan) {
  RowLayout layout;
  layout.stored = {scan.width, scan.height};
  layout.width = scan.width, layout.height = scan.height;
  layout.channels = 1;
  layout.colour = ColourModel::gray;
  GlassMeter meter(layout);
  std::vector<std::uint8_t> row(static_cast<std::size_t>(scan.width));
  for (int y = 0; y < scan.height; ++y) {
    for (int x = 0; x < scan.width; ++x)
      row[static_cast<std::size_t>(x)] = static_cast<std::uint8_t>(scan.at(x, y));
    meter.add(row.data());
  }
  return meter.take();
}

} // namespace bench
