// How surely printed screens are found. Usage: bench_screens PHOTOGRAPHS MORE SCRATCH: two folders of
// pictures, of which the first are printed and scanned in memory and both must not be called; prints a table.
#include "engine/measure/printed_screen.h"
#include "tests/bench/detail/patterns.h"
#include "tests/bench/detail/pixels.h"

#include <cmath>
#include <cstdio>
#include <map>
#include <numbers>

namespace {

using bench::between, bench::Pixels;
using stoneproof::Certainty;

struct Scan {
  double ruling; ///< lines an inch
  int density;
  double angle; ///< of black, degrees
  bool colour;
  double blur, noise;
  int quality;     ///< of the JPEG
  double rough;    ///< how far dots lie off their place, in pixels
  bool among_text; ///< half of the scan is lines of text
};

/// Smooth chance displacements of a scan.
class Rough {
public:
  Rough(int side, double size, std::mt19937 &random) : noise_(side / 4 + 2, side / 4 + 2) {
    std::normal_distribution<double> chance(128, 40);
    for (std::uint8_t &value : noise_.rgb) value = bench::byte(chance(random));
    // Between the points of the grid the variance halves twice, roughly.
    scale_ = size / 40 * 1.5;
  }
  double at(double x, double y, int axis) const {
    return (noise_.between(x / 4, y / 4, axis) - 128) * scale_;
  }

private:
  Pixels noise_;
  double scale_;
};

/// Round dots, above half round holes.
bool is_inked(double cover, double u, double v) {
  u -= std::floor(u), v -= std::floor(v);
  if (cover <= 0.5) {
    const double x = u - 0.5, y = v - 0.5;
    return (x * x + y * y) * std::numbers::pi < cover;
  }
  const double x = u > 0.5 ? u - 1 : u, y = v > 0.5 ? v - 1 : v;
  return (x * x + y * y) * std::numbers::pi > 1 - cover;
}

struct Ink {
  double turn;             ///< against black
  double red, green, blue; ///< how much of each it takes away
};
constexpr Ink inks[] = {
    {0, 0.86, 0.86, 0.86}, {-30, 0.8, 0.4, 0.1}, {30, 0.15, 0.8, 0.35}, {-45, 0.03, 0.08, 0.8}};

/// Letters of chance over the left half, 12 pixels wide.
void write_text(Pixels &page, std::mt19937 &random) {
  constexpr int letter = 12, line = 36;
  for (int top = 0; top < page.height; top += line)
    for (int left = 0; left < page.width / 2; left += letter) {
      const auto strokes = random();
      for (int y = top; y < std::min(top + line, page.height); ++y)
        for (int x = left; x < left + letter; ++x) {
          const bool is_stroke = y - top < 20 && x - left < 9 && strokes % 6 != 0 &&
                                 (strokes >> (3 + (x - left) / 3 + 3 * ((y - top) / 4))) % 2 != 0;
          for (int c = 0; c < 3; ++c) page.at(x, y)[c] = is_stroke ? 40 : 230;
        }
    }
}

/// Share of a pixel that each ink covers; printed at about 1,800 dots an inch.
Pixels print_and_scan(const Pixels &picture, const Scan &scan, std::mt19937 &random) {
  constexpr int side = 800;
  const int finer = 1800 / scan.density;
  Pixels out(side, side);
  const Rough rough(side, scan.rough, random);
  const double pitch = scan.ruling / scan.density / finer;
  for (int y = 0; y < side; ++y)
    for (int x = 0; x < side; ++x) {
      const double from_x = static_cast<double>(x) * picture.width / side,
                   from_y = static_cast<double>(y) * picture.height / side;
      double rgb[3];
      for (int c = 0; c < 3; ++c) rgb[c] = picture.between(from_x, from_y, c) / 255;
      const double gray = 0.299 * rgb[0] + 0.587 * rgb[1] + 0.114 * rgb[2];
      const double dark = 0.6 * (1 - std::max({rgb[0], rgb[1], rgb[2]}));
      double light[3] = {232, 230, 224};
      const double off_x = rough.at(x, y, 0) * finer, off_y = rough.at(x, y, 1) * finer;
      for (int i = 0; i < (scan.colour ? 4 : 1); ++i) {
        const double cover = !scan.colour ? 1 - gray : i == 0 ? dark : std::max(0.0, 1 - rgb[i - 1] - dark);
        const double turn = (scan.angle + inks[i].turn) * std::numbers::pi / 180;
        const double cosine = std::cos(turn) * pitch, sine = std::sin(turn) * pitch;
        int inked = 0;
        for (int dy = 0; dy < finer; ++dy)
          for (int dx = 0; dx < finer; ++dx) {
            const double px = x * finer + dx + off_x, py = y * finer + dy + off_y;
            inked += is_inked(cover, px * cosine + py * sine, py * cosine - px * sine);
          }
        const double share = static_cast<double>(inked) / (finer * finer);
        const double taken[] = {inks[i].red, inks[i].green, inks[i].blue};
        for (int c = 0; c < 3; ++c) light[c] *= 1 - share * taken[c];
      }
      for (int c = 0; c < 3; ++c) out.at(x, y)[c] = bench::byte(light[c]);
    }
  if (scan.among_text) write_text(out, random);
  return bench::with_noise(bench::blurred(out, scan.blur), scan.noise, random);
}

struct Tally {
  int made = 0, found = 0, ruling = 0, angle = 0;
};

/// Off one of the screens' angles, modulo 90.
double angle_off(const Scan &scan, double found) {
  double least = 90;
  for (int i = 0; i < (scan.colour ? 4 : 1); ++i) {
    const double off = found - scan.angle - inks[i].turn;
    least = std::min(least, std::abs(off - 90 * std::round(off / 90)));
  }
  return least;
}

void print_screens(const std::vector<std::filesystem::path> &files, const std::filesystem::path &scratch) {
  std::mt19937 random(7);
  std::map<std::string, Tally> rows;
  constexpr double rulings[] = {65, 85, 100, 120, 133, 150}, angles[] = {15, 45, 75};
  int turn = 0;
  std::size_t photograph = 0;
  for (const auto &file : files) {
    const Pixels whole = bench::load(file);
    const int least = std::min(whole.width, whole.height);
    ++photograph;
    for (const int density : {300, 600})
      for (std::size_t i = photograph % 2; i < std::size(rulings);
           i += 2) { // half of them for each photograph
        const double ruling = rulings[i];
        const int part = static_cast<int>(least * between(random, 0.4, 1));
        const Pixels picture =
            bench::cut(whole, static_cast<int>(between(random, 0, whole.width - part)),
                       static_cast<int>(between(random, 0, whole.height - part)), part, part);
        const Scan scan{ruling,
                        density,
                        angles[turn % 3] + between(random, -3, 3),
                        turn % 2 == 1,
                        density == 300 ? between(random, 0.4, 0.8) : between(random, 0.6, 1.4),
                        between(random, 1, 4),
                        static_cast<int>(between(random, 75, 96)),
                        turn % 4 < 2 ? 0 : 0.0015 * density,
                        turn % 7 == 6};
        ++turn;
        const Pixels scanned =
            bench::through_jpeg(print_and_scan(picture, scan, random), scan.quality, scratch);
        const auto found = stoneproof::printed_screen(bench::tiles_of(scanned));
        const bool right = std::abs(found.ruling * density / ruling - 1) <= 0.02,
                   turned = angle_off(scan, found.angle) <= 2;
        char ruling_row[40], kind_row[40];
        std::snprintf(ruling_row, sizeof ruling_row, "%d ppi, %3.0f lpi", density, ruling);
        std::snprintf(kind_row, sizeof kind_row, "%d ppi, %s", density, scan.colour ? "four inks" : "black");
        const std::string third = scan.among_text  ? "among text"
                                  : scan.rough > 0 ? "rough dots"
                                                   : "even dots";
        for (const std::string &row :
             {std::string(ruling_row), std::string(kind_row), third, std::string("all")}) {
          Tally &tally = rows[row];
          ++tally.made;
          if (found.certainty != Certainty::firm) continue;
          ++tally.found, tally.ruling += right, tally.angle += turned;
        }
        if (found.certainty != Certainty::firm || !right || !turned || turn % 10 == 0)
          std::printf("# %s %d ppi %.0f lpi %.0f deg %s: strength %.1f, strays %.2f, %.1f lpi %.1f deg\n",
                      file.stem().c_str(), density, ruling, scan.angle, third.c_str(), found.strength,
                      found.unsteadiness, found.ruling * density, found.angle);
      }
  }
  std::printf("%-22s %6s %6s %14s %14s\n", "screens", "made", "found", "ruling in 2%", "angle in 2 deg");
  for (const auto &[row, t] : rows)
    std::printf("%-22s %6d %5.0f%% %13.0f%% %13.0f%%\n", row.c_str(), t.made, 100.0 * t.found / t.made,
                100.0 * t.ruling / std::max(1, t.found), 100.0 * t.angle / std::max(1, t.found));
}

struct Silence {
  int made = 0, hints = 0, firm = 0;
  double highest = 0;
};

void print_silence(const std::vector<std::filesystem::path> &files, const std::filesystem::path &scratch) {
  std::map<std::string, Silence> rows;
  const auto look = [&](const char *row, const Pixels &picture, const std::string &name) {
    const auto found = stoneproof::printed_screen(bench::tiles_of(picture));
    if (found.certainty == Certainty::cannot_tell) return;
    Silence &silence = rows[row];
    ++silence.made, silence.hints += found.certainty == Certainty::hint,
        silence.firm += found.certainty == Certainty::firm;
    silence.highest = std::max(silence.highest, found.strength);
    if (found.strength > 3)
      std::printf("# %s %s: strength %.1f, strays %.2f, at %.3f, %.0f deg\n", row, name.c_str(),
                  found.strength, found.unsteadiness, found.ruling, found.angle);
  };
  std::mt19937 random(8);
  for (const auto &file : files) {
    const Pixels whole = bench::load(file);
    const std::string name = file.stem();
    look("photographs", whole, name);
    look("photographs, JPEG 60", bench::through_jpeg(whole, 60, scratch), name);
    look("photographs, noise", bench::with_noise(whole, 4, random), name);
    look("photographs, half size", bench::resized(whole, whole.width / 2, whole.height / 2), name);
    look("photographs, 1.6 times", bench::resized(whole, whole.width * 8 / 5, whole.height * 8 / 5), name);
    for (int i = 0; i < 4; ++i) {
      const int side = static_cast<int>(between(random, 0.45, 0.8) * std::min(whole.width, whole.height));
      look("photographs, parts",
           bench::cut(whole, static_cast<int>(between(random, 0, whole.width - side)),
                      static_cast<int>(between(random, 0, whole.height - side)), side, side),
           name);
    }
  }
  for (const auto &[name, draw] : bench::patterns)
    for (int i = 0; i < 20; ++i) {
      const Pixels drawn = bench::draw_pattern(draw, random);
      look(name, i % 2 ? bench::through_jpeg(drawn, 85, scratch) : drawn, std::to_string(i));
    }
  std::printf("%-22s %6s %6s %6s %9s\n", "without a screen", "looked", "hints", "firm", "highest");
  for (const auto &[row, s] : rows)
    std::printf("%-22s %6d %6d %6d %9.2f\n", row.c_str(), s.made, s.hints, s.firm, s.highest);
}

} // namespace

int main(int count, char **words) {
  if (count != 4) return 2;
  const auto photographs = bench::pictures_of(words[1]);
  auto all = bench::pictures_of(words[2]);
  all.insert(all.begin(), photographs.begin(), photographs.end());
  print_silence(all, words[3]);
  print_screens(photographs, words[3]);
}
