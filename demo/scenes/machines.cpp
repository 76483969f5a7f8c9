// A locomotive and a bicycle. Only way in: scenes.h. Looked at by eye.
#include "demo/scenes/nature.h"
#include "demo/scenes/scenes.h"

namespace stoneproof::demo {

namespace {

void spoked_wheel(Canvas &canvas, Vec at, double radius, int spokes, Colour rim, double thick) {
  ring(canvas, at, radius, thick, rim);
  ring(canvas, at, radius - thick * 0.6, thick * 0.3, mix(rim, rgb(0xffffff), 0.35));
  for (int i = 0; i < spokes; ++i)
    line(canvas, at, at + polar(2 * pi * i / spokes + 0.2, radius), thick * 0.4, rim * 0.9);
  disc(canvas, at, radius * 0.16, rim * 0.8);
  disc(canvas, at, radius * 0.07, mix(rim, rgb(0xffffff), 0.4));
}

/// A lying cylinder: light along its upper side.
Colour barrel(Vec p, double top, double bottom, Colour paint, std::uint32_t seed) {
  const double t = (p.y - top) / (bottom - top);
  const double shine = std::exp(-40 * (t - 0.25) * (t - 0.25));
  return mix(paint * (1.1 - 0.9 * t), rgb(0xf4f1e4), shine * 0.6) *
         (0.86 + 0.2 * fractal(p.x * 70, p.y * 25, 4, seed));
}

void engine_body(Canvas &canvas, double u, Vec o, Colour paint, std::uint32_t seed) {
  const auto at = [&](double x, double y) { return o + Vec{x, y} * u; };
  const double top = at(0, -0.42).y, bottom = at(0, -0.14).y;
  const auto metal = [&](Vec p) { return barrel(p, top, bottom, paint, seed); };
  fill_with(canvas, box(at(-0.62, 0).x, top, at(0.3, 0).x, bottom), metal);
  fill_with(canvas, ellipse({at(-0.62, 0).x, (top + bottom) / 2}, 0.05 * u, (bottom - top) / 2), metal);
  for (const double x : {-0.5, -0.3, -0.1, 0.1, 0.28}) {
    line(canvas, {at(x, 0).x, top}, {at(x, 0).x, bottom}, 0.014 * u, rgb(0xb08d45));
    for (int i = 0; i < 11; ++i)
      disc(canvas, {at(x + 0.02, 0).x, top + (bottom - top) * (i + 0.5) / 11}, 0.003 * u, rgb(0xd8d3c2));
  }
  fill_with(canvas, {at(-0.56, -0.42), at(-0.59, -0.66), at(-0.43, -0.66), at(-0.46, -0.42)},
            [&](Vec p) { return rgb(0x2a2a2c) * (1.5 - 5 * std::abs((p.x - at(-0.53, 0).x) / u)); });
  fill(canvas, box(at(-0.61, 0).x, at(0, -0.69).y, at(-0.41, 0).x, at(0, -0.65).y), rgb(0xb08d45));
  fill_with(
      canvas,
      curve({at(-0.22, -0.41), at(-0.22, -0.5), at(-0.15, -0.55), at(-0.08, -0.5), at(-0.08, -0.41)}, true),
      [&](Vec p) { return rgb(0xc39a4c) * (1.35 - 6 * std::abs(p.x - at(-0.17, 0).x) / u); });
  fill_with(canvas, box(at(0.3, 0).x, at(0, -0.6).y, at(0.68, 0).x, bottom),
            [&](Vec p) { return paint * (0.75 + 0.35 * fractal(p.x * 40, p.y * 40, 4, seed + 1)); });
  fill(canvas, box(at(0.36, 0).x, at(0, -0.54).y, at(0.6, 0).x, at(0, -0.36).y), rgb(0xd9cfae));
  line(canvas, at(0.48, -0.54), at(0.48, -0.36), 0.015 * u, paint * 0.7);
  fill(canvas,
       curve({at(0.26, -0.59), at(0.3, -0.64), at(0.5, -0.66), at(0.7, -0.64), at(0.74, -0.59)}, true),
       rgb(0x2b2a2a));
  lines(canvas, {at(0.33, -0.33), at(0.65, -0.33), at(0.65, -0.17), at(0.33, -0.17), at(0.33, -0.33)},
        0.006 * u, rgb(0xd8b560));
  fill(canvas, box(at(-0.74, 0).x, at(0, -0.15).y, at(0.72, 0).x, at(0, -0.1).y), rgb(0x8c2f25));
  fill(canvas, box(at(-0.78, 0).x, at(0, -0.17).y, at(-0.7, 0).x, at(0, -0.05).y), rgb(0x35312d));
  disc(canvas, at(-0.66, -0.46), 0.035 * u, rgb(0xf3e3a8));
}

void steam(Canvas &canvas, Vec from, double u, Random &random) {
  for (int i = 0; i < 260; ++i) {
    const double t = std::sqrt(random.share());
    const Vec at =
        from + Vec{t * 1.1 + random.bell() * 0.09 * t, -0.3 * t * (1.3 - t) + random.bell() * 0.075 * t} * u;
    glow(canvas, at, u * (0.025 + 0.12 * t * random.share()),
         mix(rgb(0xfbf8f0), rgb(0x8f8a86), random.share() * 0.7), 0.42 * (1.1 - t));
  }
}

} // namespace

void paint_locomotive(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const double a = canvas.aspect(), rail = 0.84;
  const Skyline hills(canvas, 0.6, 0.06, 1.2, seed);
  const Sky heaven(canvas, 0.7, rgb(0x8fb0c6), rgb(0xf3e7cf), seed + 1);
  canvas.shade([&](Vec p, Colour) {
    if (p.y < hills(p.x)) return heaven(p);
    const double leaf = fractal(p.x * 45, p.y * 60, 5, seed + 2);
    if (p.y < rail - 0.02) return rgb(0x66763f) * (0.5 + 0.9 * leaf);
    const double stone = fractal(p.x * 110, p.y * 150, 3, seed + 3);
    return mix(rgb(0x4c4640), rgb(0xc4b9a6), ramp(0.25, 0.8, stone));
  });
  for (int i = 0; i < 10; ++i)
    tree(canvas, {random.share() * a, 0.72}, random.between(0.16, 0.3), rgb(0x463a2b), rgb(0x5a6d36), false,
         random);
  for (double x = -0.02; x < a; x += 0.085)
    fill_with(canvas, box(x, rail + 0.012, x + 0.05, rail + 0.035),
              [&](Vec p) { return rgb(0x5a4330) * (0.6 + 0.7 * fractal(p.x * 30, p.y * 200, 4, seed + 4)); });
  line(canvas, {0, rail + 0.006}, {a, rail + 0.006}, 0.012, rgb(0x6d5a4c));
  line(canvas, {0, rail + 0.001}, {a, rail + 0.001}, 0.004, rgb(0xe4ddd0));
  const double u = std::min(0.92, a * 0.62);
  const Vec o{a * 0.5, rail - 0.02};
  steam(canvas, o + Vec{-0.5, -0.68} * u, u * 0.9, random);
  engine_body(canvas, u, o, mix(rgb(0x254d3c), rgb(0x2b3350), random.share()), seed + 5);
  for (const double x : {-0.33, -0.06, 0.21})
    spoked_wheel(canvas, o + Vec{x, -0.112} * u, 0.122 * u, 14, rgb(0x7c2a22), 0.02 * u);
  for (const double x : {-0.6, 0.52})
    spoked_wheel(canvas, o + Vec{x, -0.062} * u, 0.07 * u, 10, rgb(0x7c2a22), 0.016 * u);
  line(canvas, o + Vec{-0.33, -0.08} * u, o + Vec{0.21, -0.08} * u, 0.024 * u, rgb(0xcbc5b6));
  fill_with(canvas, box(o.x - 0.72 * u, o.y - 0.17 * u, o.x - 0.5 * u, o.y - 0.07 * u),
            [&](Vec p) { return barrel(p, o.y - 0.17 * u, o.y - 0.07 * u, rgb(0x3a3a3c), seed + 6); });
  line(canvas, o + Vec{-0.5, -0.11} * u, o + Vec{-0.06, -0.08} * u, 0.016 * u, rgb(0xddd8ca));
  for (int i = 0; i < 60; ++i)
    glow(canvas, o + Vec{-0.66 + 0.1 * random.bell(), -0.03 + 0.04 * random.bell()} * u, 0.06 * u,
         rgb(0xf6f3ea), 0.25);
  grass(canvas, 0.93, 1.03, rgb(0xb0aa62), rgb(0x4b5528), static_cast<int>(900 * a), random);
}

void paint_bicycle(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const double a = canvas.aspect(), ground = 0.86;
  canvas.shade([&](Vec p, Colour) {
    if (p.y > ground) return bricks({p.x, p.y * 1.7}, 16, rgb(0x99907f), rgb(0x5e574b), seed);
    const double patch = fractal(p.x * 3, p.y * 3, 5, seed + 1);
    const Colour plaster =
        mix(rgb(0xe5d3ae), rgb(0xc3a983), patch) * (0.9 + 0.18 * fractal(p.x * 90, p.y * 90, 3, seed + 2));
    return mix(plaster, bricks(p, 24, rgb(0xa15c45), rgb(0xc6baa4), seed + 3),
               ramp(0.6, 0.63, fractal(p.x * 2.6 + 4, p.y * 2.6, 5, seed + 4)));
  });
  const double u = std::min(1.0, a / 1.25), r = 0.255 * u;
  const Vec back{a / 2 - 0.37 * u, ground - r + 0.02}, front{a / 2 + 0.37 * u, ground - r + 0.02};
  const Vec crank{a / 2 - 0.07 * u, ground - 0.24 * u}, seat{a / 2 - 0.17 * u, ground - 0.64 * u},
      head{a / 2 + 0.24 * u, ground - 0.64 * u};
  for (const Vec hub : {back, front}) {
    ring(canvas, hub + Vec{0.02, 0.012}, r, 0.02 * u, rgb(0x3d3226), 0.35);
    ring(canvas, hub, r, 0.02 * u, rgb(0x221f1d));
    ring(canvas, hub, r - 0.014 * u, 0.008 * u, rgb(0xd6d0c3));
    for (int i = 0; i < 32; ++i)
      line(canvas, hub + polar(i * pi / 16 + (i % 2 == 0 ? 0.7 : -0.7), 0.02 * u),
           hub + polar(i * pi / 16, r - 0.012 * u), 0.0022 * u, rgb(0xcac4b6));
    disc(canvas, hub, 0.022 * u, rgb(0x8f8a80));
  }
  const Colour tube = mix(rgb(0x1f4a3a), rgb(0x6d1f22), random.share());
  for (const Colour c : {tube, mix(tube, rgb(0xffffff), 0.5)}) {
    const double w = (c.r == tube.r ? 0.024 : 0.005) * u;
    const Vec up = c.r == tube.r ? Vec{} : Vec{-0.003, -0.005} * u;
    for (const Outline &path :
         {Outline{back, crank, head, seat, back}, Outline{crank, seat + Vec{-0.02, -0.06} * u},
          Outline{head + Vec{-0.03, -0.08} * u, head + Vec{0.02, 0.06} * u, front}})
      for (std::size_t i = 0; i + 1 < path.size(); ++i) line(canvas, path[i] + up, path[i + 1] + up, w, c);
  }
  ring(canvas, crank, 0.065 * u, 0.014 * u, rgb(0x9a958b));
  line(canvas, crank + Vec{0, -0.065} * u, back + Vec{0, -0.03} * u, 0.006 * u, rgb(0x2c2825));
  line(canvas, crank + Vec{0, 0.065} * u, back + Vec{0, 0.03} * u, 0.006 * u, rgb(0x2c2825));
  line(canvas, crank, crank + Vec{0.07, 0.11} * u, 0.012 * u, rgb(0xb0aa9d));
  line(canvas, crank + Vec{0.03, 0.11} * u, crank + Vec{0.11, 0.11} * u, 0.018 * u, rgb(0x25211e));
  fill(canvas,
       curve({seat + Vec{-0.1, -0.09} * u, seat + Vec{0.1, -0.08} * u, seat + Vec{0.1, -0.06} * u,
              seat + Vec{-0.04, -0.03} * u, seat + Vec{-0.11, -0.05} * u},
             true),
       rgb(0x5a3320));
  lines(canvas,
        curve({head + Vec{-0.03, -0.08} * u, head + Vec{0.05, -0.12} * u, head + Vec{-0.02, -0.14} * u,
               head + Vec{-0.12, -0.11} * u}),
        0.016 * u, rgb(0xc4beb1));
  const Vec basket = head + Vec{0.14, -0.02} * u;
  fill_with(canvas,
            {basket + Vec{-0.1, -0.09} * u, basket + Vec{0.12, -0.09} * u, basket + Vec{0.09, 0.09} * u,
             basket + Vec{-0.07, 0.09} * u},
            [&](Vec p) {
              const bool over = (whole(p.x / u * 70) + whole(p.y / u * 70)) % 2 == 0;
              return rgb(0xc49a5d) * ((over ? 1.0 : 0.68) * (0.85 + 0.3 * noise(p.x * 300, p.y * 300, seed)));
            });
  for (int i = 0; i < 26; ++i) {
    const Vec at = basket + Vec{random.bell() * 0.05, -0.1 + random.bell() * 0.02} * u;
    for (int petal = 0; petal < 5; ++petal)
      disc(canvas, at + polar(petal * 1.26, 0.014 * u), 0.011 * u,
           mix(rgb(0xf3d5d9), rgb(0xd06a77), random.share()));
    disc(canvas, at, 0.008 * u, rgb(0xf2c84b));
  }
}

} // namespace stoneproof::demo
