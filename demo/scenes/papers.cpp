// Letter, typed page and postcard. Only way in: scenes.h. Looked at by eye.
#include "demo/paint/pen.h"
#include "demo/scenes/scenes.h"

namespace stoneproof::demo {

namespace {

/// Old writing paper: fibres, foxing, browned edges and the creases of an envelope.
void aged_paper(Canvas &canvas, Colour sheet, int creases, std::uint32_t seed) {
  const double a = canvas.aspect();
  canvas.shade([&](Vec p, Colour) {
    const double fibre = fractal(p.x * 160, p.y * 160, 4, seed),
                 cloud = fractal(p.x * 3, p.y * 3, 5, seed + 1);
    const double edge = std::min(std::min(p.x, a - p.x), std::min(p.y, 1 - p.y));
    const double fox = ramp(0.7, 0.8, fractal(p.x * 26, p.y * 26, 3, seed + 2)) * 0.45;
    Colour c = sheet * (0.9 + 0.13 * fibre);
    c = mix(c, rgb(0xb98f57),
            0.28 * cloud * cloud + 0.5 * ramp(0.07, 0.0, edge + 0.03 * (cloud - 0.5)) + fox * 0.5);
    for (int i = 1; i <= creases; ++i) {
      const double off =
          p.y - static_cast<double>(i) / (creases + 1) - 0.004 * (noise(p.x * 6, i, seed + 3) - 0.5);
      if (std::abs(off) < 0.02)
        c = c * (1 - 0.16 * std::exp(-std::abs(off) * 500) + 0.05 * std::exp(-std::abs(off - 0.004) * 400));
    }
    return c;
  });
}

void stain_ring(Canvas &canvas, Vec at, double radius, Random &random) {
  for (int i = 0; i < 260; ++i) {
    const double angle = random.share() * 2 * pi;
    glow(canvas, at + polar(angle, radius * (1 + 0.03 * random.bell())), radius * 0.13, rgb(0x8a5a2b),
         0.07 + 0.05 * std::sin(angle));
  }
}

} // namespace

void paint_letter(Canvas &canvas, Random &random) {
  const double a = canvas.aspect(), left = a * 0.1, right = a * 0.9;
  aged_paper(canvas, rgb(0xf3e8cd), 2, random.seed());
  stain_ring(canvas, {a * 0.74, 0.83}, 0.07, random);
  const double pitch = 0.033;
  for (double y = 0.13; y < 0.96; y += pitch)
    line(canvas, {a * 0.05, y}, {a * 0.95, y}, 0.0011, rgb(0x7f93ad), 0.55);
  line(canvas, {left - 0.012, 0.02}, {left - 0.012, 0.98}, 0.0013, rgb(0xc06a62), 0.6);
  const Pen pen{.ink = mix(rgb(0x1d2a55), rgb(0x3a2717), random.share()),
                .weight = 0.085,
                .slant = 0.32,
                .tremble = 0.16,
                .joined = true};
  write(canvas, {a * 0.46, 0.09}, 0.021, "Withy Ford, 9th of May", pen, random);
  write(canvas, {left, 0.128 + pitch}, 0.023, "My dear sister,", pen, random);
  double y = 0.125 + pitch * 2.0;
  for (int row = 0; row < 20; ++row, y += pitch) {
    double x = left + (row % 7 == 0 ? 0.06 : 0) + 0.004 * random.bell();
    const double end = row % 7 == 6 ? right * random.between(0.5, 0.8) : right;
    while (true) {
      std::string word = babble(random, 2 + random.below(8));
      while (!word.empty() && word.back() == ' ') word.pop_back();
      if (word.empty()) continue;
      if (x + written_width(word, 0.02, pen) > end) break;
      x = write(canvas, {x, y - 0.004 + 0.001 * random.bell()}, 0.02, word, pen, random) + 0.016;
    }
  }
  write(canvas, {a * 0.5, y + 0.005}, 0.022, "Your loving brother,", pen, random);
  write(canvas, {a * 0.58, y + pitch * 1.3}, 0.034, "Tobias", pen, random);
  lines(canvas,
        curve({{a * 0.58, y + pitch * 1.6},
               {a * 0.72, y + pitch * 1.5},
               {a * 0.8, y + pitch * 1.75},
               {a * 0.66, y + pitch * 1.7}}),
        0.0018, pen.ink);
}

void paint_typed_page(Canvas &canvas, Random &random) {
  const double a = canvas.aspect();
  aged_paper(canvas, rgb(0xf4ecd8), 1, random.seed());
  const Pen pen{.ink = rgb(0x24222e), .weight = 0.12, .tremble = 0.1, .even_pitch = true, .opacity = 0.88};
  const double height = 0.0118, pitch = height * 5.5 / 6;
  write(canvas, {a * 0.12, 0.09}, height * 1.1, "FERRY COMPANY OF WITHY FORD", pen, random);
  line(canvas, {a * 0.12, 0.1}, {a * 0.88, 0.1}, 0.0012, rgb(0x24222e), 0.7);
  write(canvas, {a * 0.6, 0.14}, height, "3 September 1934", pen, random);
  const auto letters = static_cast<int>(a * 0.76 / pitch);
  double y = 0.2;
  for (int row = 0; row < 29; ++row, y += row % 8 == 0 ? 0.036 : 0.0225)
    write(canvas, {a * 0.12 + 0.001 * random.bell(), y}, height,
          babble(random, row % 8 == 7 ? letters / 2 : letters), pen, random);
  const Pen signing{.ink = rgb(0x22306a), .weight = 0.07, .slant = 0.4, .tremble = 0.2, .joined = true};
  write(canvas, {a * 0.55, 0.945}, 0.035, "J. Wroblak", signing, random);
  const Vec seal{a * 0.24, 0.9};
  for (const double r : {0.055, 0.047, 0.03}) ring(canvas, seal, r, 0.0022, rgb(0x5b3c86), 0.6);
  write_centred(canvas, seal + Vec{0, 0.008}, 0.016, "PAID",
                Pen{.ink = rgb(0x5b3c86), .weight = 0.16, .opacity = 0.6}, random);
}

void paint_postcard(Canvas &canvas, Random &random) {
  const double a = canvas.aspect();
  aged_paper(canvas, rgb(0xf0e3c4), 0, random.seed());
  line(canvas, {a * 0.53, 0.1}, {a * 0.53, 0.92}, 0.003, rgb(0x5a4a3a), 0.8);
  write_centred(canvas, {a * 0.53, 0.07}, 0.03, "POST CARD", Pen{.ink = rgb(0x5a4a3a), .weight = 0.12},
                random);
  const Pen pen{.ink = rgb(0x22202c), .weight = 0.12, .tremble = 0.1, .even_pitch = true, .opacity = 0.88};
  const double height = 0.032;
  const auto letters = static_cast<int>(a * 0.45 / (height * 5.5 / 6));
  for (int row = 0; row < 11; ++row)
    write(canvas, {a * 0.045, 0.2 + 0.064 * row}, height, babble(random, row == 10 ? letters / 2 : letters),
          pen, random);
  for (int row = 0; row < 4; ++row) {
    const double y = 0.56 + 0.1 * row;
    for (double x = a * 0.57; x < a * 0.95; x += 0.012) disc(canvas, {x, y}, 0.0016, rgb(0x5a4a3a), 0.8);
    write(canvas, {a * 0.58, y - 0.012}, height,
          row == 0   ? "Eleni Kalofoti"
          : row == 1 ? "The Quay House"
          : row == 2 ? "Ampeliki"
                     : "by the night mail",
          pen, random);
  }
  const double left = a * 0.81, top = 0.1, wide = 0.2, tall = 0.25;
  const Colour ink = rgb(0x8a2f33);
  fill(canvas, box(left, top, left + wide, top + tall), rgb(0xf7eed8));
  for (double t = 0; t <= 1.001; t += 0.0909)
    for (const double side : {0.0, 1.0}) {
      disc(canvas, {left + wide * t, top + tall * side}, 0.0065, rgb(0xe3d3ae));
      disc(canvas, {left + wide * side, top + tall * t}, 0.0065, rgb(0xe3d3ae));
    }
  fill_with(canvas, box(left + 0.02, top + 0.02, left + wide - 0.02, top + tall - 0.02), [&](Vec p) {
    return mix(rgb(0xf7eed8), ink, ramp(-0.2, 0.4, std::sin(p.y * 520 + 3 * std::sin(p.x * 30))));
  });
  fill(canvas, ellipse({left + wide / 2, top + tall / 2}, 0.055, 0.075), rgb(0xf7eed8));
  write_centred(canvas, {left + wide / 2, top + tall / 2 + 0.025}, 0.055, "25",
                Pen{.ink = ink, .weight = 0.16}, random);
  const Vec mark{a * 0.73, 0.24};
  for (const double r : {0.12, 0.08}) ring(canvas, mark, r, 0.004, rgb(0x201c22), 0.65);
  write_centred(canvas, mark + Vec{0, 0.012}, 0.025, "14 6 31", Pen{.ink = rgb(0x201c22), .opacity = 0.7},
                random);
  for (int i = 0; i < 6; ++i)
    lines(canvas,
          curve({{a * 0.79, 0.17 + 0.028 * i},
                 {a * 0.85, 0.155 + 0.028 * i},
                 {a * 0.9, 0.18 + 0.028 * i},
                 {a * 0.97, 0.16 + 0.028 * i}}),
          0.0035, rgb(0x201c22), 0.55);
}

} // namespace stoneproof::demo
