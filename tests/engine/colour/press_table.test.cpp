// The press of make_profiles.h prints without black: ink and gamut can be told by hand.
#include "engine/colour/press_table.h"

#include "tests/engine/colour/make_profiles.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <cmath>
#include <random>

using namespace stoneproof;

namespace {

const made::Bytes &press() {
  static const made::Bytes profile = made::press_profile();
  return profile;
}

PressTable table(const made::Bytes &source, ProfileSpace space, double limit = 5) {
  auto made = PressTable::make(source, space, press(), limit);
  INFO((made ? "" : made.fault().what));
  REQUIRE(made);
  return std::move(made).value();
}

Fault fault_of(const made::Bytes &source, ProfileSpace space, const made::Bytes &of_press) {
  const auto made = PressTable::make(source, space, of_press, 5);
  REQUIRE_FALSE(made);
  CHECK_FALSE(made.fault().remedy.empty());
  return made.fault();
}

} // namespace

TEST_CASE("white takes no ink, black the most, and grays from one to the other") {
  const PressTable of = table({}, ProfileSpace::rgb);
  CHECK(of.space() == ProfileSpace::rgb);
  CHECK(of.at(255, 255, 255).ink_tenths < 50);
  CHECK(of.at(0, 0, 0).ink_tenths > 2950);
  CHECK(of.at(0, 0, 0).ink_tenths <= 3000);
  for (unsigned level = 4; level < 256; level += 4) {
    const auto now = static_cast<std::uint8_t>(level), before = static_cast<std::uint8_t>(level - 4);
    CHECK(of.at(now, now, now).ink_tenths < of.at(before, before, before).ink_tenths);
  }
}

TEST_CASE("grays and dull colours are in the gamut, pure colours of a screen are not") {
  const PressTable of = table({}, ProfileSpace::rgb);
  struct Case {
    std::uint8_t red, green, blue;
    bool out;
  };
  for (const Case &c : {Case{0, 0, 0, false},
                        {40, 40, 40, false},
                        {128, 128, 128, false},
                        {255, 255, 255, false},
                        {150, 130, 120, false},
                        {120, 130, 150, false},
                        {255, 0, 0, true},
                        {0, 255, 0, true},
                        {0, 0, 255, true},
                        {255, 255, 0, true}}) {
    CAPTURE(int{c.red}, int{c.green}, int{c.blue});
    CHECK(of.at(c.red, c.green, c.blue).out_of_gamut == c.out);
  }
  CHECK_FALSE(table({}, ProfileSpace::rgb, 1000).at(0, 255, 0).out_of_gamut);
}

TEST_CASE("the same numbers in a wider space are other colours") {
  const PressTable narrow = table(made::rgb_profile(made::srgb), ProfileSpace::rgb);
  const PressTable wide = table(made::rgb_profile(made::prophoto), ProfileSpace::rgb);
  CHECK_FALSE(narrow.at(198, 106, 106).out_of_gamut);
  CHECK(wide.at(198, 106, 106).out_of_gamut);
}

TEST_CASE("all colours of a cell are one") {
  const PressTable of = table({}, ProfileSpace::rgb);
  CHECK(of.at(100, 52, 200).ink_tenths == of.at(103, 55, 203).ink_tenths);
  CHECK(of.at(100, 52, 200).ink_tenths != of.at(104, 52, 200).ink_tenths);
  CHECK(of.at(100, 52, 200).ink_tenths != of.at(100, 56, 200).ink_tenths);
  CHECK(of.at(100, 52, 200).ink_tenths != of.at(100, 52, 204).ink_tenths);
}

TEST_CASE("gray is converted level by level, with the curve of sRGB where it has no profile") {
  const PressTable plain = table({}, ProfileSpace::gray);
  CHECK(plain.space() == ProfileSpace::gray);
  CHECK(plain.at(255).ink_tenths < 30); // white lies between the points of the press's table
  CHECK(plain.at(0).ink_tenths > 2970);
  CHECK(plain.at(0).ink_tenths <= 3000);
  const PressTable rgb = table({}, ProfileSpace::rgb),
                   light = table(made::gray_profile(1.4), ProfileSpace::gray);
  for (unsigned level = 2; level < 253; level += 4) {
    CAPTURE(level);
    const auto low = static_cast<std::uint8_t>(level - 1), high = static_cast<std::uint8_t>(level);
    // A cell of four levels has its middle between the second and the third.
    const double middle = (plain.at(low).ink_tenths + plain.at(high).ink_tenths) / 2.0;
    CHECK(std::abs(rgb.at(high, high, high).ink_tenths - middle) <= 3);
    CHECK(light.at(high).ink_tenths < plain.at(high).ink_tenths);
    CHECK_FALSE(plain.at(high).out_of_gamut);
  }
}

TEST_CASE("a press profile that does not serve is refused") {
  const auto what = [](const made::Bytes &of_press) {
    const Fault fault = fault_of({}, ProfileSpace::rgb, of_press);
    CHECK(fault.where == "the press's colour profile");
    return fault.what;
  };
  CHECK(what({}) == "this is not a colour profile that can be read");
  CHECK(what(made::Bytes(500, 7)) == "this is not a colour profile that can be read");
  const char *other = "this profile is not one of a press that prints with cyan, magenta, yellow and black";
  CHECK(what(made::rgb_profile(made::srgb)) == other);
  made::Bytes display = press();
  std::copy_n("mntr", 4, display.begin() + 12);
  CHECK(what(display) == other);
  CHECK(what(made::press_without_tables()) == "the profile is damaged or incomplete");
  made::Bytes cut = press();
  cut.pop_back();
  CHECK(what(cut) == "the profile is damaged or incomplete");
  made::Bytes one_way = press();
  for (const std::string tag : {"B2A0", "B2A1"}) {
    const auto found = std::search(one_way.begin(), one_way.end(), tag.begin(), tag.end());
    REQUIRE(found != one_way.end());
    *found = 'X';
  }
  CHECK(what(one_way) == "the profile lacks the tables of a conversion to inks and back");
}

TEST_CASE("a picture's profile that does not serve is refused") {
  const auto what = [](const made::Bytes &source, ProfileSpace space) {
    const Fault fault = fault_of(source, space, press());
    CHECK(fault.where == "the picture's colour profile");
    return fault.what;
  };
  const made::Bytes rgb = made::rgb_profile(made::srgb);
  CHECK(what(made::gray_profile(2.2), ProfileSpace::rgb) ==
        "the picture is RGB, but its profile is for other colours");
  CHECK(what(rgb, ProfileSpace::gray) == "the picture is gray, but its profile is for other colours");
  CHECK(what({rgb.begin(), rgb.begin() + 300}, ProfileSpace::rgb) == "the profile is damaged or incomplete");
  CHECK(what(press(), ProfileSpace::cmyk) ==
        "the picture is in printing inks already; only RGB and gray pictures are converted");
  CHECK(what({}, ProfileSpace::lab) == "the picture is neither RGB nor gray");
}

TEST_CASE("a damaged profile gives a fault or a table, nothing else") {
  std::mt19937 random(5);
  int faults = 0, tables = 0;
  for (int i = 0; i < 400; ++i) {
    made::Bytes of_press = press(), of_picture = made::gray_profile(1.8);
    made::Bytes &damaged = i % 2 == 0 ? of_press : of_picture;
    // Headers and the tag table, where most harm is done, or anywhere.
    const std::size_t reach = i % 4 < 2 ? std::min<std::size_t>(damaged.size(), 400) : damaged.size();
    for (int n = 0; n < 3; ++n) damaged[random() % reach] = static_cast<std::uint8_t>(random());
    const auto made = PressTable::make(of_picture, ProfileSpace::gray, of_press, 5);
    made ? ++tables : ++faults;
    for (unsigned level = 0; made && level < 256; ++level)
      REQUIRE(made.value().at(static_cast<std::uint8_t>(level)).ink_tenths <= 4000);
  }
  CHECK(faults > 20);
  CHECK(tables > 20);
}
