// Pictures in memory for the benchmarks of detail. The only ways in are those of pixels.h; a benchmark's own.
#include "tests/bench/detail/pixels.h"

#include "engine/picture/preview.h"
#include "tests/engine/picture/make_pictures.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace bench {

double Pixels::between(double x, double y, int channel) const {
  x = std::clamp(x, 0.0, width - 1.0), y = std::clamp(y, 0.0, height - 1.0);
  const int left = std::min(static_cast<int>(x), std::max(0, width - 2)),
            top = std::min(static_cast<int>(y), std::max(0, height - 2));
  const int right = std::min(left + 1, width - 1), bottom = std::min(top + 1, height - 1);
  const double u = x - left, v = y - top;
  const auto value = [&](int i, int k) { return static_cast<double>(at(i, k)[channel]); };
  return (1 - v) * ((1 - u) * value(left, top) + u * value(right, top)) +
         v * ((1 - u) * value(left, bottom) + u * value(right, bottom));
}

Pixels load(const std::filesystem::path &file) {
  const auto facts = stoneproof::read_facts(file);
  if (facts) {
    const auto size = facts.value().size;
    const auto preview =
        stoneproof::read_preview(file, facts.value(),
                                 {{0, 0, static_cast<double>(size.width), static_cast<double>(size.height)},
                                  static_cast<int>(size.width),
                                  static_cast<int>(size.height)});
    if (preview) {
      Pixels picture(preview.value().width, preview.value().height);
      picture.rgb = preview.value().rgb;
      return picture;
    }
  }
  std::fprintf(stderr, "cannot read %s\n", file.c_str());
  std::exit(1);
}

std::vector<std::filesystem::path> pictures_of(const std::filesystem::path &folder) {
  std::vector<std::filesystem::path> files;
  for (const auto &entry : std::filesystem::directory_iterator(folder)) files.push_back(entry.path());
  std::ranges::sort(files);
  return files;
}

Pixels through_jpeg(const Pixels &picture, int quality, const std::filesystem::path &scratch) {
  made::Raster raster{picture.width, picture.height, 3, 8, {}};
  raster.samples.assign(picture.rgb.begin(), picture.rgb.end());
  made::JpegKind kind;
  kind.quality = quality;
  made::write_jpeg(scratch, raster, kind);
  return load(scratch);
}

Pixels cut(const Pixels &picture, int x, int y, int width, int height) {
  Pixels part(width, height);
  for (int row = 0; row < height; ++row)
    std::copy_n(picture.at(x, y + row), static_cast<std::ptrdiff_t>(width) * 3, part.at(0, row));
  return part;
}

Pixels resized(const Pixels &picture, int width, int height) {
  Pixels out(width, height);
  if (width <= picture.width && height <= picture.height) {
    stoneproof::AreaAverage average({0, static_cast<double>(picture.width)},
                                    {0, static_cast<double>(picture.height)}, width, height);
    for (int y = 0; y < picture.height; ++y) average.add(picture.at(0, y));
    out.rgb = average.take();
    return out;
  }
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x)
      for (int c = 0; c < 3; ++c)
        out.at(x, y)[c] = byte(picture.between((x + 0.5) * picture.width / width - 0.5,
                                               (y + 0.5) * picture.height / height - 0.5, c));
  return out;
}

Pixels with_noise(const Pixels &picture, double deviation, std::mt19937 &random) {
  std::normal_distribution<double> noise(0, deviation);
  Pixels out = picture;
  for (std::uint8_t &value : out.rgb) value = byte(value + noise(random));
  return out;
}

Pixels blurred(const Pixels &picture, double sigma) {
  const int reach = static_cast<int>(std::ceil(3 * sigma));
  std::vector<double> weights;
  double sum = 0;
  for (int i = -reach; i <= reach; ++i) sum += weights.emplace_back(std::exp(-0.5 * i * i / (sigma * sigma)));
  const auto along = [&](const Pixels &from, int dx, int dy) {
    Pixels to(from.width, from.height);
    for (int y = 0; y < from.height; ++y)
      for (int x = 0; x < from.width; ++x) {
        double mean[3] = {};
        for (int i = -reach; i <= reach; ++i) {
          const std::uint8_t *pixel =
              from.at(std::clamp(x + i * dx, 0, from.width - 1), std::clamp(y + i * dy, 0, from.height - 1));
          for (int c = 0; c < 3; ++c) mean[c] += weights[static_cast<std::size_t>(i + reach)] * pixel[c];
        }
        for (int c = 0; c < 3; ++c) to.at(x, y)[c] = byte(mean[c] / sum);
      }
    return to;
  };
  return along(along(picture, 1, 0), 0, 1);
}

stoneproof::RowLayout layout_of(const Pixels &picture) {
  stoneproof::RowLayout layout;
  layout.stored = {picture.width, picture.height};
  layout.width = picture.width, layout.height = picture.height;
  layout.channels = 3;
  layout.bits = 8;
  layout.colour = stoneproof::ColourModel::rgb;
  return layout;
}

std::vector<stoneproof::Tile> tiles_of(const Pixels &picture) {
  const stoneproof::RowLayout layout = layout_of(picture);
  stoneproof::TileSampler sampler({0, 0, picture.width, picture.height}, layout);
  for (int y = 0; y < picture.height; ++y) sampler.add(y, picture.at(0, y));
  return sampler.take();
}

stoneproof::SmallPicture small(const Pixels &picture) {
  const stoneproof::RowLayout layout = layout_of(picture);
  stoneproof::SmallPictureMaker maker(layout);
  for (int y = 0; y < picture.height; ++y) maker.add(y, picture.at(0, y));
  return maker.take();
}

} // namespace bench
