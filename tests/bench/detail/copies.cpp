// How surely near copies and the scanner's bed are found. Usage: bench_copies SCRATCH FOLDER...: pictures
// that are all different, of which copies and scans are made in memory; prints tables.
#include "engine/measure/bed_border.h"
#include "engine/measure/near_copy.h"
#include "tests/bench/detail/pixels.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <functional>
#include <map>
#include <numbers>

namespace {

using bench::between, bench::Pixels, bench::small;

Pixels toned(const Pixels &picture, const std::function<double(double, int)> &tone) {
  Pixels out = picture;
  for (std::size_t i = 0; i < out.rgb.size(); ++i)
    out.rgb[i] = bench::byte(tone(out.rgb[i], static_cast<int>(i % 3)));
  return out;
}

Pixels gray(const Pixels &picture) {
  Pixels out = picture;
  for (int y = 0; y < out.height; ++y)
    for (int x = 0; x < out.width; ++x)
      for (int c = 0; c < 3; ++c) out.at(x, y)[c] = bench::byte(picture.luma(x, y));
  return out;
}

/// Cut by shares of its sides.
Pixels cropped(const Pixels &p, double left, double top, double right, double bottom) {
  const int x = static_cast<int>(p.width * left), y = static_cast<int>(p.height * top);
  return bench::cut(p, x, y, static_cast<int>(p.width * (1 - right)) - x,
                    static_cast<int>(p.height * (1 - bottom)) - y);
}

/// Turned clockwise about its middle, on a sheet of that size; `bed` gives what lies outside.
Pixels turned(const Pixels &p, double degrees, int width, int height, double dx, double dy, double scale,
              const std::function<double(int, int, double)> &bed) {
  const double c = std::cos(degrees * std::numbers::pi / 180) / scale,
               s = std::sin(degrees * std::numbers::pi / 180) / scale;
  Pixels out(width, height);
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      const double u = x - width / 2.0 - dx, v = y - height / 2.0 - dy;
      const double px = u * c + v * s + p.width / 2.0 - 0.5, py = v * c - u * s + p.height / 2.0 - 0.5;
      // How much of the pixel is the original, and how far outside it lies.
      const double out_by = std::max({-px, px - p.width + 1, -py, py - p.height + 1});
      const double share = bed ? std::clamp(0.5 - out_by, 0.0, 1.0) : 1;
      for (int k = 0; k < 3; ++k)
        out.at(x, y)[k] = bench::byte(share * p.between(px, py, k) +
                                      (bed && share < 1 ? (1 - share) * bed(x, y, out_by) : 0));
    }
  return out;
}

Pixels quarter_turned(const Pixels &p) {
  Pixels out(p.height, p.width);
  for (int y = 0; y < out.height; ++y)
    for (int x = 0; x < out.width; ++x) std::copy_n(p.at(y, p.height - 1 - x), 3, out.at(x, y));
  return out;
}

Pixels mirrored(const Pixels &p) {
  Pixels out(p.width, p.height);
  for (int y = 0; y < p.height; ++y)
    for (int x = 0; x < p.width; ++x) std::copy_n(p.at(p.width - 1 - x, y), 3, out.at(x, y));
  return out;
}

Pixels scanned_again(const Pixels &p, std::mt19937 &random) {
  const Pixels moved =
      turned(p, between(random, -0.4, 0.4), p.width, p.height, between(random, -0.01, 0.01) * p.width,
             between(random, -0.01, 0.01) * p.height, 1.01, nullptr);
  return bench::with_noise(
      toned(bench::blurred(moved, 1), [](double v, int) { return 255 * std::pow(v / 255, 0.85) * 0.93 + 8; }),
      3, random);
}

struct Change {
  const char *name;
  std::function<Pixels(const Pixels &, std::mt19937 &)> make;
};

std::vector<Change> changes(const std::string &scratch) {
  const auto goal = [=](const Pixels &p,
                        std::mt19937 &r) { // half size, quality 60, cropped, lightly corrected
    const double a = between(r, 0, 0.1), b = between(r, 0, 0.1), gain = between(r, 0.85, 1.15),
                 lift = between(r, -10, 10);
    const Pixels part = cropped(p, a, b, 0.1 - a, 0.1 - b);
    return bench::through_jpeg(toned(bench::resized(part, part.width / 2, part.height / 2),
                                     [=](double v, int) { return v * gain + lift; }),
                               60, scratch);
  };
  return {
      {"half size",
       [](const Pixels &p, std::mt19937 &) { return bench::resized(p, p.width / 2, p.height / 2); }},
      {"JPEG 60", [=](const Pixels &p, std::mt19937 &) { return bench::through_jpeg(p, 60, scratch); }},
      {"gray", [](const Pixels &p, std::mt19937 &) { return gray(p); }},
      {"faded",
       [](const Pixels &p, std::mt19937 &) {
         return toned(gray(p), [](double v, int c) { return v * (0.6 + 0.05 * c) + 60 + 7 * c; });
       }},
      {"gamma 1.5",
       [](const Pixels &p, std::mt19937 &) {
         return toned(p, [](double v, int) { return 255 * std::pow(v / 255, 1 / 1.5); });
       }},
      {"crop 3% a side", [](const Pixels &p, std::mt19937 &) { return cropped(p, 0.03, 0.03, 0.03, 0.03); }},
      {"crop 5% a side", [](const Pixels &p, std::mt19937 &) { return cropped(p, 0.05, 0.05, 0.05, 0.05); }},
      {"crop 10% a side", [](const Pixels &p, std::mt19937 &) { return cropped(p, 0.1, 0.1, 0.1, 0.1); }},
      {"crop 0-10% a side",
       [](const Pixels &p, std::mt19937 &r) {
         return cropped(p, between(r, 0, 0.1), between(r, 0, 0.1), between(r, 0, 0.1), between(r, 0, 0.1));
       }},
      {"crop 10% one side", [](const Pixels &p, std::mt19937 &) { return cropped(p, 0.1, 0, 0, 0); }},
      {"half, crop, 60, tones", goal},
      {"scanned again", scanned_again},
      {"turned 1 degree",
       [](const Pixels &p, std::mt19937 &) { return turned(p, 1, p.width, p.height, 0, 0, 1.03, nullptr); }},
      {"white frame 5%",
       [](const Pixels &p, std::mt19937 &) {
         return turned(p, 0, p.width * 11 / 10, p.height * 11 / 10, 0, 0, 1,
                       [](int, int, double) { return 240.0; });
       }},
      {"mirrored", [](const Pixels &p, std::mt19937 &) { return mirrored(p); }},
      {"quarter turn", [](const Pixels &p, std::mt19937 &) { return quarter_turned(p); }},
  };
}

void print_copies(const std::vector<Pixels> &all, const std::string &scratch) {
  std::mt19937 random(3);
  std::vector<stoneproof::CopyFingerprint> prints;
  for (const Pixels &p : all) prints.push_back(copy_fingerprint(small(p)));
  std::printf("%-22s %6s %6s %12s\n", "copies", "made", "paired", "wrong pairs");
  for (const Change &change : changes(scratch)) {
    std::vector<stoneproof::CopyFingerprint> both = prints;
    for (const Pixels &p : all) both.push_back(copy_fingerprint(small(change.make(p, random))));
    std::vector<bool> paired(all.size());
    double least_likeness = 1, least_detail = 1;
    std::size_t right = 0, wrong = 0, blank = 0;
    for (const auto &print : prints) blank += print.blank;
    for (const auto &pair : near_copies(both)) {
      const std::size_t less = std::min(pair.whole, pair.other), more = std::max(pair.whole, pair.other);
      const bool same = less + all.size() == more;
      if (same) {
        paired[less] = true;
        least_likeness = std::min(least_likeness, pair.likeness),
        least_detail = std::min(least_detail, pair.detail);
      }
      right += same, wrong += !same;
      if (!same)
        std::printf("# wrong: %zu and %zu, likeness %.3f, detail %.3f\n", less % all.size(),
                    more % all.size(), pair.likeness, pair.detail);
    }
    for (std::size_t i = 0; i < all.size(); ++i)
      if (!paired[i] && !prints[i].blank) std::printf("# not paired: %zu\n", i);
    std::printf("%-22s %6zu %5.0f%% %12zu   least likeness %.3f, detail %.3f\n", change.name,
                all.size() - blank,
                100.0 * static_cast<double>(right) / static_cast<double>(all.size() - blank), wrong,
                least_likeness, least_detail);
  }
}

/// Parts of every picture that share nothing: all are different.
void print_strangers(const std::vector<Pixels> &all) {
  std::vector<stoneproof::CopyFingerprint> prints;
  for (const Pixels &p : all) {
    prints.push_back(copy_fingerprint(small(p)));
    const int across = p.width / 3, down = p.height / 2;
    for (int i = 0; i < 6; ++i)
      prints.push_back(copy_fingerprint(small(bench::cut(p, i % 3 * across, i / 3 * down, across, down))));
  }
  const std::clock_t start = std::clock();
  const auto pairs = near_copies(prints);
  const double taken = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  std::size_t blank = 0;
  for (const auto &print : prints) blank += print.blank;
  const std::size_t n = prints.size() - blank;
  std::printf("different pictures: %zu (%zu blank left out), %zu pairs, %zu called the same, %.2f s\n", n,
              blank, n * (n - 1) / 2, pairs.size(), taken);
  for (const auto &pair : pairs)
    std::printf("# false: %zu.%zu and %zu.%zu, likeness %.3f, detail %.3f\n", pair.whole / 7, pair.whole % 7,
                pair.other / 7, pair.other % 7, pair.likeness, pair.detail);
}

struct Lie {
  int made = 0, found = 0;
  std::vector<double> off;
};

void print_beds(const std::vector<Pixels> &all, const std::string &scratch) {
  std::mt19937 random(5);
  std::map<std::string, Lie> rows;
  int called = 0, looked = 0;
  std::size_t turn = 0;
  for (const Pixels &p : all) {
    for (const Pixels &native : {p, bench::through_jpeg(p, 75, scratch)})
      ++looked, called += bed_border(small(native)).certainty == stoneproof::Certainty::firm;
    for (const double size : {0.0, 0.5, 1.5, 3.0, 6.0}) {
      const char *bed = std::array{"white", "gray-white", "black"}[turn++ % 3];
      const double tilt = random() % 2 ? size : -size, tone = bed[0] == 'w' ? 247 : bed[0] == 'g' ? 236 : 12;
      const bool shadow = bed[0] != 'b', slope = bed[0] == 'g';
      const int width = p.width * 13 / 10 + 60, height = p.height * 13 / 10 + 60;
      const Pixels lying = turned(p, tilt, width, height, between(random, -0.06, 0.06) * p.width,
                                  between(random, -0.06, 0.06) * p.height, 1, [&](int x, int, double out_by) {
                                    return (tone - (slope ? 8.0 * x / width : 0)) *
                                           (shadow ? 1 - 0.2 * std::exp(-out_by / 4) : 1);
                                  });
      const auto found =
          bed_border(small(bench::through_jpeg(bench::with_noise(lying, 2, random), 85, scratch)));
      char tilted[40];
      std::snprintf(tilted, sizeof tilted, "%.1f degrees", size);
      for (const std::string &row : {std::string(bed), std::string(tilted), std::string("all")}) {
        Lie &lie = rows[row];
        ++lie.made;
        if (found.certainty != stoneproof::Certainty::firm) continue;
        ++lie.found;
        lie.off.push_back(std::abs(found.tilt.value_or(90) - tilt));
      }
    }
  }
  std::printf("%-26s %6s %6s %12s %12s\n", "bed", "made", "found", "median off", "95% within");
  for (auto &[row, lie] : rows) {
    std::ranges::sort(lie.off);
    if (lie.off.empty()) lie.off.push_back(90);
    std::printf("%-26s %6d %5.0f%% %12.2f %12.2f\n", row.c_str(), lie.made, 100.0 * lie.found / lie.made,
                lie.off[lie.off.size() / 2], lie.off[lie.off.size() * 95 / 100]);
  }
  std::printf("without a bed: %d looked at, %d called\n", looked, called);
}

/// Parts of chance, so that not a few of them overlap.
void print_time(const std::vector<Pixels> &all) {
  std::mt19937 random(1);
  std::vector<stoneproof::CopyFingerprint> prints;
  for (std::size_t i = 0; i < 1000; ++i) {
    const Pixels &p = all[i % all.size()];
    const bool upright = random() % 4 == 0;
    const double size = between(random, 0.3, 0.6) * std::min(p.width, p.height);
    const int width = static_cast<int>(upright ? size : size * 1.4),
              height = static_cast<int>(upright ? size * 1.4 : size);
    const int w = std::min(width, p.width), h = std::min(height, p.height);
    prints.push_back(
        copy_fingerprint(small(bench::cut(p, static_cast<int>(between(random, 0, p.width - w)),
                                          static_cast<int>(between(random, 0, p.height - h)), w, h))));
  }
  for (const std::size_t count : {250u, 500u, 1000u}) {
    const std::vector<stoneproof::CopyFingerprint> some(prints.begin(),
                                                        prints.begin() + static_cast<std::ptrdiff_t>(count));
    const std::clock_t start = std::clock();
    const std::size_t found = near_copies(some).size();
    std::printf("%zu pictures: %.2f s of a processor (%zu pairs)\n", count,
                static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC, found);
  }
}

} // namespace

int main(int count, char **words) {
  if (count < 3) return 2;
  std::vector<Pixels> all;
  for (int i = 2; i < count; ++i)
    for (const auto &file : bench::pictures_of(words[i])) {
      const Pixels p = bench::load(file);
      std::printf("# %zu %s\n", all.size(), file.stem().c_str());
      const int longer = std::max(p.width, p.height);
      all.push_back(longer > 1000 ? bench::resized(p, p.width * 1000 / longer, p.height * 1000 / longer) : p);
    }
  print_strangers(all);
  print_copies(all, words[1]);
  print_time(all);
  print_beds(all, words[1]);
}
