// People nobody ever met: cut-paper profiles, a figure at a window, a group before a wall.
// Only way in: scenes.h. Looked at by eye.
#include "demo/scenes/nature.h"
#include "demo/scenes/scenes.h"

#include <array>

namespace stoneproof::demo {

namespace {

/// The outline of a head and bust seen from the side, looking left, with small differences from person to
/// person.
Outline profile(Random &random) {
  const double nose = random.between(-0.015, 0.015), chin = random.between(-0.012, 0.016),
               brow = random.between(-0.01, 0.01);
  return curve({{-0.03, -0.30},
                {-0.105, -0.262},
                {-0.143 + brow, -0.2},
                {-0.15 + brow, -0.15},
                {-0.143, -0.128},
                {-0.165, -0.098},
                {-0.192 - nose, -0.066},
                {-0.187 - nose, -0.052},
                {-0.158, -0.046},
                {-0.156, -0.036},
                {-0.173, -0.024},
                {-0.168, -0.01},
                {-0.156, -0.004},
                {-0.167, 0.008},
                {-0.159, 0.022},
                {-0.15, 0.032},
                {-0.158 - chin, 0.055},
                {-0.143, 0.08},
                {-0.1, 0.088},
                {-0.055, 0.083},
                {-0.048, 0.13},
                {-0.075, 0.18},
                {-0.17, 0.25},
                {-0.2, 0.36},
                {-0.12, 0.42},
                {0.06, 0.44},
                {0.22, 0.4},
                {0.26, 0.3},
                {0.2, 0.215},
                {0.115, 0.165},
                {0.095, 0.09},
                {0.115, 0.02},
                {0.135, -0.06},
                {0.13, -0.15},
                {0.09, -0.24},
                {0.03, -0.288}},
               true);
}

Outline moved(Outline outline, Vec by, double scale) {
  for (Vec &p : outline) p = by + p * scale;
  return outline;
}

void hair_or_hat(Canvas &canvas, Vec at, double scale, Colour ink, Random &random) {
  const auto put = [&](const Outline &points) { fill(canvas, moved(points, at, scale), ink); };
  switch (random.below(4)) {
  case 0: // a knot of hair
    put(ellipse({0.17, -0.16}, 0.075, 0.07));
    put(ellipse({0.03, -0.22}, 0.135, 0.1));
    break;
  case 1: // a brimmed hat
    put(ellipse({-0.01, -0.235}, 0.26, 0.026, 0.06));
    put(curve({{-0.13, -0.24}, {-0.11, -0.37}, {0, -0.4}, {0.11, -0.37}, {0.13, -0.23}}, true));
    break;
  case 2: // a beard and short hair
    put(curve({{-0.15, 0.02}, {-0.2, 0.09}, {-0.15, 0.17}, {-0.08, 0.14}, {-0.03, 0.05}, {-0.08, 0.02}},
              true));
    put(ellipse({0.04, -0.21}, 0.12, 0.1));
    break;
  default: // long curls
    for (int i = 0; i < 26; ++i) {
      const double t = i / 26.0;
      put(ellipse({0.02 + 0.13 * std::sin(t * 2.6) + 0.02 * random.bell(), -0.29 + 0.5 * t}, 0.05, 0.04,
                  random.share() * 3));
    }
  }
}

} // namespace

void paint_profile(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const double a = canvas.aspect();
  const Vec middle{a / 2, 0.48};
  const double half_x = a * 0.4, half_y = 0.41;
  canvas.shade([&](Vec p, Colour) {
    const double fibre = fractal(p.x * 220, p.y * 90, 4, seed), spot = fractal(p.x * 4, p.y * 4, 5, seed + 1);
    const Vec off{(p.x - middle.x) / half_x, (p.y - middle.y) / half_y};
    const Colour mat = mix(rgb(0xd9c7a0), rgb(0xb99a6b), spot) * (0.88 + 0.18 * fibre);
    const Colour card =
        mix(rgb(0xf4ead2), rgb(0xdcc79c), ramp(0.4, 1.1, length(off)) * (0.5 + spot)) * (0.92 + 0.1 * fibre);
    return mix(card, mat, ramp(0.995, 1.0, length(off)));
  });
  for (int i = 0; i < 90; ++i) { // a beaded border, lit from the upper left
    const double angle = 2 * pi * i / 90;
    const Vec bead = middle + Vec{std::cos(angle) * half_x * 1.035, std::sin(angle) * half_y * 1.035};
    disc(canvas, bead, 0.0085, rgb(0x6f5228));
    disc(canvas, bead - Vec{0.002, 0.002}, 0.005, rgb(0xe3c784));
  }
  const double scale = 0.84 * std::min(1.0, a / 0.8);
  const Vec at = middle + Vec{0.01, -0.03};
  const Outline bust = profile(random);
  fill(canvas, moved(bust, at + Vec{0.006, 0.007}, scale), rgb(0x8d7a58), 0.35);
  fill_with(canvas, moved(bust, at, scale), [&](Vec p) {
    return mix(rgb(0x1b1715), rgb(0x4a4038),
               0.25 + 0.4 * fractal(p.x * 120, p.y * 120, 4, seed + 3) - 0.5 * (p.x - at.x));
  });
  hair_or_hat(canvas, at, scale, rgb(0x1f1a17), random);
  for (int i = 0; i < 9; ++i) // a collar pricked out with the knife
    disc(canvas, at + Vec{-0.1 + 0.03 * i, 0.2 + 0.012 * std::sin(i * 1.4)} * scale, 0.006, rgb(0xe5d7b8));
  lines(canvas, moved(curve({{-0.12, 0.215}, {0, 0.24}, {0.17, 0.21}}), at, scale), 0.004, rgb(0xcbbb98));
}

void paint_window(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const double a = canvas.aspect(), left = a * 0.2, right = a * 0.8;
  canvas.shade([&](Vec p, Colour) {
    const double paper = std::sin(p.x * 70) > 0.2 ? 1 : 0.86, bloom = fractal(p.x * 40, p.y * 40, 3, seed);
    return rgb(0x4b3c31) * (paper * (0.5 + 0.4 * bloom) * (1.25 - length(p - Vec{a / 2, 0.45})));
  });
  fill_with(canvas, box(left, 0.08, right, 0.74), [&](Vec p) {
    const double leaf = fractal(p.x * 9, p.y * 9, 5, seed + 1);
    return mix(rgb(0xfffaea), mix(rgb(0xa9b893), rgb(0xf2ead0), leaf), ramp(0.35, 0.7, p.y) * 0.75);
  });
  for (int i = 0; i <= 3; ++i)
    line(canvas, {left + (right - left) * i / 3, 0.08}, {left + (right - left) * i / 3, 0.74}, 0.014,
         rgb(0x70604d));
  for (int i = 0; i <= 3; ++i)
    line(canvas, {left, 0.08 + 0.22 * i}, {right, 0.08 + 0.22 * i}, 0.014, rgb(0x70604d));
  fill(canvas, box(left - 0.03, 0.74, right + 0.03, 0.775), rgb(0x8b785f));
  for (int side = -1; side <= 1; side += 2) { // curtains of thin cloth
    const double edge = side < 0 ? left : right, inner = edge - side * a * 0.13;
    fill_with(
        canvas,
        curve({{edge + side * 0.06, 0.04},
               {inner, 0.05},
               {inner + side * 0.03, 0.4},
               {edge + side * 0.01, 0.55},
               {edge - side * 0.02, 0.8},
               {edge + side * 0.08, 0.82}},
              true),
        [&](Vec p) {
          const double fold = std::sin(p.x * 160 + 3 * fractal(p.x * 3, p.y * 3, 2, seed + 2));
          const Vec q = p + Vec{0.02 * fractal(p.x * 20, p.y * 20, 3, seed + 4),
                                0.02 * fractal(p.x * 20, p.y * 20, 3, seed + 5)};
          const double net = std::sin(q.x * 900) * std::sin(q.y * 900);

          return rgb(0xe9dfc9) * (0.8 + 0.13 * fold + 0.06 * net);
        },
        0.85);
  }
  const double scale = 0.95;
  const Vec at{a * random.between(0.45, 0.6), 0.56};
  const Outline bust = profile(random);
  for (int i = 4; i >= 1; --i)
    fill(canvas, moved(bust, at - Vec{0.0025 * i, 0.001 * i}, scale), rgb(0xfff0cf),
         0.16); // light creeping round
  fill_with(canvas, moved(bust, at, scale), [&](Vec p) {
    const double rim = ramp(0.12, -0.17, p.x - at.x) * 0.28;
    return mix(rgb(0x241d1a), rgb(0x97775b), rim + 0.12 * fractal(p.x * 70, p.y * 160, 4, seed + 4));
  });
  hair_or_hat(canvas, at, scale, rgb(0x1c1614), random);
  fill(canvas, curve({{a * 0.7, 0.74}, {a * 0.69, 0.66}, {a * 0.77, 0.66}, {a * 0.76, 0.74}}, true),
       rgb(0x8c4a32));
  for (int i = 0; i < 60; ++i) {
    const Vec leaf{a * 0.73 + random.bell() * 0.05, 0.6 + random.bell() * 0.045};
    fill(canvas, ellipse(leaf, 0.016, 0.007, random.share() * 3),
         mix(rgb(0x2b3d1f), rgb(0x7d9350), random.share()));
  }
}

namespace {

struct Look {
  Colour coat, skin;
  bool skirt, hat;
};

void person(Canvas &canvas, Vec foot, double tall, const Look &look, Random &random) {
  const std::uint32_t seed = random.seed();
  const auto at = [&](double x, double y) { return foot + Vec{x * tall, -y * tall}; };
  const double hem = look.skirt ? 0.17 : 0.12;
  fill_with(canvas,
            curve({at(-hem, 0), at(-0.11, 0.42), at(-0.15, 0.72), at(-0.09, 0.82), at(0, 0.83),
                   at(0.09, 0.82), at(0.15, 0.72), at(0.11, 0.42), at(hem, 0)},
                  true),
            [&](Vec p) {
              const double across = (p.x - foot.x) / tall / 0.15,
                           fold = std::sin((p.x - foot.x) / tall * 55 +
                                           2.5 * fractal(p.x * 8, p.y * 3, 2, seed));
              const double weave = noise(p.x * 800, p.y * 800, seed + 1);
              return look.coat * (0.78 - 0.25 * across + 0.09 * fold + 0.16 * weave);
            });
  for (int side = -1; side <= 1; side += 2) {
    lines(canvas, curve({at(side * 0.135, 0.74), at(side * 0.185, 0.55), at(side * 0.07, 0.43)}),
          tall * 0.065, look.coat * (side < 0 ? 0.85 : 0.6));
    disc(canvas, at(side * 0.05, 0.43), tall * 0.026, look.skin);
  }
  fill(canvas, {at(-0.035, 0.83), at(0.035, 0.83), at(0, 0.68)}, rgb(0xefe8d8));
  for (int i = 0; i < 4; ++i) disc(canvas, at(0, 0.65 - 0.06 * i), tall * 0.008, rgb(0xd5c7a4));
  line(canvas, at(0, 0.8), at(0, 0.88), tall * 0.055, look.skin * 0.85);
  fill_with(canvas, ellipse(at(0, 0.915), tall * 0.056, tall * 0.075), [&](Vec p) {
    return look.skin * (1.08 - 2.0 * (p.x - foot.x) / tall - 0.06 * noise(p.x * 400, p.y * 400, seed));
  });
  // Faces stay empty on purpose, but for a little shade under the brow.
  glow(canvas, at(0.012, 0.925), tall * 0.04, rgb(0x6a4a34), 0.3);
  const Colour hair = mix(rgb(0x2a1d14), rgb(0x8d8377), random.share());
  fill(canvas,
       curve({at(-0.062, 0.92), at(-0.055, 0.985), at(0, 1.005), at(0.055, 0.985), at(0.062, 0.92),
              at(0.03, 0.965), at(-0.03, 0.965)},
             true),
       hair);
  if (look.hat) {
    fill(canvas, ellipse(at(0, 0.965), tall * 0.105, tall * 0.017), hair * 0.7);
    fill(canvas, curve({at(-0.06, 0.965), at(-0.052, 1.04), at(0.052, 1.04), at(0.06, 0.965)}, true),
         hair * 0.75);
  }
}

} // namespace

void paint_group(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const double a = canvas.aspect();
  const bool brick_wall = random.share() > 0.4;
  canvas.shade([&](Vec p, Colour) {
    if (p.y > 0.8) return rgb(0xa09372) * (0.6 + 0.6 * fractal(p.x * 50, p.y * 130, 5, seed));
    if (brick_wall) return bricks(p, 26, rgb(0x9c6650), rgb(0xbcae98), seed + 1) * 0.85;
    const double leaf = fractal(p.x * 16, p.y * 16, 6, seed + 2);
    return mix(rgb(0x2d3a20), rgb(0xa7b27a), ramp(0.25, 0.85, leaf));
  });
  for (int i = 0; i < 700; ++i) {
    const Vec at{random.share() * a, 0.8 + 0.02 * random.bell()};
    fill(canvas, ellipse(at, 0.014, 0.005, random.share() * 3),
         mix(rgb(0x27391a), rgb(0x8a9a58), random.share()));
  }
  constexpr std::array coats = {rgb(0x3b3f4a), rgb(0x6d5546), rgb(0x8d8a80), rgb(0x54362f),
                                rgb(0xc9bda4), rgb(0x41523f), rgb(0x262428)};
  for (int row = 0; row < 2; ++row) {
    const auto count = static_cast<int>(std::max(2.0, a * (row == 0 ? 4.2 : 3.3)));
    for (int i = 0; i < count; ++i) {
      const double x = a * (i + 0.5 + 0.12 * random.bell()) / count,
                   tall = row == 0 ? random.between(0.56, 0.66) : random.between(0.38, 0.52);
      const Vec foot{x, row == 0 ? 0.86 : 0.95};
      glow(canvas, foot, tall * 0.25, rgb(0x1e1a14), 0.6);
      person(canvas, foot, tall,
             {coats[static_cast<std::size_t>(random.below(7))],
              mix(rgb(0xd9b391), rgb(0xb88d6a), random.share()), random.share() > 0.5, random.share() > 0.65},
             random);
    }
  }
  grass(canvas, 0.88, 1.02, rgb(0xb7ae70), rgb(0x545a30), static_cast<int>(700 * a), random);
}

} // namespace stoneproof::demo
