// Tones of photographs that nobody here made. The files are the JPEGs above 150 kB in the sample folders of
// wallpapers and of cameras' pictures (lomiri-wallpapers, lxqt-themes, npm's exif and jpeg-autorotate),
// fetched by package name; without them this test fails, because silence would prove nothing.
//
// Combs: the bound of 5 % in engine/rules/combed_tones.cpp was set on every second of these photographs, in
// the order of their paths, beginning with the second. Only the others are scored here: as taken none may
// reach the bound, and after a stretch of their contrast in 8 bits, by ImageMagick, every one must. They are
// scaled to 1,500 pixels at most, as a library would send them, and kept as PNG, so that no JPEG fills the
// gaps afterwards.
//
// Shares and range: our figures against those reckoned from the histogram that ImageMagick counts.
#include "engine/measure/pixel_pass.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"
#include "tests/support/programs.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <fmt/format.h>
#include <regex>
#include <sstream>
#include <utility>

using namespace stoneproof;

namespace {

constexpr double combed = 0.05; // of engine/rules/combed_tones.cpp

/// Sorted by their path among the samples.
std::vector<std::filesystem::path> photographs() {
  const char *named = std::getenv("STONEPROOF_SAMPLES");
  const std::filesystem::path folder = named ? named : STONEPROOF_SOURCE_DIR "/build/samples";
  if (!std::filesystem::is_directory(folder))
    FAIL(fmt::format("no samples in {}: run  bash tests/get-samples.sh DIR  and set STONEPROOF_SAMPLES=DIR",
                     folder.string()));
  static const std::regex name("(wallpaper|lxqt|background|exif).*\\.jpe?g$", std::regex::icase);
  std::vector<std::filesystem::path> found;
  for (const auto &entry : std::filesystem::recursive_directory_iterator(folder)) {
    const std::string path = std::filesystem::relative(entry.path(), folder).string();
    if (entry.is_regular_file() && entry.file_size() > 150'000 && std::regex_search(path, name))
      found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

/// A photograph as an 8-bit PNG, and the same after its contrast was stretched in those 8 bits.
struct Pair {
  std::filesystem::path photo, as_taken, stretched;
};

/// Those of the photographs on which the bound was not set. Made by ImageMagick, once for all tests.
const std::vector<Pair> &scored() {
  static const test::Folder folder;
  static const std::vector<Pair> pairs = [] {
    std::vector<Pair> made;
    const auto photos = photographs();
    for (std::size_t i = 0; i < photos.size(); i += 2) {
      const Pair pair{photos[i], folder / fmt::format("{}.png", i), folder / fmt::format("{}s.png", i)};
      test::run_command(fmt::format("convert '{}' -resize '1500x1500>' -depth 8 '{}' && convert '{}' "
                                    "-level '15%,85%' -depth 8 '{}'",
                                    pair.photo.string(), pair.as_taken.string(), pair.as_taken.string(),
                                    pair.stretched.string()));
      made.push_back(pair);
    }
    return made;
  }();
  return pairs;
}

Tone tone_of_file(const std::filesystem::path &file) {
  const auto facts = read_facts(file);
  if (!facts) FAIL(facts.fault().what);
  const PixelSize size = facts.value().size;
  PassOrder order;
  order.looks = {{{0, 0, static_cast<double>(size.width), static_cast<double>(size.height)},
                  std::nullopt,
                  std::nullopt}};
  const auto result = measure_pixels(file, facts.value(), order);
  if (!result) FAIL(result.fault().what);
  return result.value().looks[0].tone;
}

/// Counts of each value, for red, green and blue, from lines such as "12: (1,2,3) #010203 rgb(1,2,3)".
using Counts = std::array<std::array<double, 256>, 3>;
Counts imagemagick_counts(const std::filesystem::path &png) {
  std::istringstream lines(test::run_command(
      fmt::format("convert '{}' -type TrueColor -depth 8 -format %c histogram:info:-", png.string())));
  Counts counts{};
  for (std::string line; std::getline(lines, line);) {
    double count = 0;
    std::array<unsigned, 3> value{};
    const auto hash = line.find('#');
    if (hash == std::string::npos || std::sscanf(line.c_str(), " %lf:", &count) != 1) continue;
    if (std::sscanf(line.c_str() + hash, "#%2x%2x%2x", &value[0], &value[1], &value[2]) != 3) FAIL(line);
    for (std::size_t c = 0; c < 3; ++c) counts[c][value[c]] += count;
  }
  return counts;
}

/// The same three figures as Tone's, from those counts.
struct Figures {
  double white = 1, black = 1, range = 0;
};
Figures figures_of(const Counts &counts) {
  Figures figures;
  std::array<double, 256> all{};
  double samples = 0;
  for (const auto &channel : counts) {
    double bright = 0, dark = 0, pixels = 0;
    for (std::size_t value = 0; value < 256; ++value) {
      if (value > 250) bright += channel[value];
      if (value < 5) dark += channel[value];
      pixels += channel[value];
      all[value] += channel[value];
    }
    REQUIRE(pixels > 0);
    figures.white = std::min(figures.white, bright / pixels);
    figures.black = std::min(figures.black, dark / pixels);
    samples += pixels;
  }
  std::size_t low = 0, high = 0;
  for (double sum = all[0]; sum <= 0.005 * samples; sum += all[++low]) {
  }
  for (double sum = all[0]; sum <= 0.995 * samples; sum += all[++high]) {
  }
  figures.range = static_cast<double>(high - low) / 255;
  return figures;
}

} // namespace

TEST_CASE("photographs as taken have no comb, and each has one after its contrast was stretched") {
  std::string wrong;
  for (const Pair &pair : scored()) {
    const double before = tone_of_file(pair.as_taken).comb, after = tone_of_file(pair.stretched).comb;
    if (before >= combed) wrong += fmt::format("{}: {:.3f} as taken\n", pair.photo.string(), before);
    if (after < combed) wrong += fmt::format("{}: {:.3f} after a stretch\n", pair.photo.string(), after);
  }
  CHECK(scored().size() >= 10);
  CHECK(wrong == "");
}

TEST_CASE("shares and range are those of the histogram that ImageMagick counts") {
  REQUIRE(scored().size() >= 10);
  bool stretched = false; // every second one, so that shares are not all near nothing
  for (const Pair &pair : scored()) {
    const auto &png = std::exchange(stretched, !stretched) ? pair.stretched : pair.as_taken;
    CAPTURE(pair.photo, stretched);
    const Tone ours = tone_of_file(png);
    const Figures theirs = figures_of(imagemagick_counts(png));
    CHECK(ours.white == Approx(theirs.white).margin(1e-9));
    CHECK(ours.black == Approx(theirs.black).margin(1e-9));
    CHECK(ours.range == Approx(theirs.range).margin(1e-9));
  }
}
