// What is measured in the pixels and comes to the frames; the looks that ask for it; tables shared by all.
#include "engine/run/run.h"

#include "engine/run/look_order.h"
#include "engine/run/press_tables.h"
#include "tests/engine/colour/make_profiles.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"
#include "tests/support/small_book.h"

#include <thread>

#include <tiff.h>

using namespace stoneproof;
using namespace stoneproof::test;

namespace pictures = ::made;
namespace profiles = stoneproof::made;

namespace {

/// A picture of 300 x 200: the left half as dark as ink can be, the right half paper; of RGB or of ink.
pictures::Raster halves(int channels) {
  pictures::Raster r{300, 200, channels, 8, {}};
  for (int y = 0; y < 200; ++y)
    for (int x = 0; x < 300; ++x)
      for (int c = 0; c < channels; ++c) {
        const bool dark = x < 150;
        r.samples.push_back(dark == (channels == 4) ? 255 : 0);
      }
  return r;
}

/// A book in a folder of its own with one picture, in two frames that show its left and its right half.
class TwoHalves {
public:
  explicit TwoHalves(int channels) : book_(small_book()) {
    book_.source = folder_ / "book.xml";
    book_.pictures = {photo("p", "p.tif")};
    for (const double left : {0.0, 0.5}) {
      Frame half = frame(left > 0 ? "right" : "left", 0, 20, left > 0 ? 120 : 20, 75, 100);
      half.fit = CropShare{left, 0, 0.5, 1};
      book_.pages[0].frames.push_back(half);
    }
    pictures::write_tiff(folder_ / "p.tif", halves(channels),
                         {.photometric = channels == 4 ? PHOTOMETRIC_SEPARATED : PHOTOMETRIC_RGB});
  }
  Book &book() { return book_; }
  Checked check(const RunOptions &options = {}, std::shared_ptr<const PressProfile> profile = nullptr) const {
    PressSheet sheet = built_in_press_sheet();
    sheet.profile = std::move(profile);
    return check_book(book_, sheet, options);
  }

private:
  test::Folder folder_;
  Book book_;
};

std::shared_ptr<const PressProfile> a_press() {
  auto press = std::make_shared<PressProfile>();
  press->icc = profiles::press_profile();
  press->facts = read_profile(press->icc);
  press->difference = 5;
  return press;
}

/// Whether two tables say the same of every 37th colour.
bool same_table(const PressTable &a, const PressTable &b) {
  for (unsigned i = 0; i < 1u << 24u; i += 37) {
    const auto red = static_cast<std::uint8_t>(i >> 16u), green = static_cast<std::uint8_t>(i >> 8u),
               blue = static_cast<std::uint8_t>(i);
    const stoneproof::Printed one = a.at(red, green, blue), other = b.at(red, green, blue);
    if (one.ink_tenths != other.ink_tenths || one.out_of_gamut != other.out_of_gamut) return false;
  }
  return true;
}

} // namespace

TEST_CASE("each of two frames gets what was measured of its own part of the picture") {
  const Checked checked = TwoHalves(4).check();
  const auto &shown = checked.evidence.shown;
  REQUIRE(shown.size() == 2);
  REQUIRE((shown[0] && shown[1]));
  CHECK(shown[0]->tone.black == 1);
  CHECK(shown[0]->tone.white == 0);
  CHECK(shown[1]->tone.black == 0);
  CHECK(shown[1]->tone.white == 1);
  REQUIRE((shown[0]->ink && shown[1]->ink));
  CHECK(shown[0]->ink->most == Approx(4));
  CHECK(shown[1]->ink->most == Approx(0).margin(1e-12));
  // The squares lie in the frames that they were found in.
  for (std::size_t i = 0; i < 2; ++i) {
    REQUIRE(shown[i]->ink_place);
    const Rect &box = checked.evidence.frames[i].box;
    CHECK(shared_part(*shown[i]->ink_place, box.grown(Length::of_mm(0.001))) == shown[i]->ink_place);
    // 75 x 100 mm show 150 x 200 pixels; the square has whole cells of an eighth of its side.
    const Length side = checked.evidence.press.ink.square;
    CHECK(shown[i]->ink_place->width.mm() <= side.mm() + 0.5);
    CHECK(shown[i]->ink_place->width.mm() >= side.mm() - 0.5);
  }
  CHECK(checked.evidence.pictures[0].neutral == false);
}

TEST_CASE("colours get ink only where the press sheet names a profile") {
  const TwoHalves book(3);
  CHECK_FALSE(book.check().evidence.shown[0]->ink);
  const Checked checked = book.check({}, a_press());
  const auto &shown = checked.evidence.shown;
  REQUIRE((shown[0] && shown[0]->ink && shown[1] && shown[1]->ink));
  CHECK(shown[0]->ink->most > 2.9); // the made press prints without black: three inks at most
  CHECK(shown[0]->ink->most <= 3);
  CHECK(shown[1]->ink->most < 0.1);
  CHECK(shown[0]->ink->out_of_gamut == 0.0);
  CHECK(checked.evidence.pictures[0].neutral == true);
}

TEST_CASE("without measuring the frames stay empty, and nobody looked whether colour is gray") {
  RunOptions quick;
  quick.measure_pixels = false;
  quick.copy_density = Density::of_ppi(72);
  const Checked checked = TwoHalves(3).check(quick, a_press());
  REQUIRE(checked.evidence.shown.size() == 2);
  CHECK_FALSE(checked.evidence.shown[0]);
  CHECK_FALSE(checked.evidence.shown[1]);
  CHECK_FALSE(checked.evidence.pictures[0].neutral);
  CHECK_FALSE(checked.evidence.pixels_measured);
  CHECK(checked.copies[0]);
}

TEST_CASE("a frame that shows nothing of its picture is not measured") {
  TwoHalves book(4);
  book.book().pages[0].frames[0].fit =
      PictureAt{{Length::of_mm(150), Length::of_mm(20), Length::of_mm(30), Length::of_mm(20)}};
  const Checked checked = book.check();
  CHECK_FALSE(checked.evidence.shown[0]);
  REQUIRE(checked.evidence.shown[1]);
  CHECK(checked.evidence.shown[1]->tone.white == 1);
}

TEST_CASE("frames that show the same part at the same size share one look") {
  Book book = small_book();
  book.pictures = {photo("a", "a"), photo("b", "b")};
  auto &frames = book.pages[0].frames;
  frames = {frame("1", 0, 20, 20, 60, 40),  frame("2", 1, 20, 70, 60, 40),
            frame("3", 0, 90, 70, 60, 40),  frame("4", 0, 90, 20, 60, 40),
            frame("5", 0, 20, 120, 90, 60), frame("6", std::nullopt, 0, 0, 9, 9)};
  frames[3].fit = CropShare{0, 0, 0.5, 0.5};
  frames[2].mirror = Mirror::horizontal;
  const Checked checked_book = checked(book, {1200, 800});
  const auto looks = picture_looks(checked_book.evidence);
  using Frames = std::vector<std::vector<std::size_t>>;
  REQUIRE(looks.size() == 2);
  CHECK(looks[0].frames == Frames{{0, 2}, {3}, {4}});
  CHECK(looks[1].frames == Frames{{1}});
  CHECK(looks[0].looks.size() == 3);
  CHECK(looks[0].looks[0].part == PixelRect{0, 0, 1200, 800});
  CHECK(looks[0].looks[1].part == PixelRect{0, 0, 600, 400});
  // 1,200 pixels on 60 mm; a square of so many mm.
  const double side = checked_book.evidence.press.ink.square.mm();
  CHECK(*looks[0].looks[0].square_width == Approx(20 * side));
  CHECK(*looks[0].looks[0].square_height == Approx(20 * side));
  CHECK(*looks[0].looks[1].square_width == Approx(10 * side));
}

TEST_CASE("threads that ask for the same profile get the same table, made once") {
  PressTables tables(a_press());
  const std::vector<std::vector<std::uint8_t>> icc = {
      {}, profiles::rgb_profile(profiles::prophoto), profiles::rgb_profile(profiles::srgb)};
  constexpr std::size_t count = 6;
  std::array<std::array<const PressTable *, 4>, count> got{};
  std::vector<std::thread> threads;
  for (std::size_t i = 0; i < count; ++i)
    threads.emplace_back([&, i] {
      for (std::size_t n = 0; n < 4; ++n) { // each in another order
        const std::size_t which = (n + i) % 4;
        got[i][which] =
            which < 3 ? tables.table(icc[which], ProfileSpace::rgb) : tables.table({}, ProfileSpace::gray);
      }
    });
  for (std::thread &thread : threads) thread.join();
  for (std::size_t i = 1; i < count; ++i) CHECK(got[i] == got[0]);
  for (std::size_t a = 0; a < 4; ++a) {
    REQUIRE(got[0][a]);
    for (std::size_t b = 0; b < a; ++b) CHECK(got[0][a] != got[0][b]);
  }
  CHECK(got[0][3]->space() == ProfileSpace::gray);
  CHECK_FALSE(same_table(*got[0][0], *got[0][1])); // other colours, other inks
}

TEST_CASE("a profile that cannot be used counts as sRGB") {
  PressTables tables(a_press());
  const PressTable *plain = tables.table({}, ProfileSpace::rgb);
  REQUIRE(plain);
  const std::vector<std::uint8_t> noise(300, 7);
  for (const auto &icc : {noise, profiles::gray_profile(2.2)}) {
    const PressTable *instead = tables.table(icc, ProfileSpace::rgb);
    REQUIRE(instead);
    CHECK(same_table(*instead, *plain));
  }
  const PressTable *gray = tables.table(noise, ProfileSpace::gray);
  REQUIRE(gray);
  CHECK(gray->space() == ProfileSpace::gray);
}

TEST_CASE("without a press profile, or for inks, there is no table") {
  PressTables none(nullptr);
  CHECK_FALSE(none.table({}, ProfileSpace::rgb));
  PressTables tables(a_press());
  CHECK_FALSE(tables.table({}, ProfileSpace::cmyk));
  CHECK_FALSE(tables.table(profiles::press_profile(), ProfileSpace::cmyk));
  CHECK_FALSE(tables.table({}, ProfileSpace::other));
  auto broken = std::make_shared<PressProfile>();
  broken->icc = {1, 2, 3};
  CHECK_FALSE(PressTables(broken).table({}, ProfileSpace::rgb));
}
