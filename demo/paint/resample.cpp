// What lenses and software do to a finished picture. Only way in: canvas.h. What it makes is looked at by
// eye.
#include "demo/paint/canvas.h"

#include <algorithm>
#include <cmath>

namespace stoneproof::demo {

Canvas resized(const Canvas &canvas, int width, int height) {
  Canvas out(width, height);
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      const double from_x = (x + 0.5) * canvas.width() / width - 0.5,
                   from_y = (y + 0.5) * canvas.height() / height - 0.5;
      const int left = static_cast<int>(std::floor(from_x)), top = static_cast<int>(std::floor(from_y));
      const auto row = [&](int at) {
        return mix(canvas.get_inside(left, at), canvas.get_inside(left + 1, at), from_x - left);
      };
      out.set(x, y, mix(row(top), row(top + 1), from_y - top));
    }
  return out;
}

void blur(Canvas &canvas, double deviation) {
  const int reach = static_cast<int>(std::ceil(3 * deviation));
  std::vector<double> weights;
  double sum = 0;
  for (int k = -reach; k <= reach; ++k) {
    weights.push_back(std::exp(-k * k / (2 * deviation * deviation)));
    sum += weights.back();
  }
  for (const bool down : {false, true}) {
    const Canvas from = canvas;
    for (int y = 0; y < canvas.height(); ++y)
      for (int x = 0; x < canvas.width(); ++x) {
        Colour c{0, 0, 0};
        for (int k = -reach; k <= reach; ++k) {
          const double weight = weights[static_cast<std::size_t>(k + reach)] / sum;
          c = c + from.get_inside(down ? x : x + k, down ? y + k : y) * weight;
        }
        canvas.set(x, y, c);
      }
  }
}

} // namespace stoneproof::demo
