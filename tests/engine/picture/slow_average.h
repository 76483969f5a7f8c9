// The preview as a slow, plain reference makes it: every new pixel looks at every old pixel that it touches.
#pragma once

#include "engine/picture/preview.h"
#include "tests/engine/picture/make_pictures.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace made {

using Rgb = std::array<double, 3>;
/// The colour of a pixel of the picture as it is seen.
using Look = std::function<Rgb(int x, int y)>;

/// The mean colour of an area; edges may lie inside pixels.
inline Rgb slow_mean(const Look &look, double left, double top, double right, double bottom) {
  Rgb sum{};
  double weight = 0;
  for (int y = static_cast<int>(std::floor(top)); y < bottom; ++y)
    for (int x = static_cast<int>(std::floor(left)); x < right; ++x) {
      const double w = (std::min(right, x + 1.0) - std::max(left, x + 0.0)) *
                       (std::min(bottom, y + 1.0) - std::max(top, y + 0.0));
      if (w <= 1e-9) continue;
      const Rgb colour = look(x, y);
      for (std::size_t c = 0; c < 3; ++c) sum[c] += w * colour[c];
      weight += w;
    }
  for (double &c : sum) c /= weight;
  return sum;
}

/// The largest difference of any sample between a preview and the reference; `scale` is the size of a pixel
/// of `look` against the picture's own.
inline double worst_difference(const stoneproof::Preview &preview, const Look &look, double scale = 1) {
  const auto &part = preview.part;
  const double step_x = part.width * scale / preview.width, step_y = part.height * scale / preview.height;
  double worst = 0;
  for (int y = 0; y < preview.height; ++y)
    for (int x = 0; x < preview.width; ++x) {
      const double left = part.x * scale + x * step_x, top = part.y * scale + y * step_y;
      const Rgb want = slow_mean(look, left, top, left + step_x, top + step_y);
      const auto at = (static_cast<std::size_t>(y) * static_cast<std::size_t>(preview.width) +
                       static_cast<std::size_t>(x)) *
                      3;
      for (std::size_t c = 0; c < 3; ++c) worst = std::max(worst, std::abs(want[c] - preview.rgb[at + c]));
    }
  return worst;
}

/// A raster of 8-bit RGB or gray as it is.
inline Look look_at(const Raster &raster) {
  return [&raster](int x, int y) {
    Rgb colour{};
    for (int c = 0; c < 3; ++c)
      colour[static_cast<std::size_t>(c)] = raster.at(x, y, raster.channels == 1 ? 0 : c);
    return colour;
  };
}

} // namespace made
