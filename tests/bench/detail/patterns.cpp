// Drawing cloth, fences, walls, water and lines of text. The only ways in are those of patterns.h; a
// benchmark's own.
#include "tests/bench/detail/patterns.h"

#include <cmath>
#include <numbers>

namespace bench {

namespace {

double part(double x) { return x - std::floor(x); }
double wave(double x) { return 0.5 + 0.5 * std::cos(2 * std::numbers::pi * x); }

/// A number between 0 and 1 that belongs to a whole place.
double chance(double x, double y) {
  const double mixed = std::sin(std::floor(x) * 127.1 + std::floor(y) * 311.7) * 43758.5453;
  return part(mixed);
}

double cloth(double x, double y) {
  const bool over = (static_cast<long>(std::floor(x)) + static_cast<long>(std::floor(y))) % 2 == 0;
  const double thread = over ? std::sin(std::numbers::pi * part(x)) : std::sin(std::numbers::pi * part(y));
  return (0.35 + 0.5 * thread) * (0.85 + 0.3 * (over ? chance(x, 0) : chance(0, y)));
}

double mesh(double x, double y) { // wires, and what grows behind them
  const double wire = std::min(std::abs(part(x) - 0.5), std::abs(part(y) - 0.5));
  return wire < 0.12 ? 0.75 : 0.2 + 0.4 * chance(x * 3, y * 3);
}

double bricks(double x, double y) {
  const double row = std::floor(y), shifted = x / 2 + (static_cast<long>(row) % 2 ? 0.5 : 0.0);
  if (part(y) < 0.12 || part(shifted) < 0.06) return 0.8;
  return 0.3 + 0.3 * chance(shifted, row);
}

double water(double x, double y) {
  const double swell = 0.6 * std::sin(0.31 * x + 0.17 * y) + 0.5 * std::sin(0.13 * x - 0.23 * y);
  return 0.5 * wave(y + swell) + 0.5 * wave(0.3 * x + 0.8 * y + 0.7 * swell);
}

double windows(double x, double y) {
  const bool pane = part(x) > 0.25 && part(x) < 0.75 && part(y) > 0.2 && part(y) < 0.8;
  return pane ? 0.15 + 0.5 * chance(x, y) : 0.7;
}

double text(double x, double y) { // letters of a fixed width, three units high with the space between
  const double line = part(y / 3);
  if (line > 0.6 || chance(x, y / 3) < 0.18) return 0.95;
  return chance(x * 4, line * 8 + 31 * std::floor(x)) < 0.45 ? 0.1 : 0.95;
}

} // namespace

const std::vector<NamedPattern> patterns = {{"cloth", cloth}, {"wire mesh", mesh},  {"bricks", bricks},
                                            {"water", water}, {"windows", windows}, {"text", text}};

Pixels draw_pattern(const Pattern &pattern, std::mt19937 &random) {
  constexpr int side = 900, finer = 2;
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  const double turn = between(0, std::numbers::pi / 2), pitch = between(3, 14);
  const double aslant_x = between(-0.25, 0.25) / side, aslant_y = between(-0.25, 0.25) / side;
  const double bend = between(0.1, 0.6), slow = between(0.004, 0.02), phase = between(0, 6);
  Pixels picture(side, side);
  for (int y = 0; y < side; ++y)
    for (int x = 0; x < side; ++x) {
      double sum = 0;
      for (int dy = 0; dy < finer; ++dy)
        for (int dx = 0; dx < finer; ++dx) {
          const double px = x + (dx + 0.5) / finer - side / 2, py = y + (dy + 0.5) / finer - side / 2;
          const double nearer = 1 / (1 + aslant_x * px + aslant_y * py);
          const double u = (px * std::cos(turn) + py * std::sin(turn)) * nearer / pitch,
                       v = (py * std::cos(turn) - px * std::sin(turn)) * nearer / pitch;
          sum += pattern(u + bend * std::sin(slow * py + phase), v + bend * std::sin(slow * px));
        }
      const double light = 0.8 + 0.2 * std::sin(0.003 * x + phase) * std::cos(0.002 * y);
      for (int c = 0; c < 3; ++c) picture.at(x, y)[c] = byte(255 * light * sum / (finer * finer));
    }
  return with_noise(blurred(picture, between(0.4, 0.9)), between(1, 4), random);
}

} // namespace bench
