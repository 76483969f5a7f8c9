// Only way in: nature.h. What it paints is looked at by eye.
#include "demo/scenes/nature.h"

namespace stoneproof::demo {

Sky::Sky(const Canvas &canvas, double horizon, Colour zenith, Colour haze, std::uint32_t seed)
    : horizon_(horizon), zenith_(zenith), haze_(haze),
      columns_(static_cast<int>(canvas.aspect() * cells) + 2), rows_(static_cast<int>(horizon * cells) + 2) {
  for (int y = 0; y < rows_; ++y)
    for (int x = 0; x < columns_; ++x) {
      const Vec p{x / cells, y / cells};
      // Clouds flatten towards the horizon, as seen from below.
      const double flat = 1.6 / (1.15 - clamp01(p.y / horizon) * 0.85);
      const double cloud = fractal(p.x * 2.2 + 5, (p.y + 0.1) * 2.2 * flat, 6, seed);
      const double light = fractal(p.x * 2.2 + 5.1, (p.y + 0.14) * 2.2 * flat, 4, seed);
      grid_.push_back({ramp(0.5, 0.72, cloud) * 0.85, clamp01((light - cloud) * 3 + 0.35)});
    }
}

const Sky::Cell &Sky::cell(int x, int y) const {
  return grid_[static_cast<std::size_t>(std::clamp(y, 0, rows_ - 1) * columns_ +
                                        std::clamp(x, 0, columns_ - 1))];
}

Colour Sky::operator()(Vec p) const {
  const double gx = p.x * cells, gy = p.y * cells;
  const std::int32_t x = whole(gx), y = whole(gy);
  const auto between = [&](double Cell::*part) {
    const double u = gx - x, v = gy - y;
    return (cell(x, y).*part * (1 - u) + cell(x + 1, y).*part * u) * (1 - v) +
           (cell(x, y + 1).*part * (1 - u) + cell(x + 1, y + 1).*part * u) * v;
  };
  const Colour clear = mix(zenith_, haze_, ramp(0, 1, p.y / horizon_));
  return mix(clear, mix(rgb(0xfdf8ec), rgb(0xa9aeb5), between(&Cell::shade)), between(&Cell::cover));
}

double ridge(double x, double base, double height, double pitch, std::uint32_t seed) {
  return base - height * (fractal(x * pitch + 3, 0.5, 6, seed) - 0.5) * 2;
}

Skyline::Skyline(const Canvas &canvas, double base, double height, double pitch, std::uint32_t seed)
    : scale_(canvas.height()) {
  for (int x = 0; x < canvas.width(); ++x)
    tops_.push_back(ridge(canvas.place(x, 0).x, base, height, pitch, seed));
}

namespace {

struct Limb {
  Vec from;
  double angle, length, width;
  int level;
};

struct TreeColours {
  Colour bark, leaf;
  bool bare;
};

void foliage(Canvas &canvas, Vec at, double size, Colour leaf, Random &random) {
  const auto count = static_cast<int>(clamp01(size * canvas.height() / 70) * 90) + 10;
  for (int i = 0; i < count; ++i) {
    const Vec off = polar(random.share() * 2 * pi, size * std::sqrt(random.share()));
    const double lit = clamp01(0.5 - off.y / size * 0.35 - off.x / size * 0.2 + random.bell() * 0.18);
    const Colour c = mix(leaf * 0.45, mix(leaf, rgb(0xf5eaa0), 0.35), lit);
    disc(canvas, at + off, size * random.between(0.04, 0.11), c, 0.9);
  }
}

void grow(Canvas &canvas, const Limb &limb, const TreeColours &colours, Random &random) {
  const Vec to = limb.from + polar(limb.angle, limb.length);
  line(canvas, limb.from, to, limb.width, mix(colours.bark * 0.7, colours.bark, random.share()));
  if (limb.level == 0) {
    if (!colours.bare) foliage(canvas, to, limb.length * 2.1, colours.leaf, random);
    return;
  }
  const int forks = 2 + random.below(2);
  for (int i = 0; i < forks; ++i) {
    const double spread = (i - (forks - 1) / 2.0) * random.between(0.45, 0.75) + random.bell() * 0.12;
    // Limbs bend back towards the light.
    const double angle = (limb.angle + spread) * 0.88 - pi / 2 * 0.12;
    grow(canvas, {to, angle, limb.length * random.between(0.68, 0.84), limb.width * 0.66, limb.level - 1},
         colours, random);
  }
}

} // namespace

void tree(Canvas &canvas, Vec foot, double height, Colour bark, Colour leaf, bool bare, Random &random) {
  const int levels = height * canvas.height() < 60 ? 3 : bare ? 7 : 5;
  grow(canvas, {foot, -pi / 2 + random.bell() * 0.06, height * 0.25, height * 0.05, levels},
       {bark, leaf, bare}, random);
}

void fir(Canvas &canvas, Vec foot, double height, Colour needles, double snow, Random &random) {
  line(canvas, foot, foot - Vec{0, height * 0.9}, height * 0.03, needles * 0.5);
  const auto layers = static_cast<int>(std::clamp(height * canvas.height() / 9, 8.0, 46.0));
  for (int i = 0; i < layers; ++i) {
    const double down = (i + 0.5) / layers, y = foot.y - height * (1 - down * 0.9);
    const double half = height * 0.23 * down * random.between(0.75, 1.1);
    for (int side = -1; side <= 1; side += 2)
      for (int n = 0; n < 5; ++n) {
        const double reach = half * random.between(0.4, 1.0);
        const Vec from{foot.x, y}, to{foot.x + side * reach, y + reach * 0.42};
        const Colour c = mix(needles * 0.6, needles * 1.25, random.share());
        line(canvas, from, to, height * 0.012, c);
        if (snow > random.share())
          line(canvas, from + (to - from) * 0.45, to - Vec{0, height * 0.006}, height * 0.011, rgb(0xf2f4f6),
               0.9);
      }
  }
}

void grass(Canvas &canvas, double top, double bottom, Colour light, Colour dark, int blades, Random &random) {
  for (int i = 0; i < blades; ++i) {
    const double depth = static_cast<double>(i) / blades;
    const Vec at{random.share() * canvas.aspect(), top + (bottom - top) * depth};
    const double tall = 0.008 + 0.03 * depth * depth * random.between(0.6, 1.4);
    const Vec tip = at + Vec{random.bell() * tall * 0.4, -tall};
    line(canvas, at, tip, 0.0008 + 0.0016 * depth, mix(dark, light, random.share()), 0.85);
  }
}

void flood(Canvas &canvas, double level, Colour tint, double ripple, std::uint32_t seed) {
  const int first = static_cast<int>(level * canvas.height());
  for (int y = std::max(first, 0); y < canvas.height(); ++y)
    for (int x = 0; x < canvas.width(); ++x) {
      const Vec p = canvas.place(x, y);
      const double depth = (p.y - level) / (1 - level), near = 0.05 + depth;
      // Waves are as long as they are near: the noise is squeezed towards the far shore.
      const double wave = fractal(p.x * 5 / near, 5 / near * 1.6, 5, seed) - 0.5;
      const double slope = fractal(p.x * 5 / near + 0.3, 5 / near * 1.6 + 0.9, 5, seed) - 0.5;
      const double sx = p.x + slope * ripple * (0.3 + depth),
                   sy = level - (p.y - level) * 0.92 + wave * ripple * (0.25 + depth);
      const Colour mirrored =
          canvas.get_inside(static_cast<int>(sx * canvas.height()),
                            std::clamp(static_cast<int>(sy * canvas.height()), 0, first - 1));
      const double glint = ramp(0.14, 0.26, wave) * 0.4;
      canvas.set(x, y, mix(mix(mirrored * 0.9, tint, 0.18 + 0.35 * depth), rgb(0xf6f3e6), glint));
    }
}

Colour bricks(Vec p, double courses, Colour brick, Colour mortar, std::uint32_t seed) {
  const double row = p.y * courses;
  const std::int32_t iy = whole(row);
  const double along = p.x * courses / 2.9 + (iy % 2 != 0 ? 0.5 : 0);
  const std::int32_t ix = whole(along);
  const double v = row - iy, u = (along - ix) * 2.9;
  const double wear = (noise(p.x * courses * 2, p.y * courses * 2, seed) - 0.5) * 0.12;
  const double inside = std::min(std::min(u, 2.9 - u), std::min(v, 1 - v)) + wear;
  const double shade =
      0.72 + 0.5 * chance(ix, iy, seed) * (0.5 + 0.5 * fractal(p.x * courses, p.y * courses, 3, seed + 5));
  const Colour face = mix(brick, rgb(0x6d4a3a), chance(ix, iy, seed + 1) * 0.4) * shade;
  return mix(mortar * (0.8 + 0.3 * noise(p.x * courses * 5, p.y * courses * 5, seed + 2)), face,
             ramp(0.06, 0.13, inside));
}

Colour tiles(Vec p, double rows, Colour tile, std::uint32_t seed) {
  const double row = p.y * rows;
  const std::int32_t iy = whole(row);
  const double along = p.x * rows * 1.2 + (iy % 2 != 0 ? 0.5 : 0);
  const std::int32_t ix = whole(along);
  const double u = along - ix - 0.5, v = row - iy;
  const double round = v - (0.72 + 0.28 * std::sqrt(std::max(0.0, 1 - 4 * u * u)));
  const double lit = 0.65 + 0.35 * v + 0.3 * (chance(ix, iy, seed) - 0.5);
  const double moss = ramp(0.55, 0.75, fractal(p.x * 9, p.y * 9, 4, seed + 3));
  const Colour face = mix(tile * lit, rgb(0x6b6b45) * lit, moss * 0.5);
  return mix(face, tile * 0.25, std::max(ramp(0.0, 0.05, round), ramp(0.44, 0.5, std::abs(u)) * 0.6));
}

} // namespace stoneproof::demo
