// How much of the dirt on a glass is found, in batches of scans with dirt at known places and in clean ones.
// Usage: bench_glass DIR [batches] [kind]     DIR holds the beds that glass.sh makes. Fine scans are slow,
// and made only where they are named.
#include "tests/bench/best_time.h"
#include "tests/bench/detail/made_scans.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>

#include <fmt/format.h>

namespace {

using namespace stoneproof;
using namespace bench;

const std::vector<Kind> kinds = {
    {"full"},
    {"full, moved by 1", Bed::full, 1},
    {"print on lid", Bed::print},
    {"print, moved by 1", Bed::print, 1},
    {"full, JPEG 85", Bed::full, 0, 2, 85},
    {"full, noise 5", Bed::full, 0, 5},
    {"full, twice as fine", Bed::full, 0, 2, 0, 2},
};
constexpr std::size_t counts[] = {4, 5, 6, 8};

std::vector<Gray> photos_of(const std::filesystem::path &dir, Bed bed) {
  std::vector<std::filesystem::path> files;
  const std::string end = bed == Bed::full ? "-full.pgm" : "-print.pgm";
  for (const auto &entry : std::filesystem::directory_iterator(dir)) {
    const std::string name = entry.path().filename();
    if (name.size() > end.size() && name.substr(name.size() - end.size()) == end)
      files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  std::vector<Gray> photos;
  for (const auto &file : files) photos.push_back(read_pgm(file));
  return photos;
}

struct Maps {
  std::vector<GlassMap> maps;
  GlassDirt dirt() const {
    std::vector<const GlassMap *> batch;
    for (const GlassMap &map : maps) batch.push_back(&map);
    return glass_dirt(batch);
  }
};

Maps maps_of(const std::vector<Gray> &scans) {
  Maps maps;
  for (const Gray &scan : scans) maps.maps.push_back(map_of(scan));
  return maps;
}

/// The rectangle of a finding reaches to within a few pixels of the dirt's middle.
bool covers(const GlassSpeck &speck, const Dirt &dirt) {
  const double reach = 4 + dirt.diameter / 2 + (dirt.hair ? dirt.length / 2 : 0);
  const auto outside = [](double at, std::int64_t begin, std::int64_t length) {
    return std::max({static_cast<double>(begin) - at, at - static_cast<double>(begin + length), 0.0});
  };
  return std::hypot(outside(dirt.x, speck.where.x, speck.where.width),
                    outside(dirt.y, speck.where.y, speck.where.height)) <= reach;
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return (values[(values.size() - 1) / 2] + values[values.size() / 2]) / 2;
}

/// 20 levels and more in all scans but one.
bool steadily_strong(const Dirt &dirt) {
  return std::count_if(dirt.contrasts.begin(), dirt.contrasts.end(), [](double c) { return c < 20; }) <= 1;
}

struct Rate {
  int found = 0, of = 0;
  void add(bool hit) { found += hit, ++of; }
  std::string text() const {
    return of == 0 ? "-" : fmt::format("{}/{} {:.0f} %", found, of, 100.0 * found / of);
  }
};

struct Rates {
  Rate strong, steady, middle, weak, hairs, streaks, clean;
  int false_dirty = 0, false_clean = 0, false_streaks = 0, too_many = 0;
};

void score(const std::vector<Dirt> &dirt, const Streak &streak, const GlassDirt &found, Rates &rates) {
  rates.too_many += found.specks_certainty == Certainty::cannot_tell;
  for (const Dirt &d : dirt) {
    const bool hit = std::any_of(found.specks.begin(), found.specks.end(),
                                 [&](const GlassSpeck &speck) { return covers(speck, d); });
    const double contrast = median(d.contrasts);
    if (d.hair) {
      if (contrast >= 20) rates.hairs.add(hit);
    } else {
      if (steadily_strong(d)) rates.steady.add(hit);
      (contrast >= 20 ? rates.strong : contrast >= 8 ? rates.middle : rates.weak).add(hit);
    }
  }
  for (const GlassSpeck &speck : found.specks)
    rates.false_dirty +=
        std::none_of(dirt.begin(), dirt.end(), [&](const Dirt &d) { return covers(speck, d); });
  const auto is_it = [&](const GlassStreak &s) { return s.column && std::abs(s.at - streak.column) <= 2; };
  if (std::abs(streak.levels) >= 5)
    rates.streaks.add(std::any_of(found.streaks.begin(), found.streaks.end(), [&](const GlassStreak &s) {
      return s.certainty == Certainty::firm && is_it(s);
    }));
  for (const GlassStreak &s : found.streaks)
    rates.false_streaks += s.certainty == Certainty::firm && !is_it(s);
}

void run(const std::filesystem::path &dir, const Kind &kind, int batches) {
  const std::vector<Gray> photos = photos_of(dir, kind.bed);
  for (const std::size_t n : counts) {
    Rates rates;
    for (int i = 0; i < batches; ++i) {
      Random random(static_cast<unsigned>(1000 * static_cast<int>(n) + i));
      std::vector<Dirt> none;
      const GlassDirt clean = maps_of(make_scans(random, photos, n, kind, none, {})).dirt();
      rates.clean.add(!clean.specks.empty());
      rates.false_clean += static_cast<int>(clean.specks.size());
      for (const GlassStreak &s : clean.streaks) rates.false_streaks += s.certainty == Certainty::firm;

      std::vector<Dirt> dirt = some_dirt(random, 850 * kind.scale, 1100 * kind.scale, 3 + i % 6, 1);
      const Streak streak{static_cast<int>(uniform(random, 40, 810)) * kind.scale,
                          (i % 2 ? -1 : 1) * uniform(random, 3, 15)};
      const auto scans = make_scans(random, photos, n, kind, dirt, streak);
      score(dirt, streak, maps_of(scans).dirt(), rates);
    }
    fmt::print(
        "{:19} {} | {:13} | {:13} | {:12} | {:11} | {:12} | {:11} | {:3} | {:5} ({} of {}) | {:3} | {}\n",
        kind.name, n, rates.strong.text(), rates.steady.text(), rates.middle.text(), rates.weak.text(),
        rates.hairs.text(), rates.streaks.text(), rates.false_dirty, rates.false_clean, rates.clean.found,
        rates.clean.of, rates.false_streaks, rates.too_many);
    std::fflush(stdout);
  }
}

/// A picture of 24 megapixels in colour.
void time_meter() {
  constexpr int width = 6000, height = 4000;
  RowLayout layout;
  layout.stored = {width, height};
  layout.width = width, layout.height = height;
  layout.channels = 3;
  Random random(1);
  std::vector<std::vector<std::uint8_t>> rows(64);
  for (auto &row : rows)
    for (int x = 0; x < width * 3; ++x)
      row.push_back(static_cast<std::uint8_t>(100 + x % 97 / 2 + static_cast<int>(random() % 12)));
  GlassMap map;
  const double meter = best_time(5, [&] {
    GlassMeter glass(layout);
    for (int y = 0; y < height; ++y) glass.add(rows[static_cast<std::size_t>(y % 64)].data());
    map = glass.take();
  });
  fmt::print(
      "24 megapixels, 8-bit RGB: {:.0f} ms, map {} kB\n", meter,
      (map.marks.size() * sizeof(GlassMark) + (map.columns.values.size() + map.rows.values.size()) * 2) /
          1000);
}

} // namespace

int main(int argc, char **argv) {
  if (argc < 2) return 1;
  const std::filesystem::path dir = argv[1];
  const int batches = argc > 2 ? std::atoi(argv[2]) : 20;
  fmt::print("{}: specks of 20 levels and more in the middle of the scans | in all but one | of 8 to 20 | of "
             "less | hairs of 20 and more | streaks of 5 levels and more |"
             " false specks among dirt | in clean batches | false streaks | batches not told\n",
             dir.filename().string());
  for (const Kind &kind : kinds)
    if (argc < 4 ? kind.scale == 1 : kind.name == argv[3]) run(dir, kind, batches);
  time_meter();
}
