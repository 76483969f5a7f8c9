// House, windmill and village street. Only way in: scenes.h. Looked at by eye.
#include "demo/scenes/nature.h"
#include "demo/scenes/scenes.h"

namespace stoneproof::demo {

namespace {

void sash_window(Canvas &canvas, double left, double top, double wide, double tall, Random &random) {
  const Colour frame = rgb(0xf1ead8);
  const std::uint32_t seed = random.seed();
  fill(canvas, box(left - wide * 0.12, top - tall * 0.08, left + wide * 1.12, top), rgb(0xcdbfa2));
  fill(canvas, box(left - wide * 0.14, top + tall, left + wide * 1.14, top + tall * 1.07), rgb(0xbfb195));
  fill(canvas, box(left, top, left + wide, top + tall), frame);
  for (int row = 0; row < 3; ++row)
    for (int column = 0; column < 2; ++column) {
      const double x = left + wide * (0.07 + 0.45 * column), y = top + tall * (0.04 + 0.32 * row);
      fill_with(canvas, box(x, y, x + wide * 0.4, y + tall * 0.28), [&](Vec p) {
        const double cloud = fractal(p.x * 22, p.y * 22, 4, seed);
        const double curtain =
            ramp(0.1, 0.32, std::abs((p.x - left) / wide - 0.5)) * (0.5 + 0.5 * std::sin(p.x / wide * 60));
        return mix(mix(rgb(0x1f2a33), rgb(0x9fb4c4), ramp(0.35, 0.8, cloud)), rgb(0xe8ddc8), curtain * 0.5);
      });
    }
}

void door(Canvas &canvas, double left, double top, double wide, double tall) {
  fill(canvas, box(left - wide * 0.14, top - tall * 0.06, left + wide * 1.14, top + tall), rgb(0xe6dcc4));
  fill_with(canvas, box(left, top, left + wide, top + tall),
            [&](Vec p) { return rgb(0x2f5548) * (0.8 + 0.4 * fractal(p.x * 200, p.y * 20, 3, 4)); });
  for (int i = 0; i < 6; ++i) {
    const double x = left + wide * (i % 2 == 0 ? 0.12 : 0.56), y = top + tall * (0.08 + 0.3 * (i / 2));
    const Outline panel = box(x, y, x + wide * 0.32, y + tall * 0.22);
    fill(canvas, panel, rgb(0x264438));
    lines(canvas, {panel[3], panel[0], panel[1]}, wide * 0.025, rgb(0x16291f));
  }
  disc(canvas, {left + wide * 0.9, top + tall * 0.55}, wide * 0.04, rgb(0xd9b45a));
}

} // namespace

void paint_house(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const double a = canvas.aspect(), left = a * 0.17, right = a * 0.83, eaves = 0.42, ground = 0.84;
  const Colour brick = mix(rgb(0xa2503a), rgb(0xb98a5a), random.share() * 0.6);
  const Sky heaven(canvas, 0.9, rgb(0x7fa8cb), rgb(0xf2e8d4), seed);
  canvas.shade([&](Vec p, Colour) { return heaven(p); });
  for (const double x : {0.06, 0.95, 0.86})
    tree(canvas, {a * x, ground}, random.between(0.5, 0.75), rgb(0x4a3b2b), rgb(0x5b7434), false, random);
  fill_with(canvas, box(a * 0.66, 0.06, a * 0.72, 0.3),
            [&](Vec p) { return bricks(p, 60, brick, rgb(0xc5b9a4), seed + 1); });
  fill_with(canvas, box(left, eaves, right, ground), [&](Vec p) {
    return bricks(p, 48, brick, rgb(0xcabfa8), seed + 2) * (0.8 + 0.2 * ramp(eaves, eaves + 0.05, p.y));
  });
  fill_with(canvas,
            {{left - 0.04, eaves}, {left + a * 0.08, 0.16}, {right - a * 0.08, 0.16}, {right + 0.04, eaves}},
            [&](Vec p) { return tiles(p, 42, rgb(0x9a5238), seed + 3); });
  line(canvas, {left - 0.04, eaves}, {right + 0.04, eaves}, 0.014, rgb(0xd9d0bc));
  const double wide = a * 0.085;
  for (int i = 0; i < 4; ++i) {
    const double x = left + (right - left) * (0.08 + 0.24 * i);
    sash_window(canvas, x, 0.465, wide, 0.14, random);
    if (i != 1) sash_window(canvas, x, 0.66, wide, 0.14, random);
  }
  door(canvas, left + (right - left) * 0.32, 0.645, wide, 0.195);
  canvas.shade([&](Vec p, Colour c) {
    const double lawn = fractal(p.x * 60, p.y * 40, 4, seed + 5);
    return mix(c, rgb(0x6b8040) * (0.5 + 0.9 * lawn), ramp(ground - 0.004, ground, p.y));
  });
  grass(canvas, ground, 1.02, rgb(0xa9b560), rgb(0x3f5522), static_cast<int>(2600 * a), random);
  const double mid = left + (right - left) * 0.38;
  fill_with(
      canvas, {{mid - 0.05, ground}, {mid + 0.05, ground}, {mid + 0.2, 1.01}, {mid - 0.14, 1.01}},
      [&](Vec p) {
        return bricks({p.x, std::sqrt(p.y - ground + 0.001)}, 22, rgb(0xbcae92), rgb(0x7c725c), seed + 6);
      });
  for (int i = 0; i < 500; ++i) {
    const double x = random.between(left - 0.02, right + 0.02);
    if (std::abs(x - mid) < 0.06) continue;
    const Vec at{x, ground - 0.045 * random.share()};
    disc(canvas, at, random.between(0.003, 0.008),
         i % 6 == 0 ? rgb(0xdf8a94) : mix(rgb(0x2c4a1d), rgb(0x86a052), random.share()));
  }
}

void paint_windmill(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const double a = canvas.aspect();
  const Vec hub{a * 0.52, 0.33};
  const Skyline hill(canvas, 0.74, 0.04, 1.1, seed);
  const Sky heaven(canvas, 0.8, rgb(0x6b97bd), rgb(0xf7e2bd), seed + 1);
  canvas.shade([&](Vec p, Colour) {
    if (p.y < hill(p.x)) return heaven(p);
    const double leaf = fractal(p.x * 50, p.y * 60, 5, seed + 2);
    return mix(rgb(0x5c7036), rgb(0xc3ad5e), fractal(p.x * 3, p.y * 12, 3, seed + 3)) * (0.5 + 0.9 * leaf);
  });
  for (int i = 0; i < 14; ++i)
    tree(canvas, {random.share() * a, 0.77}, random.between(0.05, 0.13), rgb(0x4a3c2a), rgb(0x53692f), false,
         random);
  fill_with(canvas,
            {hub + Vec{-0.07, 0.02}, hub + Vec{0.07, 0.02}, {hub.x + 0.13, 0.79}, {hub.x - 0.13, 0.79}},
            [&](Vec p) {
              const double across = (p.x - hub.x) / (0.07 + 0.06 * (p.y - hub.y) / 0.45);
              return bricks({std::asin(std::clamp(across, -1.0, 1.0)) * 0.12, p.y}, 62, rgb(0xcdb596),
                            rgb(0x9b8a70), seed + 4) *
                     (0.95 - 0.35 * across);
            });
  fill_with(canvas,
            curve({hub + Vec{-0.085, 0.03}, hub + Vec{-0.06, -0.06}, hub + Vec{0, -0.1},
                   hub + Vec{0.06, -0.06}, hub + Vec{0.085, 0.03}},
                  true),
            [&](Vec p) { return tiles(p, 80, rgb(0x5d4a3c), seed + 5); });
  sash_window(canvas, hub.x - 0.02, 0.48, 0.04, 0.06, random);
  door(canvas, hub.x - 0.035, 0.68, 0.07, 0.11);
  for (int sail = 0; sail < 4; ++sail) {
    const double angle = 0.5 + sail * pi / 2;
    const Vec along = polar(angle, 0.34), side = polar(angle + pi / 2, 0.075);
    fill(canvas, {hub + along * 0.16, hub + along, hub + along + side, hub + along * 0.16 + side},
         rgb(0xeee2c6), 0.75);
    for (int i = 0; i <= 14; ++i)
      line(canvas, hub + along * (0.16 + 0.06 * i), hub + along * (0.16 + 0.06 * i) + side, 0.0028,
           rgb(0x4a3524));
    for (int i = 0; i <= 3; ++i)
      line(canvas, hub + along * 0.16 + side * (i / 3.0), hub + along + side * (i / 3.0), 0.0028,
           rgb(0x4a3524));
    line(canvas, hub, hub + along * 1.02, 0.011, rgb(0x4a3524));
  }
  disc(canvas, hub, 0.018, rgb(0x33261b));
  grass(canvas, 0.8, 1.02, rgb(0xc7ba6a), rgb(0x46552a), static_cast<int>(4000 * a), random);
}

namespace {

/// The colour of a house front: `along` counts houses, `up` runs from 0 at the street to 1 at the eaves.
Colour front(double along, double up, double fine, std::uint32_t seed) {
  const std::int32_t house = whole(along);
  const double u = along - house, tone = chance(house, 1, seed);
  Colour wall = mix(mix(rgb(0xe8d8b8), rgb(0xc98f6a), tone), rgb(0xb9c4c4), chance(house, 2, seed) * 0.6);
  wall = wall * (0.75 + 0.4 * fractal(along * 30, up * 12, 4, seed + 3));
  if (chance(house, 3, seed) > 0.6) wall = bricks({along * 2, up}, 42, rgb(0xa35a42), rgb(0xc4b7a0), seed);
  const double bay = u * 3 - whole(u * 3), floor = up * 2.6, level = floor - whole(floor);
  const bool doorway = floor < 1 && u > 0.667;
  const double half = doorway ? 0.22 : 0.2;
  const bool opening =
      std::abs(bay - 0.5) < half && level > (doorway ? 0.0 : 0.25) && level < 0.82 && floor < 2.3;
  if (!opening && std::abs(bay - 0.5) < half + 0.08 && level > 0.2 && level < 0.88 && floor < 2.3)
    return wall * 0.5 + rgb(0xe6dcc6) * 0.5;
  if (opening && doorway)
    return mix(rgb(0x4a2f22), rgb(0x2d4a52), tone) * (0.7 + 0.4 * noise(along * 200, up * 20, seed));
  if (opening) {
    const bool bar = std::abs(bay - 0.5) < 0.02 || std::abs(level - 0.55) < 0.02;
    return bar ? rgb(0xefe6d2)
               : mix(rgb(0x1e262c), rgb(0x8d9eaa), ramp(0.4, 0.8, fractal(along * 7, up * 9, 4, seed + 9)));
  }
  if (u < 0.012 * fine) return wall * 0.6;
  return wall;
}

void lamp_post(Canvas &canvas, Vec foot, double tall) {
  const Colour iron = rgb(0x22262a);
  line(canvas, foot, foot - Vec{0, tall}, tall * 0.03, iron);
  line(canvas, foot, foot - Vec{0, tall * 0.15}, tall * 0.07, iron);
  const Vec top = foot - Vec{0, tall};
  fill(canvas,
       {top + Vec{-tall * 0.05, 0}, top + Vec{tall * 0.05, 0}, top + Vec{tall * 0.08, -tall * 0.13},
        top + Vec{-tall * 0.08, -tall * 0.13}},
       rgb(0xf5e4b0));
  fill(canvas,
       {top + Vec{-tall * 0.1, -tall * 0.13}, top + Vec{0, -tall * 0.2}, top + Vec{tall * 0.1, -tall * 0.13}},
       iron);
}

} // namespace

void paint_street(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const Vec vanish{canvas.aspect() * random.between(0.42, 0.58), 0.56};
  const double side = 0.34; // half the street's width where the viewer stands, in picture heights
  const Sky heaven(canvas, 0.75, rgb(0x86abc8), rgb(0xf6ebd6), seed + 3);
  canvas.shade([&](Vec p, Colour) {
    const Vec ray = p - vanish;
    // A box street: the nearest of wall, ground and eaves along the ray through this pixel.
    const double to_wall = side / std::max(std::abs(ray.x), 1e-6), to_ground = 0.3 / std::max(ray.y, 1e-6);
    const double haze = 1 - std::exp(-0.028 * std::min(to_wall, to_ground));
    if (ray.y > 0 && to_ground < to_wall) {
      const double x = ray.x * to_ground / side, z = to_ground;
      const Colour stones = bricks({x * 0.5, z * 0.35}, 12, rgb(0x8f8a80), rgb(0x4d4942), seed + 1);
      const Colour slab = bricks({z * 0.2, x * 0.3}, 9, rgb(0xb3aa99), rgb(0x7b7468), seed + 2);
      const Colour ground = std::abs(x) > 0.72 ? slab : std::abs(x) > 0.69 ? rgb(0x6a655c) : stones;
      return mix(ground, rgb(0xeadfc8), haze);
    }
    const double up = (0.3 - ray.y * to_wall) / 1.0, z = to_wall;
    const auto flank = seed + (ray.x < 0 ? 50U : 90U);
    const double along = z / 3.1 + (ray.x < 0 ? 0.37 : 0),
                 eaves = 0.72 + 0.34 * chance(whole(along), 7, flank);
    if (up < eaves)
      return mix(front(along, up / eaves, 1, flank) * (ray.x < 0 ? 0.72 : 1.02), rgb(0xeadfc8), haze);
    if (up < eaves + 0.13)
      return mix(tiles({along * 3, (eaves + 0.2 - up) * 1.2}, 26, rgb(0x9c5b42), flank), rgb(0xeadfc8), haze);
    return heaven(p);
  });
  for (int i = 4; i >= 1; --i) {
    const double z = 1.0 + i * 1.1;
    lamp_post(canvas, vanish + Vec{side * 0.7 / z, 0.3 / z}, 0.62 / z);
  }
  for (int i = 0; i < 9; ++i) {
    const double z = random.between(1.5, 6), x = random.between(-0.62, 0.62) * side / z, tall = 0.24 / z;
    const Vec foot = vanish + Vec{x, 0.3 / z};
    glow(canvas, foot + Vec{tall * 0.2, 0}, tall * 0.35, rgb(0x1d1a18), 0.5);
    fill(canvas,
         curve({foot + Vec{-tall * 0.15, 0}, foot + Vec{-tall * 0.17, -tall * 0.5},
                foot + Vec{-tall * 0.1, -tall * 0.82}, foot + Vec{tall * 0.1, -tall * 0.82},
                foot + Vec{tall * 0.17, -tall * 0.5}, foot + Vec{tall * 0.15, 0}},
               true),
         mix(rgb(0x2a2b33), rgb(0x6d4f44), random.share()));
    disc(canvas, foot - Vec{0, tall * 0.91}, tall * 0.075, rgb(0xb08a6c));
    fill(canvas, ellipse(foot - Vec{0, tall * 0.97}, tall * 0.13, tall * 0.035), rgb(0x2b241f));
  }
}

} // namespace stoneproof::demo
