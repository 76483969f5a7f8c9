// Colours against what was not written here: the published pairs of CIEDE2000, what exiftool reads of
// profiles, and what transicc (Debian's liblcms2-utils) makes of single colours, one by one and without
// tables beforehand. It shares lcms2 with us; what is compared is the choice of conversion, the table's
// cells, the sums and the flags.
#include "engine/colour/difference.h"
#include "engine/colour/press_table.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <array>
#include <cmath>
#include <fmt/format.h>
#include <map>
#include <random>

using namespace stoneproof;

namespace {

const std::string profiles = "/usr/share/color/icc/";
const std::string press_file = profiles + "ghostscript/default_cmyk.icc"; // Debian's libgs-common

std::vector<std::uint8_t> bytes_of(const std::string &file) {
  const std::string content = test::content_of(file);
  return {content.begin(), content.end()};
}

/// The test is not to be had without the program and the profiles; says so.
bool missing(std::initializer_list<std::string> files) {
  for (const std::string &file : files)
    if (!std::filesystem::exists(file)) {
      WARN("not compared: there is no " << file);
      return true;
    }
  return false;
}
const std::string program = "/usr/bin/transicc";

using Colour = std::vector<double>;
using Colours = std::vector<Colour>;

/// What transicc makes of each colour. Profiles: files, or "*sRGB", "*Lab", "*XYZ".
Colours converted(const Colours &colours, const std::string &from, const std::string &to,
                  const std::string &options = "") {
  const test::Folder folder;
  std::string text;
  for (const Colour &colour : colours) text += fmt::format("{:.6f}\n", fmt::join(colour, " "));
  test::write_file(folder / "in", text);
  const test::Printed printed = test::print_of(fmt::format("{} -n -t1 {} '-i{}' '-o{}' < {} 2>/dev/null",
                                                           program, options, from, to, folder.file("in")));
  std::istringstream lines(printed.out);
  Colours found;
  for (std::string line; std::getline(lines, line);) {
    std::istringstream numbers(line);
    Colour colour;
    for (double number = 0; numbers >> number;) colour.push_back(number);
    if (!colour.empty()) found.push_back(colour);
  }
  REQUIRE(found.size() == colours.size());
  return found;
}

double sum_of(const Colour &ink) {
  REQUIRE(ink.size() == 4);
  return ink[0] + ink[1] + ink[2] + ink[3];
}

/// In percent.
std::vector<double> inks_of(const Colours &colours, const std::string &from) {
  std::vector<double> sums;
  for (const Colour &ink : converted(colours, from, press_file, "-b")) sums.push_back(sum_of(ink));
  return sums;
}

PressTable table(const std::string &source, ProfileSpace space, double limit) {
  auto made = PressTable::make(source.empty() ? std::vector<std::uint8_t>{} : bytes_of(source), space,
                               bytes_of(press_file), limit);
  REQUIRE(made);
  return std::move(made).value();
}

Printed at(const PressTable &table, const Colour &colour) {
  const auto level = [&](std::size_t i) { return static_cast<std::uint8_t>(colour.at(i)); };
  return table.at(level(0), level(1), level(2));
}

Colours random_colours(std::size_t count, unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_int_distribution<int> level(0, 255);
  Colours colours(count, Colour(3));
  for (Colour &colour : colours)
    for (double &channel : colour) channel = level(random);
  return colours;
}

/// CIE 15: XYZ from 0 to 100 against D50 as profiles have it.
Lab lab_of(const Colour &xyz) {
  const auto f = [](double t) { return t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116; };
  const double x = f(xyz[0] / 96.42), y = f(xyz[1] / 100), z = f(xyz[2] / 82.49);
  return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

/// How far the press's colour is from what it is meant to be: XYZ drawn together towards white so that the
/// source's black, 0, meets the press's (ISO 18619:2015), whose lightness is that of the ink for black.
std::vector<double> misses(const Colours &colours) {
  const Colours meant = converted(colours, "*sRGB", "*XYZ");
  const auto shown_of = [](const Colours &some) {
    return converted(converted(some, "*sRGB", press_file, "-b"), press_file, "*Lab");
  };
  const Colours shown = shown_of(colours);
  const double black = std::pow((shown_of({{0, 0, 0}})[0][0] + 16) / 116, 3);
  std::vector<double> found;
  for (std::size_t i = 0; i < colours.size(); ++i) {
    const Colour drawn = {96.42 * black + meant[i][0] * (1 - black), 100 * black + meant[i][1] * (1 - black),
                          82.49 * black + meant[i][2] * (1 - black)};
    found.push_back(ciede2000(lab_of(drawn), {shown[i][0], shown[i][1], shown[i][2]}));
  }
  return found;
}

} // namespace

TEST_CASE("CIEDE2000: the pairs of Sharma, Wu and Dalal (2005), table 1") {
  struct Pair {
    Lab one, other;
    double difference;
  };
  const Pair pairs[] = {
      {{50, 2.6772, -79.7751}, {50, 0, -82.7485}, 2.0425},
      {{50, 3.1571, -77.2803}, {50, 0, -82.7485}, 2.8615},
      {{50, 2.8361, -74.02}, {50, 0, -82.7485}, 3.4412},
      {{50, -1.3802, -84.2814}, {50, 0, -82.7485}, 1.0000},
      {{50, -1.1848, -84.8006}, {50, 0, -82.7485}, 1.0000},
      {{50, -0.9009, -85.5211}, {50, 0, -82.7485}, 1.0000},
      {{50, 0, 0}, {50, -1, 2}, 2.3669},
      {{50, -1, 2}, {50, 0, 0}, 2.3669},
      {{50, 2.49, -0.001}, {50, -2.49, 0.0009}, 7.1792},
      {{50, 2.49, -0.001}, {50, -2.49, 0.001}, 7.1792},
      {{50, 2.49, -0.001}, {50, -2.49, 0.0011}, 7.2195},
      {{50, 2.49, -0.001}, {50, -2.49, 0.0012}, 7.2195},
      {{50, -0.001, 2.49}, {50, 0.0009, -2.49}, 4.8045},
      {{50, -0.001, 2.49}, {50, 0.001, -2.49}, 4.8045},
      {{50, -0.001, 2.49}, {50, 0.0011, -2.49}, 4.7461},
      {{50, 2.5, 0}, {50, 0, -2.5}, 4.3065},
      {{50, 2.5, 0}, {73, 25, -18}, 27.1492},
      {{50, 2.5, 0}, {61, -5, 29}, 22.8977},
      {{50, 2.5, 0}, {56, -27, -3}, 31.9030},
      {{50, 2.5, 0}, {58, 24, 15}, 19.4535},
      {{50, 2.5, 0}, {50, 3.1736, 0.5854}, 1.0000},
      {{50, 2.5, 0}, {50, 3.2972, 0}, 1.0000},
      {{50, 2.5, 0}, {50, 1.8634, 0.5757}, 1.0000},
      {{50, 2.5, 0}, {50, 3.2592, 0.335}, 1.0000},
      {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
      {{63.0109, -31.0961, -5.8663}, {62.8187, -29.7946, -4.0864}, 1.2630},
      {{61.2901, 3.7196, -5.3901}, {61.4292, 2.248, -4.962}, 1.8731},
      {{35.0831, -44.1164, 3.7933}, {35.0232, -40.0716, 1.5901}, 1.8645},
      {{22.7233, 20.0904, -46.694}, {23.0331, 14.973, -42.5619}, 2.0373},
      {{36.4612, 47.858, 18.3852}, {36.2715, 50.5065, 21.2231}, 1.4146},
      {{90.8027, -2.0831, 1.441}, {91.1528, -1.6435, 0.0447}, 1.4441},
      {{90.9257, -0.5406, -0.9208}, {88.6381, -0.8985, -0.7239}, 1.5381},
      {{6.7747, -0.2908, -2.4247}, {5.8714, -0.0985, -2.2286}, 0.6377},
      {{2.0776, 0.0795, -1.135}, {0.9033, -0.0636, -0.5514}, 0.9082},
  };
  for (const Pair &pair : pairs) {
    CAPTURE(pair.one.L, pair.one.a, pair.one.b, pair.other.L, pair.other.a, pair.other.b);
    CHECK(std::abs(ciede2000(pair.one, pair.other) - pair.difference) <= 0.00005);
    CHECK(std::abs(ciede2000(pair.other, pair.one) - pair.difference) <= 0.00005);
  }
}

TEST_CASE("at the middle of a cell the ink is what transicc gives") {
  if (missing({program, press_file, profiles + "compatibleWithAdobeRGB1998.icc"})) return;
  Colours colours = random_colours(200, 1);
  for (Colour &colour : colours)
    for (double &channel : colour) channel = std::floor(channel / 4) * 4 + 1.5;
  for (const std::string &source : {std::string(), profiles + "compatibleWithAdobeRGB1998.icc"}) {
    const PressTable ours = table(source, ProfileSpace::rgb, 5);
    const std::vector<double> theirs = inks_of(colours, source.empty() ? "*sRGB" : source);
    for (std::size_t i = 0; i < colours.size(); ++i) {
      CAPTURE(source, colours[i]);
      CHECK(std::abs(at(ours, colours[i]).ink_tenths / 10.0 - theirs[i]) < 0.2);
    }
  }
}

TEST_CASE("the cells are as fine as press_table.h says") {
  if (missing({program, press_file})) return;
  constexpr double limit = 5;
  const Colours colours = random_colours(20'000, 2);
  const PressTable ours = table("", ProfileSpace::rgb, limit);
  const std::vector<double> inks = inks_of(colours, "*sRGB"), miss = misses(colours);
  double mean = 0, worst = 0;
  int wrong = 0, border = 0, wrong_at_border = 0, out = 0;
  for (std::size_t i = 0; i < colours.size(); ++i) {
    const Printed printed = at(ours, colours[i]);
    const double error = std::abs(printed.ink_tenths / 10.0 - inks[i]);
    mean += error / static_cast<double>(colours.size());
    worst = std::max(worst, error);
    const bool differs = printed.out_of_gamut != (miss[i] > limit), near = std::abs(miss[i] - limit) < 1;
    wrong += differs, border += near, wrong_at_border += differs && near, out += miss[i] > limit;
  }
  CAPTURE(mean, worst, wrong, border, wrong_at_border, out);
  CHECK(out > 4000); // the flags were put to the test
  CHECK(out < 16'000);
  CHECK(mean < 1);
  CHECK(worst < 8);
  CHECK(wrong < 200); // 1 %
  CHECK(wrong == wrong_at_border);
}

TEST_CASE("every gray level takes the ink that transicc gives it") {
  if (missing({program, press_file, profiles + "Gray.icc", profiles + "Gray-CIE_L.icc"})) return;
  Colours grays, equal;
  for (int level = 0; level < 256; ++level) {
    const double gray = level;
    grays.push_back({gray});
    equal.push_back({gray, gray, gray});
  }
  for (const std::string &source : {std::string(), profiles + "Gray.icc", profiles + "Gray-CIE_L.icc"}) {
    const PressTable ours = table(source, ProfileSpace::gray, 5);
    const std::vector<double> theirs = source.empty() ? inks_of(equal, "*sRGB") : inks_of(grays, source);
    for (std::size_t level = 0; level < 256; ++level) {
      CAPTURE(source, level);
      CHECK(std::abs(ours.at(static_cast<std::uint8_t>(level)).ink_tenths / 10.0 - theirs[level]) < 0.2);
    }
  }
}

TEST_CASE("grays, skin and foliage can be printed; a screen's pure green and blue cannot") {
  if (missing({press_file})) return;
  const PressTable ours = table("", ProfileSpace::rgb, 5);
  // Skin, sky and foliage: common sRGB values of the patches "dark skin", "light skin", "blue sky" and
  // "foliage" of the chart of McCamy, Marcus and Davidson (1976).
  for (const Colour &inside : Colours{{0, 0, 0},
                                      {30, 30, 30},
                                      {128, 128, 128},
                                      {250, 250, 250},
                                      {115, 82, 68},
                                      {194, 150, 130},
                                      {98, 122, 157},
                                      {87, 108, 67}}) {
    CAPTURE(inside);
    CHECK_FALSE(at(ours, inside).out_of_gamut);
  }
  for (const Colour &outside : Colours{{0, 255, 0}, {0, 0, 255}, {0, 255, 255}, {255, 0, 255}}) {
    CAPTURE(outside);
    CHECK(at(ours, outside).out_of_gamut);
  }
}

TEST_CASE("profiles that nobody here made tell what exiftool reads of them") {
  std::map<std::string, ProfileSpace> spaces = {{"RGB", ProfileSpace::rgb},
                                                {"GRAY", ProfileSpace::gray},
                                                {"CMYK", ProfileSpace::cmyk},
                                                {"Lab", ProfileSpace::lab}};
  if (missing({profiles + "sRGB.icc", press_file})) return;
  const test::Printed printed =
      test::print_of("exiftool -q -p '$Directory/$FileName|$ProfileDescription|$ColorSpaceData' " + profiles +
                     "*.icc " + profiles + "ghostscript/*.icc 2>/dev/null");
  const auto trimmed = [](std::string text) { return text.erase(text.find_last_not_of(' ') + 1); };
  std::istringstream lines(printed.out);
  int compared = 0;
  std::string file, name, space;
  while (std::getline(lines, file, '|') && std::getline(lines, name, '|') && std::getline(lines, space)) {
    CAPTURE(file);
    const ProfileFacts facts = read_profile(bytes_of(file));
    CHECK(facts.description == trimmed(name));
    REQUIRE(spaces.count(trimmed(space)) == 1);
    CHECK(facts.space == spaces[trimmed(space)]);
    CHECK_FALSE(facts.broken);
    ++compared;
  }
  CHECK(compared > 15);
}

TEST_CASE("of the profiles that nobody here made, those of wide spaces are called wide") {
  if (missing({profiles + "sRGB.icc", press_file})) return;
  for (const char *wide : {"compatibleWithAdobeRGB1998.icc", "LStar-RGB.icc", "ghostscript/a98.icc",
                           "ghostscript/rommrgb.icc"}) {
    CAPTURE(wide);
    CHECK(read_profile(bytes_of(profiles + wide)).wide_gamut);
  }
  for (const char *narrow : {"sRGB.icc", "CineonLog_M.icc", "ghostscript/srgb.icc", "ghostscript/esrgb.icc",
                             "ghostscript/scrgb.icc", "ghostscript/default_cmyk.icc"}) {
    CAPTURE(narrow);
    CHECK_FALSE(read_profile(bytes_of(profiles + narrow)).wide_gamut);
  }
}
