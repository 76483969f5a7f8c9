// Scanner settings worked by hand, and what must hold of any. Tests engine/plan/scan_plan.h.
#include "engine/plan/scan_plan.h"
#include "engine/press/read.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

constexpr Size small_slide{36_mm, 24_mm};

/// A book of one page and one picture, planned; frames are added.
struct OnePicture {
  OnePicture(OriginalKind kind, Size size, Use use = Use::photo) {
    picture.original = Original{kind, size, false};
    picture.use = use;
    press = built_in_press_sheet();
  }
  OnePicture &shown(Length width, Length height, Fit fit = Fill{}) {
    Frame frame;
    frame.rect = {10_mm, 10_mm, width, height};
    frame.fit = fit;
    frame.picture = 0;
    frames.push_back(frame);
    return *this;
  }
  PlannedPicture plan() const {
    Book book;
    book.pictures = {picture};
    Page page;
    page.frames = frames;
    book.pages = {page};
    const std::optional<FileAtHand> files[] = {file};
    return plan_scans(book, press, files).at(0);
  }

  Picture picture;
  std::vector<Frame> frames;
  std::optional<FileAtHand> file;
  PressSheet press;
};

double needed_of(const PlannedPicture &planned) {
  REQUIRE(planned.hardest);
  return planned.frames[*planned.hardest].needed_ppi.value();
}

} // namespace

static_assert(film_size({36_mm, 24_mm}) == FilmSize::small && film_size({24_mm, 36_mm}) == FilmSize::small);
static_assert(film_size({17_mm, 13_mm}) == FilmSize::small, "110 film");
static_assert(film_size({28_mm, 28_mm}) == FilmSize::roll, "126 film does not fit a 24 mm wide gate");
static_assert(film_size({56_mm, 118_mm}) == FilmSize::roll && film_size({118_mm, 56_mm}) == FilmSize::roll);
static_assert(film_size({84_mm, 113_mm}) == FilmSize::sheet);
static_assert(fits_glass({210_mm, 297_mm}) && fits_glass({297_mm, 210_mm}) && fits_glass({9_cm, 13_cm}));
static_assert(!fits_glass({300_mm, 220_mm}) && !fits_glass({220_mm, 220_mm}));

// Needed = wanted x printed / original; the next usual setting; pixels = inches x setting; bytes = x 3.
TEST_CASE("settings, pixels and bytes worked by hand") {
  struct Case {
    const char *what;
    OriginalKind kind;
    Size original;
    Use use;
    Size frame;
    double needed;
    int setting;
    PixelSize pixels;
    std::uint64_t bytes;
  };
  for (const Case &c : std::vector<Case>{
           {"a print of 6 x 4 in as large as it is",
            OriginalKind::print,
            {6_in, 4_in},
            Use::photo,
            {6_in, 4_in},
            300,
            300,
            {1800, 1200},
            6'480'000},
           {"twice as large",
            OriginalKind::print,
            {6_in, 4_in},
            Use::photo,
            {12_in, 8_in},
            600,
            600,
            {3600, 2400},
            25'920'000},
           {"four times",
            OriginalKind::print,
            {6_in, 4_in},
            Use::photo,
            {24_in, 16_in},
            1200,
            1200,
            {7200, 4800},
            103'680'000},
           {"half as large",
            OriginalKind::print,
            {6_in, 4_in},
            Use::photo,
            {3_in, 2_in},
            150,
            150,
            {900, 600},
            1'620'000},
           {"A4, to the nearest pixel",
            OriginalKind::document,
            {210_mm, 297_mm},
            Use::photo,
            {210_mm, 297_mm},
            300,
            300,
            {2480, 3508},
            26'099'520},
           {"a letter is wanted at 400",
            OriginalKind::document,
            {5_in, 7_in},
            Use::document,
            {5_in, 7_in},
            400,
            400,
            {2000, 2800},
            16'800'000},
           {"line art at 1200, one channel",
            OriginalKind::document,
            {4_in, 3_in},
            Use::line_art,
            {4_in, 3_in},
            1200,
            1200,
            {4800, 3600},
            17'280'000},
           {"a slide of 36 mm to 6 in",
            OriginalKind::slide,
            small_slide,
            Use::photo,
            {6_in, 4_in},
            1270,
            1600,
            {2268, 1512},
            10'287'648},
           {"a print cropped to fill a square: the shorter side decides",
            OriginalKind::print,
            {6_in, 4_in},
            Use::photo,
            {8_in, 8_in},
            600,
            600,
            {3600, 2400},
            25'920'000},
       }) {
    CAPTURE(c.what);
    const PlannedPicture planned =
        OnePicture(c.kind, c.original, c.use).shown(c.frame.width, c.frame.height).plan();
    CHECK(planned.state == ScanState::to_scan);
    CHECK(needed_of(planned) == Approx(c.needed).epsilon(1e-7));
    REQUIRE(planned.scan);
    CHECK(planned.scan->setting == c.setting);
    CHECK(planned.scan->pixels == c.pixels);
    CHECK(planned.scan->bytes == c.bytes);
    CHECK_FALSE(planned.frames.at(0).largest);
  }
}

TEST_CASE("twice the frame asks for twice the density, whatever the fit") {
  for (const Fit &fit : {Fit{Fill{}}, Fit{Inside{}}, Fit{CropShare{0.1, 0.2, 0.5, 0.4}}})
    for (const int mm : {20, 37, 61, 90}) {
      const auto needed = [&](int factor) {
        return needed_of(OnePicture(OriginalKind::print, {9_cm, 13_cm})
                             .shown(Length::of_mm(mm) * factor, Length::of_mm(70) * factor, fit)
                             .plan());
      };
      CHECK(needed(2) == Approx(needed(1) * 2).epsilon(1e-6));
      CHECK(needed(3) == Approx(needed(1) * 3).epsilon(1e-6));
    }
}

TEST_CASE("a tighter crop asks for more, and the whole original still comes out") {
  const auto cropped = [](double share) {
    return OnePicture(OriginalKind::print, {6_in, 4_in})
        .shown(6_in, 4_in, CropShare{0.1, 0.1, share, share})
        .plan();
  };
  CHECK(needed_of(cropped(0.5)) == Approx(600).epsilon(1e-9));
  CHECK(cropped(0.5).scan->pixels == PixelSize{3600, 2400});
  CHECK(cropped(0.5).frames.at(0).printed == Size{6_in, 4_in});
  CHECK(needed_of(cropped(0.25)) == Approx(1200).epsilon(1e-9));
}

TEST_CASE("of several frames the one that needs most decides, in whatever order") {
  const auto shown = [](std::vector<Length> widths) {
    OnePicture one(OriginalKind::print, {6_in, 4_in});
    for (const Length width : widths) one.shown(width, width * 2 / 3);
    return one.plan();
  };
  for (const auto &widths : {std::vector{3_in, 12_in, 6_in}, {12_in, 3_in, 6_in}, {6_in, 3_in, 12_in}}) {
    const PlannedPicture planned = shown(widths);
    CHECK(planned.scan->setting == 600);
    REQUIRE(planned.hardest);
    CHECK(widths.at(*planned.hardest) == 12_in);
    CHECK(planned.frames.size() == 3);
  }
}

TEST_CASE("the unit of an original does not matter") {
  const auto needed = [](Length width, Length height) {
    return needed_of(OnePicture(OriginalKind::print, {width, height}).shown(100_mm, 100_mm).plan());
  };
  CHECK(needed(50.8_mm, 25.4_mm) == needed(2_in, 1_in));
  CHECK(needed(144_pt, 72_pt) == needed(2_in, 1_in));
  CHECK(needed(Length::of_mm(25.4), Length::of_mm(50.8)) == needed(1_in, 2_in));
}

TEST_CASE("the tolerance of the press sheet is taken off as for a rescan") {
  // 6.05 in of a 6 in print: 302.5 ppi, within 1 % of 300.
  OnePicture one(OriginalKind::print, {6_in, 4_in});
  one.shown(6.05_in, 4_in);
  CHECK(one.plan().scan->setting == 300);
  one.press.density_tolerance = 0;
  CHECK(one.plan().scan->setting == 400);
}

TEST_CASE("beyond every usual scanner: the highest setting, and what it is enough for") {
  // 36 mm on 36 in: 25.4 times, 7620 ppi; at 4800 the print shrinks to 4800 / 7620.
  const PlannedPicture planned = OnePicture(OriginalKind::negative, small_slide).shown(36_in, 24_in).plan();
  CHECK(planned.state == ScanState::beyond);
  CHECK(planned.scan->setting == 4800);
  CHECK(planned.limit_ppi == 4800);
  REQUIRE(planned.frames.at(0).largest);
  CHECK(planned.frames[0].largest->width.in() == Approx(36.0 * 4800 / 7620).epsilon(1e-9));
  CHECK(planned.frames[0].largest->height.in() == Approx(24.0 * 4800 / 7620).epsilon(1e-9));
  // Printed as large as that, the same setting is enough.
  const Size largest = *planned.frames[0].largest;
  const PlannedPicture smaller =
      OnePicture(OriginalKind::negative, small_slide).shown(largest.width, largest.height).plan();
  CHECK(smaller.state == ScanState::to_scan);
  CHECK(smaller.scan->setting == 4800);
}

TEST_CASE("beyond a flatbed: prints are told what a flatbed is enough for, film is not") {
  // 1 in on 10 in: 3000 ppi; a flatbed's 2400 is enough for 8 in.
  const PlannedPicture print = OnePicture(OriginalKind::print, {1_in, 1_in}).shown(10_in, 10_in).plan();
  CHECK(print.state == ScanState::to_scan);
  CHECK(print.scan->setting == 3200);
  CHECK(print.beyond_flatbed);
  CHECK(print.limit_ppi == 2400);
  REQUIRE(print.frames.at(0).largest);
  CHECK(print.frames[0].largest->width.in() == Approx(8).epsilon(1e-9));

  const PlannedPicture film = OnePicture(OriginalKind::slide, {1_in, 1_in}).shown(10_in, 10_in).plan();
  CHECK(film.beyond_flatbed);
  CHECK(film.scan->setting == 3200);
  CHECK_FALSE(film.frames.at(0).largest);

  OnePicture odd(OriginalKind::print, {1_in, 1_in});
  odd.shown(10_in, 10_in).press.flatbed_limit = Density::of_ppi(1000);
  CHECK(odd.plan().limit_ppi == 800); // the next usual setting below
}

TEST_CASE("an object is photographed; one that lies flat on the glass may be scanned") {
  // 1400 mm on 140 mm: a tenth, 30 ppi; 55.118 in x 30 = 1653.5 px, up.
  const PlannedPicture quilt =
      OnePicture(OriginalKind::object, {1400_mm, 1400_mm}).shown(140_mm, 140_mm).plan();
  CHECK(quilt.way == ScanWay::camera);
  CHECK_FALSE(quilt.scan->setting);
  CHECK(quilt.scan->pixels == PixelSize{1654, 1654});
  const PlannedPicture stamp = OnePicture(OriginalKind::object, {1_in, 2_in}).shown(3_in, 6_in).plan();
  CHECK(stamp.scan->setting == 1200); // 900
  CHECK(stamp.scan->pixels == PixelSize{900, 1800});
  CHECK_FALSE(OnePicture(OriginalKind::object, {1_in, 1_in}).shown(20_in, 20_in).plan().scan->setting);
}

TEST_CASE("what cannot be planned says why") {
  OnePicture one(OriginalKind::print, {6_in, 4_in});
  CHECK(one.plan().state == ScanState::not_shown);
  one.shown(6_in, 4_in, PictureAt{{500_mm, 500_mm, 1_in, 1_in}}); // beside its frame
  CHECK(one.plan().state == ScanState::not_shown);
  one.shown(6_in, 4_in, CropPixels{{0, 0, 300, 200}});
  CHECK(one.plan().state == ScanState::no_crop);
  one.shown(6_in, 4_in);
  CHECK(one.plan().state == ScanState::to_scan); // by the frame that can be reckoned
  CHECK_FALSE(one.plan().frames.at(0).needed_ppi);
  one.picture.original->size.reset();
  CHECK(one.plan().state == ScanState::no_size);
  CHECK(one.plan().frames.at(1).printed == Size{6_in, 4_in});
  one.picture.original.reset();
  CHECK(one.plan().state == ScanState::no_size);
  one.picture.original = Original{OriginalKind::print, {}, true};
  CHECK(one.plan().state == ScanState::lost);
  CHECK_FALSE(one.plan().scan);
}

TEST_CASE("a file that is there is used for its shape, and is enough or not") {
  OnePicture one(OriginalKind::print, {4_in, 6_in}); // told lying the other way than its file shows
  one.shown(6_in, 4_in);
  one.file = FileAtHand{{900, 600}};
  CHECK(one.plan().state == ScanState::to_scan);
  CHECK(one.plan().scan->setting == 300);
  CHECK(one.plan().scan->pixels == PixelSize{1800, 1200});
  one.file = FileAtHand{{1800, 1200}};
  CHECK(one.plan().state == ScanState::at_hand);
  CHECK_FALSE(one.plan().scan);
  one.file = FileAtHand{{1785, 1190}}; // 297.5 ppi, within 1 %
  CHECK(one.plan().state == ScanState::at_hand);
  one.file = FileAtHand{{1800, 1200}, true}; // no tones: judged as line art, 1200 wanted
  CHECK(one.plan().state == ScanState::to_scan);
  one.file = FileAtHand{{1800, 1200}};
  one.shown(7_in, 4.6667_in);
  CHECK(one.plan().state == ScanState::to_scan); // enough for one frame only

  // A crop in pixels of the file: half of it on 6 in.
  OnePicture cropped(OriginalKind::print, {6_in, 4_in});
  cropped.shown(6_in, 4_in, CropPixels{{0, 0, 450, 300}});
  cropped.file = FileAtHand{{900, 600}};
  CHECK(needed_of(cropped.plan()) == Approx(600).epsilon(1e-9));
}

TEST_CASE("a lost original is told what its file is enough for") {
  OnePicture one(OriginalKind::print, {6_in, 4_in});
  one.shown(6_in, 4_in).picture.original->lost = true;
  CHECK(one.plan().state == ScanState::lost);
  CHECK_FALSE(one.plan().frames.at(0).largest);
  one.file = FileAtHand{{900, 600}};
  CHECK(one.plan().state == ScanState::lost);
  CHECK(one.plan().frames.at(0).largest == Size{3_in, 2_in});
  one.file = FileAtHand{{1800, 1200}};
  CHECK(one.plan().state == ScanState::at_hand);
}

TEST_CASE("a scan made as planned is enough for every frame, and the next setting below is not") {
  for (const int mm : {31, 64, 90, 127, 203, 280})
    for (const double share : {1.0, 0.7, 0.31}) {
      OnePicture one(OriginalKind::print, {127_mm, 89_mm});
      one.shown(Length::of_mm(mm), Length::of_mm(mm) * 0.7, CropShare{0, 0, share, share});
      one.shown(40_mm, 60_mm);
      const PlannedPicture planned = one.plan();
      if (planned.state != ScanState::to_scan) continue;
      CAPTURE(mm, share);
      one.file = FileAtHand{planned.scan->pixels};
      CHECK(one.plan().state == ScanState::at_hand);
      const int *step = std::find(std::begin(scanner_steps), std::end(scanner_steps), *planned.scan->setting);
      if (step == std::begin(scanner_steps)) continue;
      const double lower = static_cast<double>(step[-1]) / *planned.scan->setting;
      one.file =
          FileAtHand{{static_cast<std::int64_t>(static_cast<double>(planned.scan->pixels.width) * lower),
                      static_cast<std::int64_t>(static_cast<double>(planned.scan->pixels.height) * lower)}};
      CHECK(one.plan().state == ScanState::to_scan);
    }
}
