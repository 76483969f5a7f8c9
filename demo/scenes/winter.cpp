// Snow and night. Only way in: scenes.h. Looked at by eye.
#include "demo/scenes/nature.h"
#include "demo/scenes/scenes.h"

namespace stoneproof::demo {

namespace {

void cottage(Canvas &canvas, Vec at, double size, Colour wall, Colour roof, Random &random) {
  const std::uint32_t seed = random.seed();
  fill_with(canvas, box(at.x - size, at.y - size * 0.7, at.x + size, at.y), [&](Vec p) {
    const double log = (at.y - p.y) / size * 9;
    return wall *
           ((log - whole(log) < 0.15 ? 0.55 : 0.9) * (0.7 + 0.6 * fractal(p.x * 30, p.y * 160, 4, seed)));
  });
  fill(canvas, box(at.x + size * 0.35, at.y - size * 1.55, at.x + size * 0.55, at.y - size), wall * 0.7);
  fill_with(canvas,
            curve({at + Vec{-size * 1.2, -size * 0.62}, at + Vec{-size * 0.75, -size * 1.25},
                   at + Vec{size * 0.75, -size * 1.25}, at + Vec{size * 1.2, -size * 0.62},
                   at + Vec{0, -size * 0.66}},
                  true),
            [&](Vec p) { return roof * (0.84 + 0.3 * fractal(p.x * 22, p.y * 30, 5, seed + 1)); });
  for (const double x : {-0.6, 0.25}) {
    const double left = at.x + size * x;
    glow(canvas, {left + size * 0.17, at.y - size * 0.3}, size * 0.9, rgb(0xffc766), 0.35);
    fill(canvas, box(left, at.y - size * 0.48, left + size * 0.34, at.y - size * 0.14), rgb(0xffd98a));
    line(canvas, {left + size * 0.17, at.y - size * 0.48}, {left + size * 0.17, at.y - size * 0.14},
         size * 0.03, wall * 0.5);
    line(canvas, {left, at.y - size * 0.31}, {left + size * 0.34, at.y - size * 0.31}, size * 0.03,
         wall * 0.5);
  }
  for (int i = 0; i < 16; ++i)
    glow(canvas, at + Vec{size * (0.45 + 0.06 * i + 0.05 * random.bell()), -size * (1.65 + 0.13 * i)},
         size * (0.14 + 0.025 * i), rgb(0xe6e6ea), 0.3);
}

} // namespace

void paint_snow(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const Skyline hills(canvas, 0.4, 0.08, 1.4, seed), firs(canvas, 0, 0.01, 90, seed + 2);
  const Skyline slope(canvas, 0.57, 0.06, 0.9, seed + 1);
  const Sky heaven(canvas, 0.5, rgb(0xa7b4c2), rgb(0xefe4dc), seed + 3);
  canvas.shade([&](Vec p, Colour) {
    const double far = hills(p.x) + firs(p.x), near = slope(p.x);
    if (p.y < std::min(far, near)) return mix(heaven(p), rgb(0xd9d9dc), 0.3);
    const double drift = fractal(p.x * 5, p.y * 13, 6, seed + 4),
                 shade = fractal(p.x * 5 - 0.08, p.y * 13 - 0.1, 6, seed + 4);
    if (p.y < near) return mix(rgb(0x66727c), rgb(0xc9ced4), fractal(p.x * 70, p.y * 40, 4, seed + 5));
    const double sparkle = chance(whole(p.x * 1200), whole(p.y * 1200), seed) > 0.9985 ? 0.2 : 0;
    return mix(rgb(0xeef1f4), rgb(0x9db0c6), clamp01(0.35 + (shade - drift) * 6)) *
           (0.94 + 0.08 * noise(p.x * 300, p.y * 300, seed + 6) + sparkle);
  });
  for (int i = 0; i < 40; ++i) {
    const double x = random.share() * canvas.aspect();
    fir(canvas, {x, slope(x) + 0.03 * random.share()}, random.between(0.08, 0.2), rgb(0x3c4b46), 0.5, random);
  }
  cottage(canvas, {canvas.aspect() * random.between(0.3, 0.7), 0.67}, 0.1, rgb(0x6b4a33), rgb(0xf0f2f5),
          random);
  for (int i = 0; i < 4; ++i)
    tree(canvas,
         {canvas.aspect() * (i < 2 ? random.between(0.02, 0.2) : random.between(0.8, 0.98)),
          random.between(0.78, 0.95)},
         random.between(0.5, 0.75), rgb(0x4a423c), {}, true, random);
  for (int i = 0; i < 30; ++i) {
    const double t = i / 30.0, x = canvas.aspect() * (0.5 + 0.16 * std::sin(t * 3)) +
                                   (i % 2 == 0 ? -0.012 : 0.012) * (0.4 + t);
    fill(canvas, ellipse({x, 0.68 + 0.31 * t}, 0.004 + 0.008 * t, 0.002 + 0.005 * t), rgb(0x8fa0b6), 0.8);
  }
  for (int i = 0; i < 900; ++i)
    disc(canvas, {random.share() * canvas.aspect(), random.share()}, random.between(0.0008, 0.003),
         rgb(0xffffff), 0.75);
}

void paint_night(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const Skyline land(canvas, 0.84, 0.06, 1.2, seed);
  canvas.shade([&](Vec p, Colour) {
    const double hill = land(p.x);
    if (p.y > hill) return rgb(0x0b1016) * (0.5 + fractal(p.x * 90, p.y * 90, 4, seed + 1));
    const double band = std::exp(-16 * std::pow(p.y - 0.85 + 0.5 * p.x / canvas.aspect() * 1.4, 2));
    const double cloud = fractal(p.x * 5, p.y * 5, 7, seed + 2),
                 rift = fractal(p.x * 9, p.y * 9, 6, seed + 3);
    const Colour base = mix(rgb(0x081024), rgb(0x2a3a57), ramp(0.2, 0.85, p.y));
    return mix(base, rgb(0xc9bdb4), band * ramp(0.3, 0.9, cloud) * ramp(0.75, 0.4, rift) * 0.6);
  });
  const auto stars = static_cast<int>(2600 * canvas.aspect());
  for (int i = 0; i < stars; ++i) {
    const Vec at{random.share() * canvas.aspect(), random.share() * 0.86};
    if (at.y > land(at.x)) continue;
    const double bright = std::pow(random.share(), 7);
    const Colour c = mix(rgb(0xffe0b8), rgb(0xcfe0ff), random.share());
    if (bright > 0.5) glow(canvas, at, 0.014 * bright, c, 0.6);
    disc(canvas, at, 0.0007 + 0.0022 * bright, c, 0.45 + 0.55 * bright);
  }
  for (int i = 0; i < 5; ++i)
    tree(canvas, {canvas.aspect() * (0.1 + 0.2 * i) + 0.05 * random.bell(), 0.88}, random.between(0.14, 0.4),
         rgb(0x06090c), rgb(0x10180f), i % 2 == 0, random);
  cottage(canvas, {canvas.aspect() * 0.62, 0.9}, 0.07, rgb(0x241d1a), rgb(0x1b1e26), random);
}

} // namespace stoneproof::demo
