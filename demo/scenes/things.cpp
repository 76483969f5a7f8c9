// Small keepsakes: medal, stamp, pocket watch. Only way in: scenes.h. Looked at by eye.
#include "demo/paint/pen.h"
#include "demo/scenes/scenes.h"

#include <string>

namespace stoneproof::demo {

namespace {

void velvet(Canvas &canvas, Colour colour, std::uint32_t seed) {
  canvas.shade([&](Vec p, Colour) {
    const double fold = fractal(p.x * 2.3, p.y * 2.3, 4, seed), nap = noise(p.x * 500, p.y * 500, seed + 1);
    return colour * (0.45 + 0.8 * ramp(0.2, 0.85, fold) + 0.22 * nap);
  });
}

/// Height of the medal's relief at a place, in radii from its middle.
double relief(Vec q, std::uint32_t seed) {
  const double r = length(q), angle = std::atan2(q.y, q.x);
  double h = ramp(1.0, 0.97, r) * 0.12 + (ramp(0.88, 0.92, r) - ramp(0.96, 0.99, r)) * 0.16;
  h += 0.12 * ramp(0.03, 0.0, std::abs(r - 0.85) - 0.012 - 0.012 * std::cos(angle * 60));
  const double star = 0.42 * (0.62 + 0.38 * std::cos(5 * (angle + pi / 2))) / (0.7 + 0.2 * r);
  h += 0.25 * ramp(0.05, -0.12, r - star) * (1 - r);
  const double wreath = std::abs(r - 0.66) - 0.05 * std::abs(std::sin(angle * 14)) * (q.y > -0.5 ? 1 : 0);
  h += 0.16 * ramp(0.03, -0.03, wreath);
  return h + 0.012 * fractal(q.x * 26, q.y * 26, 4, seed);
}

} // namespace

void paint_medal(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  velvet(canvas, rgb(0x3f2a45), seed);
  const Vec middle{canvas.aspect() / 2, 0.65};
  const double radius = 0.29;
  for (int i = 0; i < 3; ++i) glow(canvas, middle + Vec{0.03, 0.04}, radius * 1.35, rgb(0x000000), 0.4);
  fill_with(canvas,
            {middle + Vec{-0.14, -0.62}, middle + Vec{0.14, -0.62}, middle + Vec{0.14, -0.42},
             middle + Vec{0.03, -0.28}, middle + Vec{-0.03, -0.28}, middle + Vec{-0.14, -0.42}},
            [&](Vec p) {
              const double stripe = std::abs(p.x - middle.x) / 0.14;
              const Colour c = stripe < 0.2 ? rgb(0xf0e6cc) : stripe < 0.6 ? rgb(0x8c2230) : rgb(0x233a63);
              return c * (0.8 + 0.14 * std::sin(p.y * 1300) + 0.2 * fractal(p.x * 9, p.y * 9, 3, seed + 4));
            });
  ring(canvas, middle - Vec{0, radius + 0.012}, 0.026, 0.012, rgb(0xc79b4a));
  fill_with(canvas, ellipse(middle, radius, radius), [&](Vec p) {
    const Vec q = (p - middle) * (1 / radius);
    const double step = 0.006, h = relief(q, seed + 5);
    const double slope_x = (relief(q + Vec{step, 0}, seed + 5) - h) / step,
                 slope_y = (relief(q + Vec{0, step}, seed + 5) - h) / step;
    const double lit = clamp01(0.5 - 0.28 * (slope_x + slope_y));
    const double tarnish = fractal(q.x * 4, q.y * 4, 5, seed + 6);
    return mix(mix(rgb(0x3a2410), rgb(0xc08f3e), ramp(0.1, 0.6, lit)), rgb(0xfff2c0), ramp(0.62, 0.95, lit)) *
           (0.72 + 0.5 * tarnish);
  });
}

void paint_stamp(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const double a = canvas.aspect();
  canvas.shade(
      [&](Vec p, Colour) { return rgb(0x2a2622) * (0.6 + 0.6 * fractal(p.x * 120, p.y * 120, 3, seed)); });
  const Colour ink = mix(rgb(0x1f5a4d), rgb(0x7c2b3c), random.share()), paper = rgb(0xf4ead3);
  const auto fibre = [&](Vec p) { return paper * (0.9 + 0.14 * fractal(p.x * 130, p.y * 130, 4, seed + 1)); };
  const double edge = 0.06, hole = 0.0145, step = 0.042;
  fill_with(canvas, box(edge, edge, a - edge, 1 - edge), fibre);
  for (double x = edge; x < a - edge + 0.01; x += step)
    for (const double y : {edge, 1 - edge}) disc(canvas, {x, y}, hole, rgb(0x26221f));
  for (double y = edge; y < 1 - edge + 0.01; y += step)
    for (const double x : {edge, a - edge}) disc(canvas, {x, y}, hole, rgb(0x26221f));
  const double left = edge + 0.06, right = a - edge - 0.06, top = edge + 0.06, bottom = 1 - edge - 0.06;
  // Engraved ground: fine waves that thicken where the picture is dark.
  fill_with(canvas, box(left, top, right, bottom), [&](Vec p) {
    const double dark = 0.35 + 0.4 * (p.y - top) + 0.3 * (fractal(p.x * 5, p.y * 5, 4, seed + 2) - 0.5);
    const double wave = std::sin(p.y * 420 + 5 * std::sin(p.x * 14));
    return mix(fibre(p), ink, ramp(1 - 2 * dark, 1.25 - 2 * dark, wave));
  });
  const Vec at{a / 2, 0.6};
  const double u = (right - left) * 0.5;
  fill(canvas,
       curve({at + Vec{-0.7, 0.1} * u, at + Vec{-0.5, 0.38} * u, at + Vec{0.5, 0.38} * u,
              at + Vec{0.8, 0.02} * u, at + Vec{0, 0.16} * u},
             true),
       ink * 0.8);
  for (int mast = 0; mast < 3; ++mast) {
    const double x = -0.42 + 0.42 * mast;
    line(canvas, at + Vec{x, 0.15} * u, at + Vec{x, -0.95} * u, 0.02 * u, ink * 0.7);
    for (int row = 0; row < 3; ++row) {
      const double y = -0.85 + 0.32 * row;
      Outline sail = curve({at + Vec{x - 0.2, y} * u, at + Vec{x + 0.16, y} * u,
                            at + Vec{x + 0.24, y + 0.27} * u, at + Vec{x - 0.17, y + 0.25} * u},
                           true);
      fill_with(canvas, sail, [&](Vec p) {
        const double shade = clamp01((p.x - at.x) / u - x + 0.3);
        return mix(paper, ink, ramp(1 - 1.3 * shade, 1.5 - 1.3 * shade, std::sin(p.x * 900)));
      });
      sail.push_back(sail.front());
      lines(canvas, sail, 0.012 * u, ink * 0.7);
    }
  }
  for (const double grow : {0.0, 0.014}) {
    Outline rim = box(left - grow, top - grow, right + grow, bottom + grow);
    rim.push_back(rim.front());
    lines(canvas, rim, 0.005, ink);
  }
  fill(canvas, box(left, bottom - 0.11, right, bottom), paper);
  Pen pen{.ink = ink, .weight = 0.16};
  write_centred(canvas, {a / 2, bottom - 0.025}, 0.055, "25 LUM", pen, random);
  fill(canvas, box(left, top, right, top + 0.085), paper);
  write_centred(canvas, {a / 2, top + 0.066}, 0.042, "AMPELIKI POST", pen, random);
  const Vec mark{a * 0.72, 0.24};
  for (const double r : {0.2, 0.14}) ring(canvas, mark, r, 0.006, rgb(0x1c1a20), 0.7);
  for (int i = 0; i < 5; ++i)
    lines(canvas,
          curve({{0, 0.3 + 0.05 * i},
                 {a * 0.2, 0.27 + 0.05 * i},
                 {a * 0.35, 0.32 + 0.05 * i},
                 {a * 0.52, 0.29 + 0.05 * i}}),
          0.006, rgb(0x1c1a20), 0.6);
  write_centred(canvas, mark + Vec{0, 0.018}, 0.04, "14 6 31", Pen{.ink = rgb(0x1c1a20), .opacity = 0.75},
                random);
}

void paint_watch(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  velvet(canvas, rgb(0x54392a), seed);
  const Vec middle{canvas.aspect() / 2, 0.54};
  const double radius = 0.36;
  for (int i = 0; i < 3; ++i) glow(canvas, middle + Vec{0.03, 0.045}, radius * 1.3, rgb(0x000000), 0.4);
  const auto gold = [&](Vec p) {
    const double angle = std::atan2(p.y - middle.y, p.x - middle.x);
    return mix(rgb(0x6b4717), rgb(0xf6dc95), 0.5 + 0.5 * std::sin(angle * 2 + 1.2)) *
           (0.85 + 0.2 * fractal(p.x * 60, p.y * 60, 4, seed + 1));
  };
  fill_with(canvas, ellipse(middle - Vec{0, radius + 0.07}, 0.055, 0.06), gold);
  ring(canvas, middle - Vec{0, radius + 0.09}, 0.075, 0.016, rgb(0xb58a40));
  fill_with(canvas, ellipse(middle, radius, radius), gold);
  fill_with(canvas, ellipse(middle, radius * 0.9, radius * 0.9), [&](Vec p) {
    return mix(rgb(0xf8f1de), rgb(0xd9c9a4), ramp(0.3, 1.0, length(p - middle) / radius)) *
           (0.95 + 0.06 * fractal(p.x * 50, p.y * 50, 4, seed + 2));
  });
  for (int i = 0; i < 60; ++i) {
    const double angle = i * pi / 30;
    line(canvas, middle + polar(angle, radius * (i % 5 == 0 ? 0.78 : 0.82)),
         middle + polar(angle, radius * 0.86), i % 5 == 0 ? 0.006 : 0.0025, rgb(0x221d18));
  }
  for (int hour = 1; hour <= 12; ++hour)
    write_centred(canvas, middle + polar(hour * pi / 6 - pi / 2, radius * 0.66) + Vec{0, 0.022}, 0.044,
                  std::to_string(hour), Pen{.weight = 0.14}, random);
  const Vec small = middle + Vec{0, radius * 0.4};
  ring(canvas, small, radius * 0.17, 0.003, rgb(0x4a4035));
  for (int i = 0; i < 12; ++i)
    line(canvas, small + polar(i * pi / 6, radius * 0.14), small + polar(i * pi / 6, radius * 0.17), 0.002,
         rgb(0x4a4035));
  line(canvas, small, small + polar(1.1, radius * 0.15), 0.003, rgb(0x23345c));
  const double hour = random.share() * 2 * pi;
  struct Hand {
    double reach, wide, angle;
  };
  for (const auto &[reach, wide, angle] : {Hand{0.46, 0.018, hour}, Hand{0.72, 0.012, hour * 12}}) {
    const Vec tip = middle + polar(angle, radius * reach), side = polar(angle + pi / 2, wide);
    fill(canvas,
         {middle - side * 0.4, middle + polar(angle, radius * reach * 0.7) + side, tip,
          middle + polar(angle, radius * reach * 0.7) - side, middle + side * 0.4},
         rgb(0x23345c));
  }
  disc(canvas, middle, 0.013, rgb(0x23345c));
  fill(canvas, ellipse(middle - Vec{radius * 0.3, radius * 0.42}, radius * 0.42, radius * 0.2, -0.6),
       rgb(0xffffff), 0.13);
}

} // namespace stoneproof::demo
