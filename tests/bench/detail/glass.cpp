// How much of the dirt on a glass is found, in batches of scans with dirt at known places and in clean ones.
// Usage: bench_glass DIR [batches] [kind]     DIR holds the beds that glass.sh makes. Fine scans are slow,
// and made only where they are named.
//        bench_glass FILE.jpg                 times GlassMeter on its rows against bare decoding.
#include "tests/bench/bare_jpeg.h"
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
  Rate strong, steady, middle, hairs, carried, named, streaks, alone;
  int false_firm = 0, false_hints = 0, false_streaks = 0, false_alone = 0, scans = 0;
};

void add_false(const GlassSpeck &speck, Rates &rates) {
  ++(speck.certainty == Certainty::firm ? rates.false_firm : rates.false_hints);
}

/// Which scans are named to carry what lies on the glass in truth: those that it changes by 20 levels must
/// be, and none may be that it changes by less than 3.
void score_carriers(const GlassSpeck &speck, const Dirt &dirt, Rates &rates) {
  for (std::size_t i = 0; i < dirt.contrasts.size(); ++i) {
    const bool is_named = std::find(speck.carriers.begin(), speck.carriers.end(), i) != speck.carriers.end();
    if (dirt.contrasts[i] >= 20) rates.carried.add(is_named);
    if (is_named) rates.named.add(dirt.contrasts[i] >= 3);
  }
}

/// Of each scan looked at alone. A streak at -1 is none.
void score_alone(const Maps &maps, const Streak &streak, Rates &rates) {
  for (const GlassMap &map : maps.maps) {
    const auto streaks = glass_dirt({&map}).streaks;
    const auto is_it = [&](const GlassStreak &s) {
      return s.column && streak.column >= 0 && std::abs(s.at - streak.column) <= 2;
    };
    if (streak.column >= 0 && std::abs(streak.levels) >= 5)
      rates.alone.add(std::any_of(streaks.begin(), streaks.end(), is_it));
    rates.false_alone += !std::all_of(streaks.begin(), streaks.end(), is_it);
    ++rates.scans;
  }
}

void score(const std::vector<Dirt> &dirt, const Streak &streak, const GlassDirt &found, Rates &rates) {
  for (const Dirt &d : dirt) {
    const auto hit = std::find_if(found.specks.begin(), found.specks.end(),
                                  [&](const GlassSpeck &speck) { return covers(speck, d); });
    const bool is_hit = hit != found.specks.end();
    if (is_hit) score_carriers(*hit, d, rates);
    const double contrast = median(d.contrasts);
    if (d.hair) {
      if (contrast >= 20) rates.hairs.add(is_hit);
      continue;
    }
    if (steadily_strong(d)) rates.steady.add(is_hit);
    if (contrast >= 8) (contrast >= 20 ? rates.strong : rates.middle).add(is_hit);
  }
  for (const GlassSpeck &speck : found.specks)
    if (std::none_of(dirt.begin(), dirt.end(), [&](const Dirt &d) { return covers(speck, d); }))
      add_false(speck, rates);
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
    Rates among, clean; // scans with dirt, and without
    for (int i = 0; i < batches; ++i) {
      Random random(static_cast<unsigned>(1000 * static_cast<int>(n) + i));
      std::vector<Dirt> none;
      const Maps clean_maps = maps_of(make_scans(random, photos, n, kind, none, {}));
      score(none, {}, clean_maps.dirt(), clean);
      score_alone(clean_maps, {}, clean);

      std::vector<Dirt> dirt = some_dirt(random, 850 * kind.scale, 1100 * kind.scale, 3 + i % 6, 1);
      // What lies on a streak is told as the streak.
      Streak streak{0, (i % 2 ? -1 : 1) * uniform(random, 3, 15)};
      const auto on_it = [&](const Dirt &d) {
        return std::abs(d.x - streak.column) <= (d.hair ? d.length / 2 : d.diameter / 2) + 6;
      };
      do streak.column = static_cast<int>(uniform(random, 40, 810)) * kind.scale;
      while (std::any_of(dirt.begin(), dirt.end(), on_it));
      const Maps maps = maps_of(make_scans(random, photos, n, kind, dirt, streak));
      score(dirt, streak, maps.dirt(), among);
      score_alone(maps, streak, among);
    }
    fmt::print("{:16} {} | {:13} | {:13} | {:11} | {:11} | {:12} | {:12} | {}, {} | {}, {} | {:11} {} | "
               "{:12} {} of {}\n",
               kind.name, n, among.strong.text(), among.steady.text(), among.middle.text(),
               among.hairs.text(), among.carried.text(), among.named.text(), among.false_firm,
               among.false_hints, clean.false_firm, clean.false_hints, among.streaks.text(),
               among.false_streaks + clean.false_streaks, among.alone.text(),
               among.false_alone + clean.false_alone, among.scans + clean.scans);
    std::fflush(stdout);
  }
}

void time_meter(const std::string &file) {
  std::vector<std::vector<std::uint8_t>> rows;
  RowLayout layout;
  bare_jpeg(file.c_str(), 8, [&](const JSAMPLE *row, const jpeg_decompress_struct &jpeg) {
    layout.width = jpeg.output_width, layout.height = jpeg.output_height;
    layout.channels = jpeg.output_components;
    rows.emplace_back(row, row + layout.width * layout.channels);
  });
  layout.stored = {layout.width, layout.height};
  if (layout.channels == 1) layout.colour = ColourModel::gray;
  const double decode = best_time(7, [&] { bare_jpeg(file.c_str(), 8); });
  GlassMap map;
  const double meter = best_time(7, [&] {
    GlassMeter glass(layout);
    for (const auto &row : rows) glass.add(row.data());
    map = glass.take();
  });
  fmt::print(
      "{} x {}, {} channels: decoded {:.0f} ms, GlassMeter {:.0f} ms, {:.2f} times; map {} kB\n",
      layout.width, layout.height, layout.channels, decode, meter, meter / decode,
      (map.marks.size() * sizeof(GlassMark) + (map.columns.values.size() + map.rows.values.size()) * 2) /
          1000);
}

} // namespace

int main(int argc, char **argv) {
  if (argc < 2) return 1;
  const std::filesystem::path dir = argv[1];
  if (std::filesystem::is_regular_file(dir)) {
    time_meter(argv[1]);
    return 0;
  }
  const int batches = argc > 2 ? std::atoi(argv[2]) : 20;
  fmt::print(
      "{}, {} batches with dirt and as many clean ones for each line: specks of 20 levels and more in the "
      "median of the scans | in all scans but one | of 8 to 20 | hairs of 20 | carriers of 20 levels named | "
      "named ones of 3 levels and more | false specks among dirt: firm, hints | in clean batches: firm, "
      "hints "
      "| streaks of 5 levels and more in batches, false ones | in one scan alone, scans with false ones\n",
      dir.filename().string(), batches);
  for (const Kind &kind : kinds)
    if (argc < 4 ? kind.scale == 1 : kind.name == argv[3]) run(dir, kind, batches);
}
