// Lake, harbour, bridge and sea. Only way in: scenes.h. Looked at by eye.
#include "demo/scenes/nature.h"
#include "demo/scenes/scenes.h"

#include <array>

namespace stoneproof::demo {

namespace {

void shore(Canvas &canvas, double level, Colour zenith, Colour haze, std::uint32_t seed) {
  const Skyline hills(canvas, level - 0.1, 0.09, 1.1, seed), wood(canvas, level - 0.03, 0.035, 2.3, seed + 4);
  const Skyline tree_tops(canvas, 0, 0.006, 120, seed + 5);
  const Sky heaven(canvas, level, zenith, haze, seed + 20);
  canvas.shade([&](Vec p, Colour) {
    const double far = hills(p.x), near = wood(p.x) + tree_tops(p.x);
    if (p.y < std::min(far, near)) return heaven(p);
    const double leaf = fractal(p.x * 70, p.y * 80, 4, seed + 6);
    if (p.y < near) return mix(rgb(0x7d8f98) * (0.75 + 0.5 * leaf), haze, 0.35);
    return rgb(0x47583a) * (0.5 + 0.9 * leaf);
  });
}

void reeds(Canvas &canvas, int count, Random &random) {
  for (int i = 0; i < count; ++i) {
    const double side = random.share() * random.share() * 0.5, x = i % 2 == 0 ? side : canvas.aspect() - side;
    const double tall = random.between(0.1, 0.34) * (1 - side);
    const Vec foot{x, 1.02}, tip{x + random.bell() * 0.04, 1.02 - tall};
    lines(canvas, curve({foot, {x, 1 - tall * 0.5}, tip}), 0.0035,
          mix(rgb(0x4a4a20), rgb(0xb5a552), random.share()));
    if (i % 5 == 0) line(canvas, tip, tip + Vec{0, 0.035}, 0.011, rgb(0x4b3119));
  }
}

void rowing_boat(Canvas &canvas, Vec at, double size) {
  fill(canvas,
       curve({at + Vec{-size, -size * 0.16}, at + Vec{-size * 0.8, size * 0.1},
              at + Vec{size * 0.8, size * 0.1}, at + Vec{size * 1.1, -size * 0.2}, at + Vec{0, -size * 0.04}},
             true),
       rgb(0x4e2f1d));
  lines(canvas,
        curve({at + Vec{-size, -size * 0.16}, at + Vec{0, -size * 0.04}, at + Vec{size * 1.1, -size * 0.2}}),
        size * 0.04, rgb(0xc9b48c));
  fill(canvas, ellipse(at + Vec{0, -size * 0.32}, size * 0.13, size * 0.25), rgb(0x2b2d35));
  disc(canvas, at + Vec{0, -size * 0.66}, size * 0.1, rgb(0xa98467));
  fill(canvas, ellipse(at + Vec{0, -size * 0.74}, size * 0.17, size * 0.045), rgb(0xd9c68f));
  line(canvas, at + Vec{size * 0.1, -size * 0.35}, at + Vec{size * 1.2, size * 0.22}, size * 0.03,
       rgb(0x9b7d50));
  glow(canvas, at + Vec{0, size * 0.2}, size * 0.9, rgb(0x1c2a2e), 0.35);
}

} // namespace

void paint_lake(Canvas &canvas, Random &random) {
  const double level = 0.48;
  shore(canvas, level, rgb(0x7ba3c4), rgb(0xf4e3c6), random.seed());
  for (int i = 0; i < 34; ++i)
    fir(canvas, {random.share() * canvas.aspect(), level - 0.004}, random.between(0.05, 0.15), rgb(0x31462f),
        0, random);
  flood(canvas, level, rgb(0x3b5a68), 0.07, random.seed());
  rowing_boat(canvas, {canvas.aspect() * random.between(0.4, 0.65), 0.72}, 0.11);
  reeds(canvas, static_cast<int>(170 * canvas.aspect()), random);
}

namespace {

void quay_house(Canvas &canvas, double left, double right, double top, double level, Colour wall,
                Random &random) {
  const std::uint32_t seed = random.seed();
  fill_with(canvas, box(left, top, right, level),
            [&](Vec p) { return wall * (0.78 + 0.35 * fractal(p.x * 40, p.y * 40, 4, seed)); });
  const double peak = top - (right - left) * 0.35;
  fill_with(canvas, {{left - 0.006, top}, {(left + right) / 2, peak}, {right + 0.006, top}},
            [&](Vec p) { return tiles(p, 95, rgb(0xa9583a), seed); });
  const double step = (right - left) / 3.2;
  for (double y = top + step * 0.35; y + step * 0.7 < level; y += step * 1.05)
    for (int i = 0; i < 3; ++i) {
      const double x = left + step * (0.3 + i);
      fill(canvas, box(x, y, x + step * 0.5, y + step * 0.65), rgb(0xe9e2d0));
      fill(canvas, box(x + step * 0.06, y + step * 0.06, x + step * 0.44, y + step * 0.6), rgb(0x2c3a44));
      line(canvas, {x + step * 0.25, y}, {x + step * 0.25, y + step * 0.65}, step * 0.05, rgb(0xe9e2d0));
      fill(canvas, box(x - step * 0.14, y, x, y + step * 0.65), rgb(0x3f5d4c));
    }
}

void fishing_boat(Canvas &canvas, Vec at, double size, Colour hull, Random &random) {
  const double mast = at.x + size * 0.1, top = at.y - size * random.between(1.5, 2.1);
  const Colour rope = rgb(0x2b241c);
  line(canvas, {mast, at.y}, {mast, top}, size * 0.045, rgb(0x6e4f2c));
  line(canvas, {mast, at.y - size * 0.45}, {mast + size * 0.75, at.y - size * 0.62}, size * 0.035,
       rgb(0x6e4f2c));
  fill(canvas,
       curve({{mast + size * 0.04, at.y - size * 0.5},
              {mast + size * 0.4, at.y - size * 0.72},
              {mast + size * 0.74, at.y - size * 0.66},
              {mast + size * 0.4, at.y - size * 0.55}},
             true),
       rgb(0xc7b58f));
  for (const double x : {-1.0, -0.75, 0.7, 1.1})
    line(canvas, {mast, top + size * 0.1}, {at.x + size * x, at.y - size * 0.2}, size * 0.009, rope);
  for (int i = 1; i < 9; ++i)
    line(canvas, {mast - size * 0.085 * (9 - i), top + size * 0.16 * i},
         {mast - size * 0.075 * (9 - i) + size * 0.09, top + size * 0.16 * i}, size * 0.008, rope);
  const Outline body = curve({at + Vec{-size, -size * 0.28}, at + Vec{-size * 0.85, size * 0.08},
                              at + Vec{size * 0.85, size * 0.08}, at + Vec{size * 1.15, -size * 0.36},
                              at + Vec{0, -size * 0.13}},
                             true);
  const std::uint32_t seed = random.seed();
  fill_with(canvas, body, [&](Vec p) {
    const double plank = (p.y - at.y) / size * 14;
    return hull *
           ((plank - whole(plank) < 0.12 ? 0.6 : 0.95) * (0.75 + 0.5 * fractal(p.x * 30, p.y * 90, 4, seed)));
  });
  lines(
      canvas,
      curve({at + Vec{-size, -size * 0.28}, at + Vec{0, -size * 0.13}, at + Vec{size * 1.15, -size * 0.36}}),
      size * 0.05, rgb(0xefe5cf));
  fill(canvas, box(at.x - size * 0.6, at.y - size * 0.45, at.x - size * 0.15, at.y - size * 0.15),
       rgb(0xd8cfb8));
  fill(canvas, box(at.x - size * 0.5, at.y - size * 0.39, at.x - size * 0.36, at.y - size * 0.26),
       rgb(0x26323a));
}

} // namespace

void paint_harbour(Canvas &canvas, Random &random) {
  const double level = 0.56;
  shore(canvas, level - 0.12, rgb(0x5f93c2), rgb(0xf3e6d0), random.seed());
  const std::uint32_t seed = random.seed();
  fill_with(canvas, box(0, level - 0.1, canvas.aspect(), level),
            [&](Vec p) { return bricks(p, 55, rgb(0xa39b8c), rgb(0x6b655b), seed); });
  constexpr std::array walls = {rgb(0xf0e4cc), rgb(0xe6c9a0), rgb(0xd9dfe0), rgb(0xe9b9a0), rgb(0xf6f0e0)};
  for (double x = -0.03; x < canvas.aspect();) {
    const double wide = random.between(0.11, 0.18);
    quay_house(canvas, x, x + wide, level - random.between(0.2, 0.34), level - 0.05,
               walls[static_cast<std::size_t>(random.below(5))], random);
    x += wide + 0.008;
  }
  constexpr std::array hulls = {rgb(0x2d5f86), rgb(0x8a2f2a), rgb(0x2f5a45), rgb(0xd8d2c4)};
  const auto boats = static_cast<int>(5 * canvas.aspect());
  for (int i = 0; i < boats; ++i)
    fishing_boat(canvas, {(i + random.between(0.3, 0.7)) * canvas.aspect() / boats, level},
                 random.between(0.07, 0.115), hulls[static_cast<std::size_t>(random.below(4))], random);
  flood(canvas, level + 0.008, rgb(0x24505f), 0.05, random.seed());
  const double low = 0.86;
  fishing_boat(canvas, {canvas.aspect() * random.between(0.25, 0.75), low}, 0.2,
               hulls[static_cast<std::size_t>(random.below(4))], random);
}

void paint_bridge(Canvas &canvas, Random &random) {
  const double level = 0.62;
  shore(canvas, level, rgb(0x86a9c0), rgb(0xf0e2c8), random.seed());
  for (int i = 0; i < 12; ++i)
    tree(canvas, {random.share() * canvas.aspect(), level}, random.between(0.16, 0.3), rgb(0x43372a),
         rgb(0x566e37), false, random);
  Outline stone = {{-0.1, level}, {-0.1, 0.36}};
  for (int i = 0; i <= 20; ++i)
    stone.push_back({canvas.aspect() * i / 20, 0.36 - 0.08 * std::sin(pi * i / 20)});
  stone.insert(stone.end(), {{canvas.aspect() + 0.1, 0.36}, {canvas.aspect() + 0.1, level}});
  const auto arches = static_cast<int>(std::max(2.0, canvas.aspect() * 2));
  for (int a = arches - 1; a >= 0; --a)
    for (int i = 0; i <= 24; ++i) {
      const double mid = canvas.aspect() * (a + 0.5) / arches, half = canvas.aspect() / arches * 0.4;
      stone.push_back({mid + half * std::cos(pi * i / 24), level - half * 0.72 * std::sin(pi * i / 24)});
    }
  const std::uint32_t seed = random.seed();
  fill_with(canvas, stone, [&](Vec p) { return bricks(p, 38, rgb(0xb5a88e), rgb(0x776d5c), seed); });
  for (int i = 0; i < 20; ++i)
    line(canvas, {canvas.aspect() * i / 20, 0.37 - 0.08 * std::sin(pi * i / 20)},
         {canvas.aspect() * (i + 1) / 20, 0.37 - 0.08 * std::sin(pi * (i + 1) / 20)}, 0.018, rgb(0xcfc4ab));
  flood(canvas, level, rgb(0x3c5148), 0.06, random.seed());
  reeds(canvas, static_cast<int>(110 * canvas.aspect()), random);
}

void paint_sail(Canvas &canvas, Random &random) {
  const double level = 0.6;
  const std::uint32_t seed = random.seed();
  const Sky heaven(canvas, level, rgb(0x4f86b8), rgb(0xf1eadb), seed);
  canvas.shade([&](Vec p, Colour) { return heaven(p); });
  flood(canvas, level, rgb(0x1f5566), 0.12, seed + 3);
  const Vec at{canvas.aspect() * random.between(0.42, 0.58), 0.72};
  const double size = 0.6 * std::min(canvas.aspect(), 0.9);
  const auto cloth = [&](Vec p) {
    const double seam = (p.x * 0.96 + p.y * 0.25) / size * 13;
    return rgb(0xf0e6cf) * ((0.82 + 0.24 * fractal(p.x * 9, p.y * 5, 4, seed + 8)) *
                            (seam - whole(seam) < 0.06 ? 0.8 : 1.0) * (0.9 + 0.2 * (p.x - at.x) / size));
  };
  fill_with(canvas,
            curve({at + Vec{0.02 * size, -0.1 * size}, at + Vec{0.03 * size, -size},
                   at + Vec{0.3 * size, -0.5 * size}, at + Vec{0.46 * size, -0.1 * size}},
                  true),
            cloth);
  fill_with(canvas,
            curve({at + Vec{-0.03 * size, -0.13 * size}, at + Vec{-0.02 * size, -0.86 * size},
                   at + Vec{-0.2 * size, -0.4 * size}, at + Vec{-0.36 * size, -0.1 * size}},
                  true),
            cloth);
  line(canvas, at, at + Vec{0, -1.04 * size}, 0.016 * size, rgb(0x5c3f22));
  line(canvas, at + Vec{0, -0.08 * size}, at + Vec{0.5 * size, -0.09 * size}, 0.014 * size, rgb(0x5c3f22));
  line(canvas, at + Vec{0, -1.03 * size}, at + Vec{-0.47 * size, -0.05 * size}, 0.004 * size, rgb(0x3a2d20));
  fill_with(canvas,
            curve({at + Vec{-0.5 * size, -0.06 * size}, at + Vec{-0.36 * size, 0.07 * size},
                   at + Vec{0.36 * size, 0.07 * size}, at + Vec{0.52 * size, -0.07 * size},
                   at + Vec{0, -0.03 * size}},
                  true),
            [&](Vec p) { return rgb(0x70301f) * (0.7 + 0.6 * fractal(p.x * 14, p.y * 80, 4, seed + 9)); });
  for (int i = 0; i < 420; ++i) {
    const Vec foam =
        at + Vec{random.bell() * size * 0.4, 0.075 * size + std::abs(random.bell()) * 0.03 * size};
    disc(canvas, foam, random.between(0.001, 0.005), rgb(0xf5f6f1), 0.7);
  }
  for (int i = 0; i < 7; ++i) {
    const Vec bird{random.share() * canvas.aspect(), random.between(0.08, 0.4)};
    lines(canvas,
          curve({bird + Vec{-0.022, -0.008}, bird + Vec{-0.01, -0.012}, bird, bird + Vec{0.012, -0.013},
                 bird + Vec{0.023, -0.006}}),
          0.0035, rgb(0x40474d));
  }
}

} // namespace stoneproof::demo
