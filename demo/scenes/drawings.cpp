// Map, family tree, floor plan and boat drawing. Only way in: scenes.h. Looked at by eye.
#include "demo/paint/pen.h"
#include "demo/scenes/scenes.h"

#include <array>

namespace stoneproof::demo {

namespace {

const Colour ink = rgb(0x000000);

void wind_rose(Canvas &canvas, Vec at, double radius, Colour colour, Random &random) {
  for (const double r : {1.0, 0.92, 0.3}) ring(canvas, at, radius * r, radius * 0.02, colour);
  for (int i = 0; i < 8; ++i) {
    const double angle = i * pi / 4 - pi / 2, reach = radius * (i % 2 == 0 ? 0.9 : 0.6);
    const Vec tip = at + polar(angle, reach), left = at + polar(angle - 0.4, radius * 0.2),
              right = at + polar(angle + 0.4, radius * 0.2);
    fill(canvas, {at, left, tip}, colour);
    lines(canvas, {at, right, tip, at}, radius * 0.016, colour);
  }
  write_centred(canvas, at - Vec{0, radius * 1.1}, radius * 0.28, "N", Pen{.ink = colour, .weight = 0.14},
                random);
}

void double_border(Canvas &canvas, double margin, Colour colour) {
  const double a = canvas.aspect();
  for (const auto &[inset, width] : {std::pair{margin, 0.005}, std::pair{margin + 0.014, 0.0018}}) {
    Outline rim = box(inset, inset, a - inset, 1 - inset);
    rim.push_back(rim.front());
    lines(canvas, rim, width, colour);
  }
}

} // namespace

void paint_map(Canvas &canvas, Random &random) {
  const std::uint32_t seed = random.seed();
  const double a = canvas.aspect();
  const Colour sepia = rgb(0x4a3423);
  const auto height_at = [&](Vec p) {
    return fractal(p.x * 2.4 + 1, p.y * 2.4, 4, seed) - 0.32 * ramp(0.2, -0.25, p.y - 0.9 + 0.2 * p.x);
  };
  const auto river_x = [&](double y) {
    return a * 0.42 + 0.16 * std::sin(y * 5 + 1) + 0.05 * std::sin(y * 13);
  };
  canvas.shade([&](Vec p, Colour) {
    const double h = height_at(p), dx = height_at(p + Vec{0.002, 0}) - h,
                 dy = height_at(p + Vec{0, 0.002}) - h;
    const double slope = std::sqrt(dx * dx + dy * dy) / 0.002 + 1e-6, step = h * 26;
    const double contour = std::abs(step - std::floor(step + 0.5)) / 26 / slope;
    const double fibre = fractal(p.x * 150, p.y * 150, 4, seed + 1),
                 cloud = fractal(p.x * 3, p.y * 3, 4, seed + 2);
    Colour c = mix(rgb(0xf2e6c8), rgb(0xd3b985), cloud * 0.6) * (0.92 + 0.1 * fibre);
    c = mix(c, rgb(0xb9c795), ramp(0.02, -0.02, h - 0.5) * 0.35);
    c = c * (1 - 0.25 * clamp01((dx + dy) / 0.002 * 0.35));
    c = mix(c, rgb(0x9a6a3c), ramp(0.0022, 0.0009, contour) * 0.75);
    const double off = std::abs(p.x - river_x(p.y)), wide = 0.006 + 0.016 * p.y;
    c = mix(c, rgb(0x9db9c2) * (0.92 + 0.12 * std::sin((p.x - river_x(p.y)) * 1400)),
            ramp(wide + 0.002, wide, off));
    return mix(c, sepia, ramp(0.0024, 0.001, std::abs(off - wide)) * 0.9);
  });
  for (int road = 0; road < 3; ++road) {
    Outline points;
    for (int i = 0; i <= 8; ++i) points.push_back({a * i / 8, 0.2 + 0.28 * road + 0.08 * random.bell()});
    const Outline path = curve(points);
    lines(canvas, path, 0.009, sepia);
    lines(canvas, path, 0.0055, rgb(0xf5ead0));
    for (std::size_t i = 4; i < path.size(); i += 3) {
      const Vec at = path[i] + Vec{0, random.share() > 0.5 ? 0.016 : -0.016};
      if (random.share() > 0.45)
        fill(canvas, box(at.x - 0.007, at.y - 0.005, at.x + 0.007, at.y + 0.005), rgb(0x8c2f25));
    }
  }
  for (int i = 0; i < 300; ++i) {
    const Vec at{random.share() * a, random.share()};
    if (height_at(at) < 0.56 || std::abs(at.x - river_x(at.y)) < 0.04) continue;
    ring(canvas, at, 0.007, 0.0014, rgb(0x4d5a30));
    line(canvas, at + Vec{0, 0.006}, at + Vec{0, 0.014}, 0.0018, rgb(0x4d5a30));
  }
  const Pen pen{.ink = sepia, .weight = 0.1, .slant = 0.25, .tremble = 0.06};
  static constexpr std::array names = {"Withy Ford", "Mill Lane", "Osier Beds", "Gallows Hill",
                                       "Three Elms", "The Ferry", "Long Acre"};
  for (std::size_t i = 0; i < names.size(); ++i)
    write(canvas, {a * (0.1 + 0.13 * static_cast<double>(i * 3 % 6)), 0.15 + 0.11 * static_cast<double>(i)},
          0.024, names[i], pen, random);
  wind_rose(canvas, {a - 0.15, 0.2}, 0.085, sepia, random);
  for (int i = 0; i < 6; ++i)
    fill(canvas, box(a - 0.36 + 0.05 * i, 0.92, a - 0.31 + 0.05 * i, 0.93),
         i % 2 == 0 ? sepia : rgb(0xf5ead0));
  double_border(canvas, 0.02, sepia);
}

namespace {

void name_box(Canvas &canvas, Vec middle, double wide, const char *name, const char *years, Random &random) {
  const double tall = wide * 0.36;
  Outline rim = box(middle.x - wide / 2, middle.y - tall / 2, middle.x + wide / 2, middle.y + tall / 2);
  fill(canvas, rim, rgb(0xffffff));
  rim.push_back(rim.front());
  lines(canvas, rim, 0.0022, ink);
  const double inset = tall * 0.08;
  Outline inner = box(middle.x - wide / 2 + inset, middle.y - tall / 2 + inset, middle.x + wide / 2 - inset,
                      middle.y + tall / 2 - inset);
  inner.push_back(inner.front());
  lines(canvas, inner, 0.0008, ink);
  const Pen pen{.ink = ink, .weight = 0.12, .opacity = 1};
  const double letters = std::min(tall * 0.26, wide * 0.84 / written_width(name, 1, pen));
  write_centred(canvas, middle + Vec{0, -tall * 0.02}, letters, name, pen, random);
  write_centred(canvas, middle + Vec{0, tall * 0.33}, tall * 0.18, years,
                Pen{.ink = ink, .weight = 0.1, .opacity = 1}, random);
}

} // namespace

void paint_family_tree(Canvas &canvas, Random &random) {
  const double a = canvas.aspect();
  canvas.shade([](Vec, Colour) { return rgb(0xffffff); });
  double_border(canvas, 0.025, ink);
  // A trunk and branches behind the names, drawn in bark lines.
  for (int i = 0; i < 34; ++i) {
    const double x = a / 2 + (i - 16.5) * 0.0035;
    lines(canvas,
          curve({{x + (i - 16.5) * 0.004, 0.965},
                 {x, 0.8},
                 {x + 0.006 * std::sin(i * 2.0), 0.5},
                 {x * 0.9 + a * 0.05, 0.2}}),
          0.0012, ink);
  }
  struct Person {
    double x, y;
    const char *name, *years;
  };
  static constexpr std::array<Person, 13> people = {{{0.5, 0.86, "Ada and Tobias", "1879 - 1884"},
                                                     {0.2, 0.64, "Jozef", "1903"},
                                                     {0.5, 0.64, "Margery", "1906"},
                                                     {0.8, 0.64, "Eleni", "1910"},
                                                     {0.13, 0.42, "Hanna", "1929"},
                                                     {0.33, 0.42, "Piotr", "1931"},
                                                     {0.5, 0.42, "Wilfred", "1933"},
                                                     {0.67, 0.42, "Sofia", "1934"},
                                                     {0.87, 0.42, "Nikos", "1937"},
                                                     {0.2, 0.2, "Joan", "1955"},
                                                     {0.4, 0.2, "Stefan", "1958"},
                                                     {0.6, 0.2, "Daphne", "1961"},
                                                     {0.8, 0.2, "Lukas", "1966"}}};
  static constexpr std::array<std::array<int, 2>, 12> links = {
      {{0, 1}, {0, 2}, {0, 3}, {1, 4}, {1, 5}, {2, 6}, {3, 7}, {3, 8}, {4, 9}, {5, 10}, {7, 11}, {8, 12}}};
  for (const auto &[from, to] : links) {
    const Person &p = people[static_cast<std::size_t>(from)], &q = people[static_cast<std::size_t>(to)];
    const Vec start{a * p.x, p.y}, end{a * q.x, q.y}, bend{end.x, (p.y + q.y) / 2 + 0.05};
    const Outline bough = curve({start, bend, end});
    lines(canvas, bough, 0.0034, ink);
    for (std::size_t i = 2; i < bough.size(); ++i)
      for (int side = -1; side <= 1; side += 2) {
        const double angle = random.between(0.2, 1.2) * side - pi / 2;
        const Vec leaf = bough[i] + polar(angle, 0.02);
        Outline edge = ellipse(leaf, 0.014, 0.0065, angle);
        edge.push_back(edge.front());
        lines(canvas, edge, 0.001, ink);
        line(canvas, bough[i], leaf + polar(angle, 0.013), 0.0008, ink);
        for (int vein = 0; vein < 4; ++vein)
          line(canvas, leaf + polar(angle, -0.008 + 0.005 * vein),
               leaf + polar(angle, -0.004 + 0.005 * vein) + polar(angle + 1, 0.004), 0.0005, ink);
      }
  }
  for (const Person &p : people) name_box(canvas, {a * p.x, p.y}, 0.185, p.name, p.years, random);
  write_centred(canvas, {a / 2, 0.105}, 0.042, "The Family at Withy Ford",
                Pen{.ink = ink, .weight = 0.1, .slant = 0.2, .opacity = 1}, random);
}

namespace {

void wall(Canvas &canvas, Vec from, Vec to) {
  const double thick = 0.014;
  const bool flat = std::abs(from.y - to.y) < 1e-9;
  const Vec low{std::min(from.x, to.x) - thick / 2, std::min(from.y, to.y) - thick / 2},
      high{std::max(from.x, to.x) + thick / 2, std::max(from.y, to.y) + thick / 2};
  Outline rim = box(low.x, low.y, high.x, high.y);
  fill(canvas, rim, rgb(0xffffff));
  rim.push_back(rim.front());
  lines(canvas, rim, 0.0025, ink);
  const double run = flat ? high.x - low.x : high.y - low.y;
  for (double t = 0; t < run - thick; t += 0.008) { // hatched masonry
    const Vec start = flat ? Vec{low.x + t, high.y} : Vec{low.x, low.y + t + thick};
    line(canvas, start, start + Vec{thick, -thick}, 0.0012, ink);
  }
}

} // namespace

void paint_floor_plan(Canvas &canvas, Random &random) {
  const double a = canvas.aspect();
  canvas.shade([](Vec, Colour) { return rgb(0xffffff); });
  double_border(canvas, 0.02, ink);
  const double l = a * 0.1, r = a * 0.72, t = 0.16, b = 0.86, x1 = a * 0.34, x2 = a * 0.52, y1 = 0.52;
  for (double x = l; x < x1; x += 0.03) line(canvas, {x, y1}, {x, b}, 0.0009, ink); // floor boards
  for (double y = t; y < y1; y += 0.035)
    for (double x = x2; x < r; x += 0.035) lines(canvas, {{x, y}, {std::min(x + 0.035, r), y}}, 0.0009, ink);
  for (double x = x2; x < r; x += 0.035) line(canvas, {x, t}, {x, y1}, 0.0009, ink);
  for (const auto &[from, to] : {std::pair{Vec{l, t}, Vec{r, t}},
                                 {Vec{l, b}, Vec{r, b}},
                                 {Vec{l, t}, Vec{l, b}},
                                 {Vec{r, t}, Vec{r, b}},
                                 {Vec{l, y1}, Vec{x1, y1}},
                                 {Vec{x1, t}, Vec{x1, y1 - 0.12}},
                                 {Vec{x2, y1 - 0.1}, Vec{x2, b}},
                                 {Vec{x2, y1}, Vec{r - 0.16, y1}}})
    wall(canvas, from, to);
  for (const Vec hinge : {Vec{x1, y1 - 0.12}, Vec{x2, y1 - 0.1}}) { // doors and their swing
    line(canvas, hinge, hinge - Vec{0.1, 0}, 0.003, ink);
    for (int i = 0; i < 20; ++i)
      line(canvas, hinge + polar(pi / 2 + pi / 2 * i / 20, 0.1),
           hinge + polar(pi / 2 + pi / 2 * (i + 0.6) / 20, 0.1), 0.0012, ink);
  }
  for (int i = 0; i < 9; ++i)
    line(canvas, {x1 + 0.025 + 0.02 * i, 0.7}, {x1 + 0.025 + 0.02 * i, b - 0.02}, 0.0018, ink); // stairs
  const Pen pen{.ink = ink, .weight = 0.1, .opacity = 1};
  write(canvas, {l + 0.05, 0.34}, 0.032, "KITCHEN", pen, random);
  write(canvas, {x2 + 0.04, 0.72}, 0.032, "PARLOUR", pen, random);
  write(canvas, {l + 0.04, 0.6}, 0.026, "WORKSHOP", pen, random);
  write_centred(canvas, {a / 2, 0.11}, 0.042, "The Ferry House, ground floor",
                Pen{.ink = ink, .weight = 0.1, .slant = 0.2, .opacity = 1}, random);
  wind_rose(canvas, {a * 0.86, 0.36}, 0.1, ink, random);
  for (int i = 0; i < 5; ++i) {
    Outline bar = box(a * 0.76 + 0.05 * i, 0.8, a * 0.76 + 0.05 * (i + 1), 0.815);
    if (i % 2 == 0) fill(canvas, bar, ink);
    bar.push_back(bar.front());
    lines(canvas, bar, 0.0016, ink);
  }
}

void paint_boat_drawing(Canvas &canvas, Random &random) {
  const double a = canvas.aspect();
  canvas.shade([](Vec, Colour) { return rgb(0xffffff); });
  double_border(canvas, 0.02, ink);
  const auto at = [&](double x, double y) { return Vec{a * x, y}; };
  for (int i = 0; i <= 9; ++i) { // planks from keel to rail
    const double t = i / 9.0;
    lines(canvas,
          curve({at(0.12 + 0.05 * t, 0.42 + 0.22 * t), at(0.3, 0.52 + 0.2 * t), at(0.55, 0.54 + 0.2 * t),
                 at(0.8, 0.5 + 0.2 * t), at(0.9 - 0.08 * t, 0.38 + 0.3 * t)}),
          i % 9 == 0 ? 0.005 : 0.0016, ink);
  }
  for (int i = 1; i < 16; ++i) // ribs
    line(canvas, at(0.14 + 0.046 * i, 0.5 + 0.02 * std::sin(i * 0.4)), at(0.16 + 0.044 * i, 0.72), 0.0012,
         ink);
  line(canvas, at(0.48, 0.53), at(0.48, 0.12), 0.008, ink);
  for (int i = 0; i < 26; ++i) { // the sail, shaded by lines that follow its belly
    const double t = i / 25.0;
    lines(canvas,
          curve({at(0.485, 0.14 + 0.34 * t), at(0.485 + 0.16 * t, 0.17 + 0.33 * t),
                 at(0.485 + 0.3 * t, 0.14 + 0.36 * t)}),
          0.0012, ink);
  }
  lines(canvas, curve({at(0.485, 0.13), at(0.7, 0.34), at(0.79, 0.5), at(0.485, 0.49)}), 0.0035, ink);
  for (const double x : {0.15, 0.22, 0.88}) line(canvas, at(0.48, 0.13), at(x, 0.46), 0.0014, ink);
  for (int i = 0; i < 40; ++i) { // water
    const double y = 0.72 + 0.15 * i / 40.0, x = random.share() * 0.75 + 0.06,
                 wide = random.between(0.04, 0.14);
    lines(canvas,
          curve({at(x, y), at(x + wide * 0.3, y - 0.006), at(x + wide * 0.6, y + 0.004), at(x + wide, y)}),
          0.0014, ink);
  }
  write_centred(canvas, at(0.5, 0.94), 0.04, "The ferry boat Osier, built 1912",
                Pen{.ink = ink, .weight = 0.1, .slant = 0.2, .opacity = 1}, random);
}

} // namespace stoneproof::demo
