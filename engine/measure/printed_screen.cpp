// Looking for a lattice in the spectrum. The only way in is printed_screen; tested in
// tests/engine/measure/printed_screen.test.cpp, scored by tests/bench/detail/screens.sh.
#include "engine/measure/printed_screen.h"

#include "engine/measure/plane_spectrum.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

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
      if (across / side < axis || std::abs(down) / side < axis) continue;
      if (spectrum.above_ground(across, down) < hint_from / 2 || !is_top(spectrum, across, down)) continue;
      const double frequency = std::hypot(across, down) / side;
      if (frequency < coarsest || frequency > finest) continue;
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

struct Lattice {
  Line one, other;
};

/// The line where one spectrum has it, within two bins of its place in the mean.
Line nearby(const PlaneSpectrum &spectrum, const Line &line) {
  constexpr int near = 2;
  const int across = static_cast<int>(std::lround(line.across * spectrum.side())),
            down = static_cast<int>(std::lround(line.down * spectrum.side()));
  int best_x = across, best_y = down;
  for (int y = down - near; y <= down + near; ++y)
    for (int x = across - near; x <= across + near; ++x)
      if (spectrum.at(x, y) > spectrum.at(best_x, best_y)) best_x = x, best_y = y;
  return line_at(spectrum, best_x, best_y);
}

/// The spectra that show both lines: text and blank paper beside a picture do not.
std::vector<PlaneSpectrum> showing(const std::vector<PlaneSpectrum> &spectra, const Lattice &lattice) {
  std::vector<PlaneSpectrum> shown;
  for (const PlaneSpectrum &spectrum : spectra)
    if (std::min(nearby(spectrum, lattice.one).above, nearby(spectrum, lattice.other).above) >= firm_from)
      shown.push_back(spectrum);
  return shown;
}

/// The median of how far the line lies from its place in the mean, in cycles a tile's side.
double unsteadiness(const std::vector<PlaneSpectrum> &spectra, const Line &line) {
  std::vector<double> off;
  for (const PlaneSpectrum &spectrum : spectra) {
    const Line here = nearby(spectrum, line);
    off.push_back(std::hypot(here.across - line.across, here.down - line.down) * spectrum.side());
  }
  const auto middle = off.begin() + static_cast<std::ptrdiff_t>(off.size() / 2);
  std::nth_element(off.begin(), middle, off.end());
  return *middle;
}

double strength_of(const Lattice &lattice) { return std::min(lattice.one.above, lattice.other.above); }

/// The strongest lattice in a mean of spectra.
std::optional<Lattice> lattice_of(const PlaneSpectrum &mean) {
  const std::vector<Line> lines = lines_of(mean);
  std::optional<Lattice> best;
  double highest = 0;
  for (std::size_t i = 0; i < lines.size(); ++i)
    for (std::size_t k = i + 1; k < lines.size(); ++k) {
      if (!are_lattice(lines[i], lines[k]) || strength_of({lines[i], lines[k]}) < hint_from) continue;
      // Overtones, and the rosettes of several inks, stand lower than the screens that make them.
      const double height = lines[i].height + lines[k].height;
      if (best && height < highest) continue;
      highest = height, best = Lattice{lines[i], lines[k]};
    }
  return best;
}

/// Both lines divided by the whole complex number m + n i.
Lattice divided(const Lattice &lattice, int m, int n) {
  const double size = m * m + n * n;
  const auto by = [&](const Line &line) {
    return Line{(line.across * m + line.down * n) / size, (line.down * m - line.across * n) / size, 0, 0};
  };
  return {by(lattice.one), by(lattice.other)};
}

/// Whether a line stands where it would have to, and at least as high as its overtone.
bool stands_below(const PlaneSpectrum &mean, const Line &place, const Line &overtone) {
  const Line found = nearby(mean, place);
  const double off = std::hypot(found.across - place.across, found.down - place.down) * mean.side();
  return off < 1 && found.above >= firm_from && found.height >= overtone.height;
}

/// Of a scan so fine that the dots are coarser than what is looked at only overtones are found: the lattice
/// below them, where there is one.
Lattice fundamental(const PlaneSpectrum &mean, const Lattice &lattice) {
  constexpr double coarsest_below = 0.03;
  for (const auto &[m, n] : {std::pair(2, 1), std::pair(2, -1), std::pair(2, 0), std::pair(1, 1)}) {
    const Lattice place = divided(lattice, m, n);
    const double frequency = place.one.frequency();
    if (frequency < coarsest && frequency >= coarsest_below && stands_below(mean, place.one, lattice.one) &&
        stands_below(mean, place.other, lattice.other))
      return place;
  }
  return lattice;
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

} // namespace

PrintedScreen printed_screen(const std::vector<Tile> &tiles) {
  constexpr std::size_t enough = 3;
  PrintedScreen found;
  if (tiles.empty()) return found;
  found.certainty = Certainty::no;
  const bool quarter = tiles.size() < enough && tiles.front().side == TileSampler::large;
  std::vector<PlaneSpectrum> spectra;
  for (const Tile &tile : quarter ? quartered(tiles) : tiles) spectra.emplace_back(tile);
  PlaneSpectrum mean(spectra);
  auto lattice = lattice_of(mean);
  if (!lattice) return found;
  if (auto shown = showing(spectra, *lattice); shown.size() >= enough && shown.size() < spectra.size()) {
    PlaneSpectrum of_shown(shown);
    if (const auto clearer = lattice_of(of_shown))
      lattice = clearer, spectra = std::move(shown), mean = std::move(of_shown);
  }

  found.strength = strength_of(*lattice);
  found.unsteadiness = std::max(unsteadiness(spectra, lattice->one), unsteadiness(spectra, lattice->other));
  const Lattice dots = fundamental(mean, *lattice);
  found.ruling = (dots.one.frequency() + dots.other.frequency()) / 2;
  found.angle = angle_of(dots.one, dots.other);
  found.ruling_sure = found.ruling <= finest_sure;
  if (found.unsteadiness <= steady_to)
    found.certainty =
        found.strength >= firm_from && spectra.size() >= enough ? Certainty::firm : Certainty::hint;
  return found;
}

} // namespace stoneproof
