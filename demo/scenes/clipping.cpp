// A newspaper clipping: torn newsprint, headline, columns, a screened photograph.
// Only way in: scenes.h. Looked at by eye.
#include "demo/paint/pen.h"
#include "demo/scenes/scenes.h"

#include <array>

namespace stoneproof::demo {

namespace {

struct Area {
  double left, top, right, bottom;
};

/// Prints a scene as dots on a 45 degree screen, `dots` a picture height.
void screened_photo(Canvas &canvas, Area area, double dots, Random &random) {
  const int width = static_cast<int>((area.right - area.left) * canvas.height());
  const int height = static_cast<int>((area.bottom - area.top) * canvas.height());
  Canvas photo(std::max(width / 3, 8), std::max(height / 3, 8));
  switch (random.below(3)) {
  case 0: paint_group(photo, random); break;
  case 1: paint_harbour(photo, random); break;
  default: paint_locomotive(photo, random);
  }
  fill_with(canvas, box(area.left, area.top, area.right, area.bottom), [&](Vec p) {
    const Vec q{(p.x - area.left) / (area.bottom - area.top), (p.y - area.top) / (area.bottom - area.top)};
    const double light = luminance(
        photo.get_inside(static_cast<int>(q.x * photo.height()), static_cast<int>(q.y * photo.height())));
    const double u = (p.x + p.y) * dots * 0.7071 * 2 * pi, v = (p.x - p.y) * dots * 0.7071 * 2 * pi;
    const double dot = 0.5 + 0.25 * (std::cos(u) + std::cos(v));
    return mix(rgb(0x2b2723), rgb(0xe2d6b8), ramp(-0.12, 0.12, light * 1.1 - dot));
  });
}

void column(Canvas &canvas, Area area, double height, Random &random) {
  const Pen pen{.ink = rgb(0x2a2622), .weight = 0.13, .opacity = 0.85};
  for (double y = area.top + height; y < area.bottom; y += height * 1.75) {
    std::string text = babble(random, 200);
    while (!text.empty() && written_width(text, height, pen) > area.right - area.left) text.pop_back();
    write(canvas, {area.left, y}, height, text, pen, random);
  }
}

} // namespace

void paint_clipping(Canvas &canvas, Random &random) {
  const double a = canvas.aspect();
  const std::uint32_t seed = random.seed();
  canvas.shade(
      [&](Vec p, Colour) { return rgb(0x57504a) * (0.8 + 0.3 * fractal(p.x * 200, p.y * 200, 3, seed)); });
  Outline sheet;
  constexpr int steps = 120;
  const Outline corners = {{a * 0.03, 0.03}, {a * 0.97, 0.02}, {a * 0.975, 0.975}, {a * 0.025, 0.97}};
  for (std::size_t side = 0; side < 4; ++side)
    for (int i = 0; i < steps; ++i) {
      const Vec from = corners[side], to = corners[(side + 1) % 4];
      const double torn = side == 2 ? 0.02 : 0.004; // scissors on three sides, torn at the foot
      const double off = torn * (fractal(i * 0.2, static_cast<double>(side), 4, seed + 1) - 0.5);
      sheet.push_back(from + (to - from) * (static_cast<double>(i) / steps) + Vec{off, off});
    }
  Outline shadow = sheet;
  for (Vec &p : shadow) p = p + Vec{0.006, 0.008};
  fill(canvas, shadow, rgb(0x1b1815), 0.5);
  fill_with(canvas, sheet, [&](Vec p) {
    const double pulp = fractal(p.x * 240, p.y * 240, 4, seed + 2),
                 cloud = fractal(p.x * 3, p.y * 3, 4, seed + 3);
    return mix(rgb(0xe8dcbd), rgb(0xc9ae7b), cloud * 0.6) * (0.9 + 0.14 * pulp);
  });
  const double left = a * 0.075, right = a * 0.925;
  static constexpr std::array<std::array<const char *, 2>, 4> headlines = {
      {{"FERRY REOPENS", "after the flood"},
       {"NEW HALT OPENED", "at Withy Ford"},
       {"REGATTA DAY", "fair wind and music"},
       {"HARVEST HOME", "a record year"}}};
  const auto &headline = headlines[static_cast<std::size_t>(random.below(4))];
  const Pen bold{.ink = rgb(0x221f1c), .weight = 0.2};
  const double size = (right - left) / written_width(headline[0], 1, bold);
  const double tall = std::min(size, 0.1);
  double y = 0.06 + tall;
  line(canvas, {left, 0.055}, {right, 0.055}, 0.003, bold.ink);
  write_centred(canvas, {a / 2, y}, tall, headline[0], bold, random);
  y += tall * 0.75;
  write_centred(canvas, {a / 2, y}, tall * 0.5, headline[1],
                Pen{.ink = rgb(0x221f1c), .weight = 0.12, .slant = 0.2}, random);
  y += 0.025;
  line(canvas, {left, y}, {right, y}, 0.002, bold.ink);
  const double photo_end = y + 0.02 + std::min(0.34, (right - left) * 0.66);
  screened_photo(canvas, {left, y + 0.02, right, photo_end}, 170, random);
  const int columns = a > 0.6 ? 3 : 2;
  const double gap = 0.02, wide = (right - left - gap * (columns - 1)) / columns;
  for (int i = 0; i < columns; ++i) {
    const double x = left + i * (wide + gap);
    column(canvas, {x, photo_end + 0.02, x + wide, 0.945}, 0.0088, random);
    if (i > 0) line(canvas, {x - gap / 2, photo_end + 0.02}, {x - gap / 2, 0.94}, 0.001, bold.ink);
  }
}

} // namespace stoneproof::demo
