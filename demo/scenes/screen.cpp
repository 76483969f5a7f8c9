// A message on the screen of a telephone, as the telephone copies it: flat colours, hard edges.
// Only way in: scenes.h. Looked at by eye.
#include "demo/paint/pen.h"
#include "demo/scenes/scenes.h"

#include <array>

namespace stoneproof::demo {

namespace {

constexpr std::array screen_colours = {rgb(0xd9e0e8), rgb(0x2d5f8a), rgb(0xf3f5f7), rgb(0xcfe6c4),
                                       rgb(0x1c1f24)};

double distance_of(Colour a, Colour b) {
  return (a.r - b.r) * (a.r - b.r) + (a.g - b.g) * (a.g - b.g) + (a.b - b.b) * (a.b - b.b);
}

Colour nearest(Colour colour) {
  Colour best = screen_colours[0];
  for (const Colour one : screen_colours)
    if (distance_of(colour, one) < distance_of(colour, best)) best = one;
  return best;
}

void bubble(Canvas &canvas, double left, double top, double right, int lines, Colour ground, Random &random) {
  constexpr double height = 0.026, leading = 0.044;
  fill(canvas, box(left, top, right, top + leading * (lines + 0.7)), ground);
  const Pen pen{.ink = screen_colours[4], .weight = 0.16};
  for (int line = 0; line < lines; ++line) {
    std::string text = babble(random, 60);
    while (!text.empty() && written_width(text, height, pen) > right - left - 0.05) text.pop_back();
    write(canvas, {left + 0.025, top + leading * (line + 1)}, height, text, pen, random);
  }
}

} // namespace

void paint_message(Canvas &canvas, Random &random) {
  const double a = canvas.aspect();
  canvas.shade([](Vec, Colour) { return screen_colours[0]; });
  fill(canvas, box(0, 0, a, 0.11), screen_colours[1]);
  write(canvas, {0.05, 0.075}, 0.04, "FERRY COUSINS", Pen{.ink = screen_colours[2], .weight = 0.2}, random);
  bubble(canvas, 0.05, 0.15, a * 0.72, 4, screen_colours[2], random);
  bubble(canvas, a * 0.3, 0.39, a - 0.05, 5, screen_colours[3], random);
  bubble(canvas, 0.05, 0.68, a * 0.8, 5, screen_colours[2], random);
  canvas.shade([](Vec, Colour now) { return nearest(now); });
}

} // namespace stoneproof::demo
