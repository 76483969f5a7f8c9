// Looking for a lattice in the spectrum. The only way in is printed_screen; tested in
// tests/engine/measure/printed_screen.test.cpp, scored by tests/bench/detail/screens.sh.
#include "engine/measure/printed_screen.h"

#include "engine/measure/plane_spectrum.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stoneproof {

namespace {

/// Set on the half of the photographs that scores nothing (tests/bench/detail).
constexpr double hint_from = 3.2, firm_from = 4.0, steady_to = 0.35;
constexpr double finest_sure = 0.45;
constexpr double coarsest = PlaneSpectrum::fine, finest = 0.68;
/// Edges, the blocks of a JPEG and a scanner's streaks lie along the rows and columns: that close to them, in
/// cycles a pixel, nothing counts.
constexpr double axis = 0.012;
constexpr std::size_t most_lines = 16;

struct Line {
  double across = 0, down = 0;  ///< cycles a pixel
  double height = 0, above = 0; ///< ln of power; over the ground
  double frequency() const { return std::hypot(across, down); }
};

/// Where between -0.5 and 0.5 the top of a parabola through three values lies, the middle one the largest.
double top_of(double before, double here, double after) {
  const double bend = before - 2 * here + after;
  return bend < 0 ? std::clamp(0.5 * (before - after) / bend, -0.5, 0.5) : 0.0;
}

bool is_top(const PlaneSpectrum &spectrum, int across, int down) {
  const double here = spectrum.at(across, down);
  for (int y = -2; y <= 2; ++y)
    for (int x = -2; x <= 2; ++x)
      if (spectrum.at(across + x, down + y) > here) return false;
  return true;
}

Line line_at(const PlaneSpectrum &s, int across, int down) {
  const double here = s.at(across, down), side = s.side();
  return {(across + top_of(s.at(across - 1, down), here, s.at(across + 1, down))) / side,
          (down + top_of(s.at(across, down - 1), here, s.at(across, down + 1))) / side, here,
          s.above_ground(across, down)};
}

/// The highest above the ground, highest first.
std::vector<Line> lines_of(const PlaneSpectrum &spectrum) {
  const int half = spectrum.side() / 2;
  const double side = spectrum.side();
  std::vector<Line> lines;
  for (int down = -half; down < half; ++down)
    for (int across = 1; across < half; ++across) {
      const double frequency = std::hypot(across, down) / side;
      if (frequency < coarsest || frequency > finest) continue;
      if (across / side < axis || std::abs(down) / side < axis) continue;
      if (spectrum.above_ground(across, down) < hint_from / 2 || !is_top(spectrum, across, down)) continue;
      lines.push_back(line_at(spectrum, across, down));
    }
  std::ranges::sort(lines, [](const Line &a, const Line &b) { return a.above > b.above; });
  if (lines.size() > most_lines) lines.resize(most_lines);
  return lines;
}

/// Of one frequency and at right angles, as far as the bins tell.
bool are_lattice(const Line &a, const Line &b) {
  constexpr double frequency_off = 0.04, least_off = 0.003, right_angle_off = 0.1;
  const double fa = a.frequency(), fb = b.frequency();
  if (std::abs(fa - fb) > frequency_off * std::max(fa, fb) + least_off) return false;
  return std::abs(a.across * b.across + a.down * b.down) < right_angle_off * fa * fb;
}

/// Of the line that points right and down, or right and up.
double angle_of(const Line &a, const Line &b) {
  const double pi = std::numbers::pi;
  const auto quarter = [&](const Line &line) { return std::atan2(line.down, line.across); };
  // The other is turned by a quarter; take it back to the first before the mean.
  const double first = quarter(a);
  double second = quarter(b);
  second += std::round((first - second) / (pi / 2)) * (pi / 2);
  double degrees = (first + second) / 2 * 180 / pi;
  degrees -= std::floor(degrees / 90) * 90;
  return degrees;
}

/// How far the line strays in the single spectra: the median of distances from its place in the mean.
double unsteadiness(const std::vector<PlaneSpectrum> &spectra, const Line &line) {
  constexpr int near = 2;
  const double side = spectra.front().side();
  const int across = static_cast<int>(std::lround(line.across * side)),
            down = static_cast<int>(std::lround(line.down * side));
  std::vector<double> off;
  for (const PlaneSpectrum &spectrum : spectra) {
    int best_x = across, best_y = down;
    for (int y = down - near; y <= down + near; ++y)
      for (int x = across - near; x <= across + near; ++x)
        if (spectrum.at(x, y) > spectrum.at(best_x, best_y)) best_x = x, best_y = y;
    const Line here = line_at(spectrum, best_x, best_y);
    off.push_back(std::hypot(here.across - line.across, here.down - line.down) * side);
  }
  std::nth_element(off.begin(), off.begin() + static_cast<std::ptrdiff_t>(off.size() / 2), off.end());
  return off[off.size() / 2];
}

std::vector<Tile> quartered(const std::vector<Tile> &tiles) {
  std::vector<Tile> quarters;
  for (const Tile &tile : tiles)
    for (int quarter = 0; quarter < 4; ++quarter) {
      const int side = tile.side / 2, left = quarter % 2 * side, top = quarter / 2 * side;
      Tile part{tile.x + left, tile.y + top, side, {}, tile.detail};
      for (int y = 0; y < side; ++y)
        for (int x = 0; x < side; ++x) part.luma.push_back(tile.at(left + x, top + y));
      quarters.push_back(std::move(part));
    }
  return quarters;
}

PrintedScreen judged(PrintedScreen found, std::size_t tiles) {
  found.ruling_sure = found.ruling > 0 && found.ruling <= finest_sure;
  const bool steady = found.ruling > 0 && found.unsteadiness <= steady_to;
  found.certainty = !steady                                     ? Certainty::no
                    : found.strength >= firm_from && tiles >= 3 ? Certainty::firm
                                                                : Certainty::hint;
  return found;
}

} // namespace

PrintedScreen printed_screen(const std::vector<Tile> &tiles) {
  if (tiles.empty()) return {};
  const bool quarter = tiles.size() < 3 && tiles.front().side == TileSampler::large;
  std::vector<PlaneSpectrum> spectra;
  for (const Tile &tile : quarter ? quartered(tiles) : tiles) spectra.emplace_back(tile);
  const PlaneSpectrum spectrum(spectra);
  const std::vector<Line> lines = lines_of(spectrum);
  PrintedScreen found;
  double highest = -1e9;
  for (std::size_t i = 0; i < lines.size(); ++i)
    for (std::size_t k = i + 1; k < lines.size(); ++k) {
      if (!are_lattice(lines[i], lines[k])) continue;
      const double strength = std::min(lines[i].above, lines[k].above);
      // Overtones, and the rosettes of several inks, stand lower than the screens that make them.
      const double height = lines[i].height + lines[k].height;
      if (strength < hint_from || height < highest) continue;
      highest = height;
      found.strength = strength;
      found.ruling = (lines[i].frequency() + lines[k].frequency()) / 2;
      found.angle = angle_of(lines[i], lines[k]);
      found.unsteadiness = std::max(unsteadiness(spectra, lines[i]), unsteadiness(spectra, lines[k]));
    }
  return judged(found, spectra.size());
}

} // namespace stoneproof
