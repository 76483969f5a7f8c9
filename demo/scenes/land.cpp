// Hills, fields, garden and wood. Only way in: scenes.h. Looked at by eye.
#include "demo/scenes/nature.h"
#include "demo/scenes/scenes.h"

#include <array>

namespace stoneproof::demo {

void paint_valley(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  constexpr int layers = 7;
  const Colour mist = rgb(0xe9dcc3), far = rgb(0x8fa3ad), near = rgb(0x3c5230);
  const Vec sun{canvas.aspect() * 0.7, 0.36};
  std::vector<std::array<double, layers>> tops(static_cast<std::size_t>(canvas.width()));
  for (int x = 0; x < canvas.width(); ++x)
    for (int i = 0; i < layers; ++i) {
      const double t = i / (layers - 1.0), at = canvas.place(x, 0).x;
      const auto own = seed + static_cast<std::uint32_t>(i) * 31;
      double y = ridge(at, 0.42 + 0.4 * t * t, 0.14 - 0.05 * t, 1.3 - 0.4 * t, own);
      if (i > 1 && i < layers - 1)
        y -= (0.006 + 0.022 * t) * fractal(at * (260 - 150 * t), 0.2, 3, own + 9); // tree tops
      tops[static_cast<std::size_t>(x)][static_cast<std::size_t>(i)] = y;
    }
  const Sky heaven(canvas, 0.5, rgb(0x93b2c8), rgb(0xf6e7cb), seed + 500);
  canvas.shade([&](Vec p, Colour) {
    const auto &own = tops[static_cast<std::size_t>(p.x * canvas.height())];
    int layer = layers - 1;
    while (layer >= 0 && p.y < own[static_cast<std::size_t>(layer)]) --layer;
    if (layer < 0) {
      const double warm = std::exp(-3.5 * length(p - sun));
      return mix(heaven(p), rgb(0xfff1c9), warm * 0.8);
    }
    const double t = layer / (layers - 1.0), below = p.y - own[static_cast<std::size_t>(layer)];
    const double fine = 30 + 110 * (1 - t);
    const double leaf = fractal(p.x * fine, p.y * fine * 1.3, 6, seed + 700);
    const double field = fractal(p.x * 4 + layer * 7, p.y * 9, 2, seed + 800);
    Colour body = mix(far, near, t) * (0.62 + 0.75 * leaf);
    if (layer >= 3)
      body = mix(body, rgb(0xb3a25a) * (0.7 + 0.5 * leaf),
                 ramp(0.52, 0.6, field) * 0.75 * ramp(0.02, 0.06, below));
    return mix(body, mist, (1 - t) * 0.5 + 0.55 * (1 - t * 0.75) * ramp(0.0, 0.17, below));
  });
  for (int i = 0; i < 26; ++i) {
    const double x = random.share() * canvas.aspect(), depth = random.share();
    tree(canvas, {x, 0.84 + 0.1 * depth}, 0.06 + 0.07 * depth, rgb(0x3b3226), rgb(0x4f6a31), false, random);
  }
  grass(canvas, 0.9, 1.02, rgb(0xa8a65c), rgb(0x3d4b25), static_cast<int>(5200 * canvas.aspect()), random);
}

void paint_wheat(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const Skyline hills(canvas, 0.4, 0.05, 1.6, seed);
  const Sky heaven(canvas, 0.45, rgb(0x6f9cc4), rgb(0xf0e6cf), seed + 1);
  canvas.shade([&](Vec p, Colour) {
    if (p.y < hills(p.x)) return heaven(p);
    const double leaf = fractal(p.x * 60, p.y * 70, 4, seed + 2);
    return mix(rgb(0x6f8a86) * (0.7 + 0.5 * leaf), rgb(0xc79f4b) * (0.6 + 0.6 * leaf), ramp(0.42, 0.46, p.y));
  });
  for (int i = 0; i < 9; ++i)
    tree(canvas, {random.share() * canvas.aspect(), 0.43}, random.between(0.05, 0.12), rgb(0x4a3d2b),
         rgb(0x51683a), false, random);
  const auto stalks = static_cast<int>(5200 * canvas.aspect());
  for (int i = 0; i < stalks; ++i) {
    const double depth = static_cast<double>(i) / stalks, size = 0.02 + 0.24 * depth * depth;
    const Vec foot{random.share() * canvas.aspect(), 0.44 + 0.75 * depth};
    const Vec head = foot + Vec{size * (0.22 + 0.12 * random.bell()), -size};
    const Colour c = mix(rgb(0x8a6524), rgb(0xf2d88c), random.share());
    lines(canvas, curve({foot, foot + Vec{0, -size * 0.6}, head}), size * 0.016, c * 0.9);
    const Vec lean = polar(-0.6 + 0.4 * random.share(), size * 0.034);
    for (int grain = 0; grain < 7; ++grain) {
      const Vec at = head + lean * grain;
      for (int side = -1; side <= 1; side += 2) {
        const Vec seed_tip = at + Vec{lean.x * 0.8 - side * lean.y * 0.8, lean.y * 0.8 + side * lean.x * 0.8};
        line(canvas, at, seed_tip, size * 0.026, c * (side < 0 ? 1.05 : 0.75));
        if (depth > 0.35) line(canvas, seed_tip, seed_tip + lean * 2.2, size * 0.005, c, 0.7);
      }
    }
  }
}

namespace {

void flower(Canvas &canvas, Vec at, double size, Colour colour, Random &random) {
  const int petals = 5 + random.below(9);
  const double turn = random.share() * pi, tilt = random.between(0.6, 1);
  for (int layer = 0; layer < 2; ++layer)
    for (int i = 0; i < petals; ++i) {
      const double a = turn + layer * pi / petals + 2 * pi * i / petals,
                   reach = size * (layer == 0 ? 0.6 : 0.42);
      const Vec mid = at + Vec{std::cos(a) * reach, std::sin(a) * reach * tilt};
      const double lit = 0.8 - 0.25 * std::sin(a) + 0.1 * random.bell();
      fill_with(canvas, ellipse(mid, reach * 0.72, size * 0.9 / petals + size * 0.06, a), [&](Vec p) {
        const double out = length(p - at) / size;
        return mix(colour * 0.45, colour, ramp(0.05, 0.75, out)) *
               (lit + 0.18 * noise(p.x / size * 14, p.y / size * 14, 5));
      });
    }
  for (int i = 0; i < 40; ++i)
    disc(canvas, at + polar(random.share() * 7, size * 0.2 * std::sqrt(random.share())), size * 0.025,
         mix(rgb(0x6a4a12), rgb(0xf4c542), random.share()));
}

} // namespace

void paint_garden(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  canvas.shade([&](Vec p, Colour) {
    const double leaf = fractal(p.x * 7, p.y * 7, 6, seed), spot = fractal(p.x * 3, p.y * 3, 3, seed + 9);
    return mix(rgb(0x18260f), rgb(0x6f8a42), ramp(0.3, 0.8, leaf) * (0.4 + spot)) * (1.1 - 0.4 * p.y);
  });
  constexpr std::array colours = {rgb(0xd8434e), rgb(0xf3d9e0), rgb(0xe9a23b),
                                  rgb(0x9a6bc0), rgb(0xfaf3e2), rgb(0xd7719b)};
  const auto count = static_cast<int>(110 * canvas.aspect());
  for (int i = 0; i < count; ++i) {
    const double depth = static_cast<double>(i) / count,
                 size = 0.022 + 0.06 * depth * random.between(0.7, 1.1);
    const Vec at{random.share() * canvas.aspect(), 0.16 + 0.86 * depth + 0.05 * random.bell()};
    lines(canvas, curve({at, at + Vec{size * 0.3, size * 2}, at + Vec{0, size * 5}}), size * 0.09,
          rgb(0x3c5c22));
    for (int leaf = 0; leaf < 9; ++leaf) {
      const double a = random.between(0.1, pi - 0.1);
      const Vec mid = at + Vec{random.bell() * size, size * random.between(0.7, 3)};
      const Colour green = mix(rgb(0x24401a), rgb(0x88a04f), random.share());
      fill(canvas, ellipse(mid, size * 0.55, size * 0.13, a), green);
      line(canvas, mid - polar(a, size * 0.5), mid + polar(a, size * 0.5), size * 0.02, green * 1.35, 0.7);
    }
    flower(canvas, at, size, colours[static_cast<std::size_t>(random.below(6))], random);
  }
}

void paint_forest(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  canvas.shade([&](Vec p, Colour) {
    const double leaf = fractal(p.x * 11, p.y * 11, 6, seed);
    const double light = std::exp(-2.6 * length(Vec{(p.x - canvas.aspect() * 0.5) * 1.2, p.y - 0.45}));
    const Colour wood = mix(rgb(0x27371c), rgb(0x93a556), leaf),
                 floor = mix(rgb(0x3a2c1a), rgb(0xa88a4c), leaf);
    return mix(mix(wood, rgb(0xf7f0cf), light * 0.9), floor, ramp(0.62, 0.72, p.y) * 0.85);
  });
  const auto count = static_cast<int>(34 * canvas.aspect());
  for (int i = 0; i < count; ++i) {
    const double depth = static_cast<double>(i) / count, wide = 0.008 + 0.055 * depth * depth;
    const double x = random.share() * canvas.aspect(), path = std::abs(x - canvas.aspect() / 2);
    if (path < 0.12 + 0.3 * depth) continue;
    const double foot = 0.64 + 0.3 * depth;
    const Colour bark = mix(rgb(0x8a9370), rgb(0x3a3024), ramp(0, 0.6, depth));
    fill_with(canvas,
              curve({{x - wide * 0.9, -0.1},
                     {x - wide, foot - 0.1},
                     {x - wide * 1.7, foot},
                     {x + wide * 1.7, foot},
                     {x + wide, foot - 0.1},
                     {x + wide * 0.9, -0.1}},
                    true),
              [&](Vec p) {
                const double across = (p.x - x) / wide,
                             rough = fractal(p.x / wide * 3, p.y / wide * 0.5, 5, seed + 40);
                return bark *
                       ((0.55 + 0.9 * rough) * (1.0 - 0.4 * across * (x < canvas.aspect() / 2 ? -1 : 1)));
              });
    for (int b = 0; b < 5; ++b)
      for (int n = 0; n < 60; ++n) {
        const Vec at{x + random.bell() * 0.13, 0.02 + random.share() * 0.28 + 0.03 * random.bell()};
        disc(canvas, at, random.between(0.002, 0.006) * (0.6 + depth),
             mix(rgb(0x2f4a1c), rgb(0xbcc765), random.share()), 0.85);
      }
  }
  grass(canvas, 0.72, 1.03, rgb(0xa3a650), rgb(0x2f3d1a), static_cast<int>(2600 * canvas.aspect()), random);
}

} // namespace stoneproof::demo
