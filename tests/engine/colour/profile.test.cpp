// What is read of a profile: its name, what it is for, whether it serves, whether it is wide.
#include "engine/colour/profile.h"
#include "engine/colour/srgb_profile.h"

#include "tests/engine/colour/make_profiles.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <chrono>
#include <thread>

using namespace stoneproof;

namespace {

std::string name_of(const std::vector<made::Named> &names, double version = 4.3) {
  return read_profile(made::named_profile(names, version)).description;
}

void put_32(made::Bytes &bytes, std::size_t at, std::uint32_t value) {
  for (std::size_t i = 0; i < 4; ++i) bytes.at(at + i) = static_cast<std::uint8_t>(value >> (24 - 8 * i));
}

/// Gives every entry of the tag table (ICC.1:2022, 7.3) that has this name another one.
made::Bytes renamed(made::Bytes bytes, const std::string &tag, const std::string &to) {
  const auto begin = bytes.begin() + 128, end = begin + 4 + 12 * bytes.at(131);
  const auto found = std::search(begin, end, tag.begin(), tag.end());
  REQUIRE(found != end);
  std::copy(to.begin(), to.end(), found);
  return bytes;
}

/// Where the contents of a tag begin.
std::size_t place_of(const made::Bytes &bytes, const std::string &tag) {
  const auto found = std::search(bytes.begin() + 128, bytes.end(), tag.begin(), tag.end());
  REQUIRE(found != bytes.end());
  return static_cast<std::size_t>(found[4] << 24 | found[5] << 16 | found[6] << 8 | found[7]);
}

} // namespace

TEST_CASE("a profile tells its space and what it is made for") {
  const ProfileFacts rgb = read_profile(made::rgb_profile(made::srgb));
  CHECK(rgb.space == ProfileSpace::rgb);
  CHECK(rgb.made_for == ProfileClass::display);
  CHECK_FALSE(rgb.broken);
  const ProfileFacts scanner = read_profile(made::rgb_table_profile(made::srgb));
  CHECK(scanner.space == ProfileSpace::rgb);
  CHECK(scanner.made_for == ProfileClass::input);
  CHECK_FALSE(scanner.broken);
  const ProfileFacts gray = read_profile(made::gray_profile(2.2));
  CHECK(gray.space == ProfileSpace::gray);
  CHECK_FALSE(gray.broken);
  CHECK_FALSE(gray.wide_gamut);
  const ProfileFacts press = read_profile(made::press_profile());
  CHECK(press.space == ProfileSpace::cmyk);
  CHECK(press.made_for == ProfileClass::output);
  CHECK_FALSE(press.broken);
  CHECK_FALSE(press.wide_gamut);

  made::Bytes other = made::rgb_profile(made::srgb);
  std::copy_n("spac", 4, other.begin() + 12);
  CHECK(read_profile(other).made_for == ProfileClass::colour_space);
  std::copy_n("link", 4, other.begin() + 12);
  CHECK(read_profile(other).made_for == ProfileClass::other);
  std::copy_n("Lab ", 4, other.begin() + 16);
  CHECK(read_profile(other).space == ProfileSpace::lab);
  std::copy_n("HSV ", 4, other.begin() + 16);
  CHECK(read_profile(other).space == ProfileSpace::other);
}

TEST_CASE("the name is given in English where it can be") {
  CHECK(name_of({{"de", L"Farben"}, {"en", L"Colours"}}) == "Colours");
  CHECK(name_of({{"de", L"Farben"}, {"pl", L"Kolory"}}) == "Farben");
  CHECK(name_of({{"en", L"Colours of the press"}}, 2.1) == "Colours of the press");
  CHECK(name_of({{"en", L""}}).empty());
}

TEST_CASE("the name is UTF-8 without control characters or spaces around, at most 100 characters") {
  CHECK(name_of({{"en", L"Żółw 紙"}}) == "Żółw 紙");
  CHECK(name_of({{"en", L"a\xD83D\xDE00z"}}) == "a\xF0\x9F\x98\x80z"); // two halves of U+1F600
  // Halves alone: some versions of lcms2 refuse the whole name.
  const std::string halves = name_of({{"en", L"a\xD83Dz\xDE00"}});
  CHECK((halves == "az" || halves.empty()));
  CHECK(name_of({{"en", L" \t two\n words\x7F\x85 \r"}}) == "two words");
  CHECK(name_of({{"en", std::wstring(99, L'a') + L"ŻŻŻ"}}) == std::string(99, 'a') + "Ż");
  CHECK(name_of({{"en", std::wstring(99, L'a') + L" b"}}) == std::string(99, 'a'));
  CHECK(name_of({{"en", std::wstring(5000, L'Ż')}}).size() == 200);
}

TEST_CASE("what is no profile is broken") {
  CHECK(read_profile({}).broken);
  CHECK(read_profile(made::Bytes(3, 0)).broken);
  CHECK(read_profile(made::Bytes(127, 1)).broken);
  CHECK(read_profile(made::Bytes(5000, 0xFF)).broken);
}

TEST_CASE("a profile that is cut anywhere is broken") {
  for (const made::Bytes &whole : {made::rgb_profile(made::srgb), made::press_profile()}) {
    REQUIRE_FALSE(read_profile(whole).broken);
    for (std::size_t parts = 0; parts < 50; ++parts) {
      CAPTURE(parts);
      CHECK(read_profile({whole.data(), whole.size() * parts / 50}).broken);
    }
    CHECK(read_profile({whole.data(), whole.size() - 1}).broken);
  }
}

TEST_CASE("a profile whose header claims more bytes than there are is broken; bytes after its end are not "
          "its own") {
  made::Bytes profile = made::rgb_profile(made::srgb);
  const auto size = static_cast<std::uint32_t>(profile.size());
  put_32(profile, 0, size + 1);
  CHECK(read_profile(profile).broken);
  put_32(profile, 0, size);
  profile.resize(size + 100);
  CHECK_FALSE(read_profile(profile).broken);
}

TEST_CASE("a profile that lacks what a conversion needs is broken, and still tells its space") {
  for (const char *tag : {"rXYZ", "bXYZ", "gTRC"}) {
    CAPTURE(tag);
    const ProfileFacts facts = read_profile(renamed(made::rgb_profile(made::srgb), tag, "none"));
    CHECK(facts.broken);
    CHECK(facts.space == ProfileSpace::rgb);
  }
  CHECK(read_profile(renamed(made::gray_profile(1.8), "kTRC", "none")).broken);
  const ProfileFacts press = read_profile(made::press_without_tables());
  CHECK(press.broken);
  CHECK(press.space == ProfileSpace::cmyk);
  CHECK(press.made_for == ProfileClass::output);
}

TEST_CASE("a table or curve that cannot be read makes the profile broken") {
  for (const char *tag : {"rTRC", "gXYZ"}) {
    CAPTURE(tag);
    made::Bytes profile = made::rgb_profile(made::srgb);
    std::copy_n("none", 4, profile.begin() + static_cast<std::ptrdiff_t>(place_of(profile, tag)));
    CHECK(read_profile(profile).broken);
  }
  made::Bytes press = made::press_profile();
  // The place of its colour table within the tag (ICC.1:2022, 10.12) is moved beyond the end.
  put_32(press, place_of(press, "A2B1") + 24, 0x0FFFFFFF);
  CHECK(read_profile(press).broken);
}

TEST_CASE("a space is wide by the size of its triangle of primaries") {
  struct Case {
    const char *name;
    made::RgbSpace space;
    bool wide;
  };
  for (const Case &c :
       {Case{"sRGB", made::srgb, false}, Case{"PAL", made::pal, false}, Case{"NTSC", made::ntsc, false},
        Case{"Adobe RGB", made::adobe_rgb, true}, Case{"Display P3", made::display_p3, true},
        Case{"ProPhoto RGB", made::prophoto, true}}) {
    CAPTURE(c.name);
    CHECK(read_profile(made::rgb_profile(c.space)).wide_gamut == c.wide);
    CHECK(read_profile(made::rgb_table_profile(c.space)).wide_gamut == c.wide);
  }
  // The order of the primaries does not count.
  made::RgbSpace swapped = made::srgb;
  std::swap(swapped.red, swapped.green);
  CHECK_FALSE(read_profile(made::rgb_profile(swapped)).wide_gamut);
  swapped = made::display_p3;
  std::swap(swapped.red, swapped.green);
  CHECK(read_profile(made::rgb_profile(swapped)).wide_gamut);
}

TEST_CASE("profiles are read by many threads at once") {
  const made::Bytes wide = made::rgb_table_profile(made::display_p3), press = made::press_profile();
  std::vector<int> wrong(8, 0);
  std::vector<std::thread> threads;
  for (int &count : wrong)
    threads.emplace_back([&] {
      for (int i = 0; i < 20; ++i)
        count += !read_profile(wide).wide_gamut + (read_profile(press).space != ProfileSpace::cmyk);
    });
  for (std::thread &thread : threads) thread.join();
  CHECK(wrong == std::vector<int>(8, 0));
}

TEST_CASE("the profile of sRGB is one of the kind that PDF takes, the same at any time") {
  const std::vector<std::uint8_t> icc = srgb_profile();
  const ProfileFacts facts = read_profile(icc);
  CHECK_FALSE(facts.broken);
  CHECK_FALSE(facts.wide_gamut);
  CHECK(facts.space == ProfileSpace::rgb);
  CHECK(facts.made_for == ProfileClass::display);
  CHECK(icc.size() < 1000);
  CHECK(int{icc[8]} * 256 + icc[9] == 0x0420);
  std::this_thread::sleep_for(std::chrono::milliseconds(1100)); // profiles carry the second they were made in
  CHECK(srgb_profile() == icc);
}
