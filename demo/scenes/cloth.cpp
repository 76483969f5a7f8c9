// Lace and patchwork. Only way in: scenes.h. Looked at by eye.
#include "demo/scenes/scenes.h"

#include <array>

namespace stoneproof::demo {

namespace {

/// Over-and-under threads, `count` a unit: a factor for the cloth's colour.
double weave(Vec p, double count, std::uint32_t seed) {
  // No cloth lies so flat that its threads keep in step from one end to the other.
  const double x = (p.x + 0.02 * fractal(p.x * 20, p.y * 20, 3, seed + 7)) * count,
               y = (p.y + 0.02 * fractal(p.x * 20, p.y * 20, 3, seed + 8)) * count;
  const bool over = (whole(x) + whole(y)) % 2 == 0;
  const double u = x - whole(x) - 0.5, v = y - whole(y) - 0.5;
  const double round = over ? 1 - 1.6 * v * v : 1 - 1.6 * u * u;
  return (over ? 1.0 : 0.9) * round * (0.9 + 0.2 * chance(whole(x) / 3, whole(y), seed));
}

double thread(double distance, double width) { return ramp(width, width * 0.5, std::abs(distance)); }

/// How much white thread lies at a place of the lace: a rosette in each cell, hexagon net between them.
double lace_thread(Vec p, double cell) {
  const std::int32_t row = whole(p.y / cell);
  const double sx = p.x / cell + (row % 2 != 0 ? 0.5 : 0);
  const Vec q{sx - whole(sx) - 0.5, p.y / cell - row - 0.5};
  const double r = length(q), angle = std::atan2(q.y, q.x);
  const double net =
      std::min({std::abs(std::sin(q.x * 45)), std::abs(std::sin((q.x * 0.5 + q.y * 0.866) * 45)),
                std::abs(std::sin((q.x * 0.5 - q.y * 0.866) * 45))});
  double most = ramp(0.3, 0.12, net) * ramp(0.4, 0.42, r) * 0.75;
  most = std::max({most, thread(r - 0.4, 0.022), thread(r - 0.44 - 0.015 * std::cos(angle * 24), 0.016),
                   thread(r - 0.12, 0.022), thread(r - 0.06, 0.018)});
  const double petal = std::abs(std::sin(angle * 4)), edge = 0.14 + 0.23 * std::pow(petal, 0.6);
  most = std::max(most, thread(r - edge, 0.026));
  if (r > 0.13 && r < edge)
    most = std::max(most, 0.85 * ramp(0.5, 0.1, std::abs(std::sin(r * 90))) + 0.25 * petal);
  return most;
}

} // namespace

void paint_lace(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const double cell = random.between(0.22, 0.32);
  const Colour cloth = mix(rgb(0x2e3d4f), rgb(0x5b2431), random.share());
  canvas.shade([&](Vec p, Colour) {
    const Vec bent = p + Vec{0.03 * (fractal(p.x * 2, p.y * 2, 3, seed) - 0.5),
                             0.03 * (fractal(p.x * 2, p.y * 2, 3, seed + 1) - 0.5)};
    const double fold = fractal(p.x * 1.6, p.y * 1.6, 3, seed + 2);
    const Colour ground = cloth * (weave(p, 260, seed) * (0.6 + 0.8 * fold));
    const double above = lace_thread(bent, cell), shadow = lace_thread(bent - Vec{0.004, 0.005}, cell);
    const double twist = 0.84 + 0.16 * std::sin((bent.x + bent.y) * 1100);
    return mix(ground * (1 - 0.55 * shadow), rgb(0xf5eedd) * (twist * (0.75 + 0.4 * fold)), above);
  });
}

namespace {

Colour printed_patch(Vec q, std::int32_t kind, Colour colour, std::uint32_t seed) {
  const Colour pale = mix(colour, rgb(0xfbf4e4), 0.7), deep = colour * 0.6;
  switch (kind) {
  case 0: return std::sin(q.x * 40) > 0.3 ? pale : colour;
  case 1: {
    const Vec d{q.x * 7 - whole(q.x * 7) - 0.5, q.y * 7 - whole(q.y * 7) - 0.5};
    return mix(pale, colour, ramp(0.2, 0.26, length(d)));
  }
  case 2: return mix(colour, pale, (std::sin(q.x * 32) > 0 ? 0.5 : 0) + (std::sin(q.y * 32) > 0 ? 0.5 : 0));
  case 3: {
    const Vec d{q.x * 4 - whole(q.x * 4) - 0.5, q.y * 4 - whole(q.y * 4) - 0.5};
    const double petals = 0.24 + 0.1 * std::cos(5 * std::atan2(d.y, d.x));
    return length(d) < 0.08 ? rgb(0xf2c95c) : length(d) < petals ? pale : colour;
  }
  default: return mix(deep, colour, fractal(q.x * 6, q.y * 6, 4, seed));
  }
}

} // namespace

void paint_quilt(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  constexpr std::array colours = {rgb(0x9c3b3b), rgb(0x2f5573), rgb(0xb8863b), rgb(0x5f7447),
                                  rgb(0x7a5270), rgb(0xd9c9a6), rgb(0x3d3a47)};
  const double cell = 0.17;
  canvas.shade([&](Vec p, Colour) {
    const Vec at{p.x / cell + 0.02 * std::sin(p.y * 15), p.y / cell + 0.02 * std::sin(p.x * 13)};
    const std::int32_t ix = whole(at.x), iy = whole(at.y);
    const Vec q{at.x - ix, at.y - iy};
    const bool turned = (ix + iy) % 2 == 0;
    const double diagonal = turned ? q.x - q.y : q.x + q.y - 1;
    const auto half = static_cast<std::int32_t>(diagonal > 0);
    const auto colour = colours[scramble(ix * 2 + half, iy, seed) % colours.size()];
    const auto kind = static_cast<std::int32_t>(scramble(ix * 2 + half, iy, seed + 1) % 5);
    const double seam = std::min({q.x, 1 - q.x, q.y, 1 - q.y, std::abs(diagonal) * 0.7});
    const double puff =
        0.62 + 0.5 * ramp(0, 0.3, seam) + 0.25 * (fractal(p.x * 14, p.y * 14, 4, seed + 2) - 0.5);
    Colour c = printed_patch(q, kind, colour, seed + 3) * (puff * weave(p, 300, seed));
    const bool stitch =
        std::abs(seam - 0.06) < 0.008 && std::sin((q.x + q.y * (turned ? 1 : -1)) * 95) > -0.2;
    if (stitch) c = rgb(0xf6efdf);
    return c;
  });
}

} // namespace stoneproof::demo
