// Ages a painted picture. Only way in: finish.h. What it does is looked at by eye.
#include "demo/paint/finish.h"

#include "demo/paint/noise.h"

#include <cmath>

namespace stoneproof::demo {

namespace {

Colour toned(Colour c, Tone tone) {
  const double l = luminance(c);
  switch (tone) {
  case Tone::sepia: return {0.13 + 0.83 * l, 0.08 + 0.80 * l, 0.04 + 0.70 * l};
  case Tone::gray: return {l, l, l};
  case Tone::cool: return {0.04 + 0.9 * l, 0.06 + 0.92 * l, 0.09 + 0.9 * l};
  case Tone::faded:
    // Old colour prints lose cyan first: shadows turn red-brown, and the contrast sinks.
    return mix({0.22 + 0.74 * c.r, 0.14 + 0.76 * c.g, 0.11 + 0.70 * c.b}, {l, l * 0.93, l * 0.8}, 0.3);
  case Tone::vivid: return mix({l, l, l}, c, 2.2); // a phone that means well
  case Tone::colour: break;
  }
  return c;
}

double corrected(double v, const Finish &how) {
  const double scanned = clamp01(how.black + v * (how.white - how.black));
  if (how.stretch == 1) return scanned;
  return (std::round(scanned * 255) - 128) * how.stretch / 255 + 128.0 / 255;
}

void scatter_dust(Canvas &canvas, int count, Random &random) {
  for (int i = 0; i < count; ++i) {
    const Vec at{random.share() * canvas.aspect(), random.share()};
    const Colour colour = random.below(3) == 0 ? rgb(0x2a241e) : rgb(0xf4efe4);
    if (random.below(4) == 0) {
      const Vec mid = at + polar(random.share() * 7, 0.012);
      lines(canvas, curve({at, mid, mid + polar(random.share() * 7, 0.01)}), 0.0012, colour, 0.6);
    } else {
      disc(canvas, at, random.between(0.0005, 0.0018), colour, 0.7);
    }
  }
}

/// Always in the same places; darker than the lightest parts and lighter than the darkest ones.
void soil(Canvas &canvas) {
  const double a = canvas.aspect();
  const Colour dirt = rgb(0x1d1b19);
  disc(canvas, {a * 0.31, 0.22}, 0.005, dirt, 0.85);
  lines(canvas, curve({{a * 0.7, 0.6}, {a * 0.715, 0.635}, {a * 0.722, 0.66}, {a * 0.718, 0.69}}), 0.004,
        dirt, 0.8);
}

/// Printed in dots of one ink, turned by 45 degrees.
void print_in_dots(Canvas &canvas, double pitch) {
  const double turn = 2 * pi / pitch / 1.41421356;
  for (int y = 0; y < canvas.height(); ++y)
    for (int x = 0; x < canvas.width(); ++x) {
      const double light = luminance(canvas.get(x, y));
      const double dot = 0.5 + 0.25 * (std::cos((x + y) * turn) + std::cos((x - y) * turn));
      canvas.set(x, y, mix(rgb(0x2b2723), rgb(0xe6dec8), ramp(-0.3, 0.3, light * 1.1 - dot)));
    }
}

/// Smaller, turned, on the black of the lid.
void lay_on_bed(Canvas &canvas, double border, double tilt) {
  const Canvas print = canvas;
  const double share = 1 - 2 * border, angle = tilt * pi / 180;
  const Vec middle{canvas.aspect() / 2, 0.5};
  canvas.shade([&](Vec p, Colour) {
    const Vec from = (p - middle) * (1 / share);
    const Vec back = middle + Vec{from.x * std::cos(angle) + from.y * std::sin(angle),
                                  from.y * std::cos(angle) - from.x * std::sin(angle)};
    const double inside = std::min({back.x, canvas.aspect() - back.x, back.y, 1 - back.y});
    const Colour there = print.get_inside(static_cast<int>(back.x * print.height()),
                                          static_cast<int>(back.y * print.height()));
    return mix(rgb(0x0c0c0d), there, ramp(-canvas.pixel(), canvas.pixel(), inside));
  });
}

} // namespace

void finish(Canvas &canvas, const Finish &how, std::uint32_t seed) {
  Random random(seed);
  scatter_dust(canvas, how.dust, random);
  const std::uint32_t grain_seed = random.seed(), edge_seed = random.seed();
  const Vec middle{canvas.aspect() / 2, 0.5};
  const double reach_squared = middle.x * middle.x + middle.y * middle.y;
  const Colour paper = toned(rgb(0xf3eee2), how.tone);
  for (int y = 0; y < canvas.height(); ++y)
    for (int x = 0; x < canvas.width(); ++x) {
      const Vec p = canvas.place(x, y), from_middle = p - middle;
      const double off = (from_middle.x * from_middle.x + from_middle.y * from_middle.y) / reach_squared;
      const std::uint32_t bits = scramble(x, y, grain_seed);
      const double speck = ((bits & 0xFFFF) + (bits >> 16)) / 65535.0 - 1; // two even shares: a triangle
      // Clumps of grain: the mean of four shares, each of which four pixels have in common.
      const double coarse = (chance(x, y, grain_seed + 2) + chance(x + 1, y, grain_seed + 2) +
                             chance(x, y + 1, grain_seed + 2) + chance(x + 1, y + 1, grain_seed + 2) - 2) /
                            2;
      Colour c = toned(canvas.get(x, y) * (1 - how.vignette * off * off), how.tone);
      if (how.border > 0) {
        const double edge = std::min(std::min(p.x, canvas.aspect() - p.x), std::min(p.y, 1 - p.y));
        if (edge < how.border) c = paper * (0.97 + 0.03 * noise(p.x * 90, p.y * 90, edge_seed));
      }
      const double shift = how.grain * (1.7 * speck + 1.2 * coarse);
      c = c + Colour{shift, shift, shift};
      canvas.set(x, y, {corrected(c.r, how), corrected(c.g, how), corrected(c.b, how)});
    }
  if (how.blur > 0) blur(canvas, how.blur);
  if (how.dots > 0) print_in_dots(canvas, how.dots);
  if (how.dirty_glass) soil(canvas);
  if (how.bed > 0) lay_on_bed(canvas, how.bed, how.tilt);
}

} // namespace stoneproof::demo
