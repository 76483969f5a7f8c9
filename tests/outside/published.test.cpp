// Published values, facts of the trade and worked examples, each with its source beside it. "Arithmetic"
// means reckoned by hand from the definition; "common practice" means known in the trade without a published
// source.
#include "engine/placement/placed.h"
#include "engine/placement/rescue.h"
#include "engine/press/read.h"
#include "tests/support/catch.h"

#include <cmath>

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

constexpr Density at_300 = Density::of_ppi(300);

const PressSheet &sheet() {
  static const PressSheet built_in = built_in_press_sheet();
  return built_in;
}

constexpr Size inches(double width, double height) { return {Length::of_in(width), Length::of_in(height)}; }
constexpr Size mm(double width, double height) { return {Length::of_mm(width), Length::of_mm(height)}; }
constexpr Rect frame(Size size) { return {{}, {}, size.width, size.height}; }
constexpr Fit whole = CropShare{0, 0, 1, 1};

double needed(Size original, OriginalKind kind, PixelSize picture, Size printed, const Fit &fit = Fill{}) {
  const Laid laid = lay_picture(frame(printed), picture, fit);
  return rescan(laid, {kind, original, false}, picture, at_300, sheet().flatbed_limit)->needed_ppi;
}

/// The pixels of a scan of something so large.
constexpr double scanned(Length length, double ppi) { return (Density::of_ppi(ppi) * length).count; }

} // namespace

TEST_CASE("effective density: worked examples") {
  struct Case {
    const char *source;
    PixelSize size;
    Size placed;
    Fit fit;
    double ppi_x, ppi_y;
  };
  const Case cases[] = {
      {"arithmetic: 3000 / 6 and 2000 / 4", {3000, 2000}, inches(6, 4), whole, 500, 500},
      {"arithmetic: 1500 / 6 and 1000 / 4",
       {3000, 2000},
       inches(6, 4),
       CropShare{0.25, 0.25, 0.5, 0.5},
       250,
       250},
      {"arithmetic: 4000 / 8.5 and 6000 / 11", {4000, 6000}, inches(8.5, 11), whole, 470.588, 545.455},
      {"arithmetic: 4000 / 10.25", {6000, 4000}, inches(8.25, 10.25), Fill{}, 390.244, 390.244},
      {"arithmetic: 6000 / 8.25", {6000, 4000}, inches(8.25, 10.25), Inside{}, 727.273, 727.273},
      {"arithmetic: a 4 x 6 in scan at 300 ppi, enlarged to 200 %",
       {1200, 1800},
       inches(8, 12),
       whole,
       150,
       150},
      {"arithmetic: the same at 150 %", {1200, 1800}, inches(6, 9), whole, 200, 200},
      {"arithmetic: A4 (ISO 216: 210 x 297 mm) at 300 ppi in whole pixels",
       {2480, 3508},
       mm(210, 297),
       whole,
       299.962,
       300.011},
  };
  for (const Case &each : cases) {
    CAPTURE(each.source);
    const Laid laid = lay_picture(frame(each.placed), each.size, each.fit);
    CHECK(laid.density_x.ppi() == Approx(each.ppi_x).margin(0.0005));
    CHECK(laid.density_y.ppi() == Approx(each.ppi_y).margin(0.0005));
    CHECK(laid.effective().ppi() == Approx(std::min(each.ppi_x, each.ppi_y)).margin(0.0005));
  }
  // Arithmetic: 8.25 / 10.25 x 4000 = 3219.5 px of the width are seen.
  CHECK(lay_picture(frame(inches(8.25, 10.25)), {6000, 4000}, Fill{}).shown.width ==
        Approx(3219.51).margin(0.005));
}

TEST_CASE("A4 at 300 ppi is 299.962 ppi: the tolerance says whether it passes, not a rounding accident") {
  const Density effective = lay_picture(frame(mm(210, 297)), {2480, 3508}, whole).effective();
  CHECK(effective < at_300);
  CHECK(effective >= at_300 * (1 - sheet().density_tolerance));
  CHECK(effective.ppi() == Approx(2480 * 25.4 / 210).epsilon(1e-12)); // arithmetic
}

TEST_CASE("the needed scan is 300 x enlargement / crop share") {
  // Common practice; print of 4 x 6 in.
  CHECK(needed(inches(4, 6), OriginalKind::print, {1200, 1800}, inches(4, 6)) == Approx(300));
  CHECK(needed(inches(4, 6), OriginalKind::print, {1200, 1800}, inches(8, 12)) == Approx(600));
  CHECK(needed(inches(4, 6), OriginalKind::print, {1200, 1800}, inches(16, 24)) == Approx(1200));
  const Fit half = CropShare{0.25, 0.25, 0.5, 0.5};
  CHECK(needed(inches(4, 6), OriginalKind::print, {1200, 1800}, inches(4, 6), half) == Approx(600));
  CHECK(needed(inches(4, 6), OriginalKind::print, {1200, 1800}, inches(8, 12), half) == Approx(1200));
}

TEST_CASE("scans for prints at 300 ppi, by original") {
  struct Case {
    const char *source;
    OriginalKind kind;
    Size original, printed;
    PixelSize picture;
    double ppi;
    int setting;
  };
  constexpr auto slide = OriginalKind::slide, negative = OriginalKind::negative, print = OriginalKind::print;
  const Case cases[] = {
      {"135 film, 36 x 24 mm (ISO 1007), to 6 in; arithmetic",
       slide,
       mm(36, 24),
       inches(6, 4),
       {1500, 1000},
       1270,
       1600},
      {"135 film to 8.25 in; arithmetic", slide, mm(36, 24), inches(8.25, 5.5), {1500, 1000}, 1746.25, 2400},
      {"135 film to 10 in; arithmetic",
       negative,
       mm(36, 24),
       inches(10, 10 / 1.5),
       {1500, 1000},
       2116.67,
       2400},
      {"126 film, 28 x 28 mm (published lists differ), to 8 in; arithmetic",
       negative,
       mm(28, 28),
       inches(8, 8),
       {1000, 1000},
       2177.14,
       2400},
      {"110 film, 17 x 13 mm (published list), to 6 in; arithmetic",
       negative,
       mm(17, 13),
       inches(6, 6 * 13.0 / 17),
       {1700, 1300},
       2689.41,
       3200},
      {"120 film 6 x 6, 56 x 56 mm (published list), to 8 in; arithmetic",
       negative,
       mm(56, 56),
       inches(8, 8),
       {1000, 1000},
       1088.57,
       1200},
      {"wallet print 2.5 x 3.5 in filling 8 x 10 in, 3.2 times; arithmetic",
       print,
       inches(2.5, 3.5),
       inches(8, 10),
       {500, 700},
       960,
       1200},
      {"carte-de-visite, 3 1/4 x 2 1/4 in (Getty Art and Architecture Thesaurus), 2 1/4 in to 5 in; "
       "arithmetic",
       print,
       inches(2.25, 3.25),
       inches(5, 5 * 3.25 / 2.25),
       {900, 1300},
       666.67,
       800},
      {"cabinet card, 4 1/4 x 6 1/2 in (Getty Art and Architecture Thesaurus), 4.25 in to 8.5 in; arithmetic",
       print,
       inches(4.25, 6.5),
       inches(8.5, 13),
       {850, 1300},
       600,
       600},
  };
  for (const Case &each : cases) {
    CAPTURE(each.source);
    const Laid laid = lay_picture(frame(each.printed), each.picture, Fill{});
    const auto answer =
        rescan(laid, {each.kind, each.original, false}, each.picture, at_300, sheet().flatbed_limit);
    REQUIRE(answer);
    CHECK(answer->needed_ppi == Approx(each.ppi).margin(0.005));
    CHECK(answer->setting == each.setting);
    CHECK(answer->film == (each.kind != print));
    CHECK(answer->beyond_flatbed == (each.setting > 2400)); // common practice
  }
}

TEST_CASE("a 35 mm slide at 3600 ppi fills 12 x 18 in at 300") {
  // Common practice, on the nominal frame of 1 x 1.5 in: 3600 x 5400 px.
  CHECK(scanned(1_in, 3600) == 3600);
  CHECK(scanned(1.5_in, 3600) == 5400);
  const Laid laid = lay_picture(frame(inches(12, 18)), {3600, 5400}, Fill{});
  CHECK(laid.effective().ppi() == 300);
  CHECK(needed(inches(1, 1.5), OriginalKind::slide, {3600, 5400}, inches(12, 18)) == Approx(3600));
  CHECK(largest_print(laid, at_300) == inches(12, 18));
}

TEST_CASE("files made for the screen are far too small for paper") {
  // Common practice: 72 or 96 ppi. At their own size they reach that and no more; at 300 a quarter, about, is
  // left.
  for (const int ppi : {72, 96}) {
    const Laid laid = lay_picture(frame(inches(10, 8)), {10 * ppi, 8 * ppi}, whole);
    CHECK(laid.effective().ppi() == ppi);
    CHECK(largest_print(laid, at_300).width.in() == Approx(10.0 * ppi / 300).epsilon(1e-6));
    CHECK(laid.effective() < sheet().bar(Use::photo).least);
  }
}

TEST_CASE("crops of a 35 mm frame in usual print shapes") {
  // Photo essay on print shapes: 5 x 7 in uses 33.6 of 36 mm, 8 x 10 in 30 of 36 mm, 4 x 6 in all. 100 px for
  // a mm.
  const PixelSize film = {3600, 2400};
  CHECK(lay_picture(frame(inches(7, 5)), film, Fill{}).shown.width == Approx(3360).margin(0.01));
  CHECK(lay_picture(frame(inches(10, 8)), film, Fill{}).shown.width == Approx(3000).margin(0.01));
  CHECK(lay_picture(frame(inches(6, 4)), film, Fill{}).shown.width == Approx(3600).margin(0.01));
  Frame eight_by_ten;
  eight_by_ten.rect = frame(inches(10, 8));
  eight_by_ten.picture = 0;
  CHECK(place_frame(eight_by_ten, film).cut_share == Approx(1 - 30.0 / 36).margin(1e-6));
}

TEST_CASE("pixel counts of scans") {
  struct Case {
    const char *source;
    Length length;
    double ppi, pixels;
  };
  const Case cases[] = {
      {"36 mm at 300; arithmetic", 36_mm, 300, 425.20},
      {"24 mm at 300; arithmetic", 24_mm, 300, 283.46},
      {"34.3 mm mount (dictionary of the BKSTS) at 300; arithmetic", 34.3_mm, 300, 405.12},
      {"22.5 mm mount (the same) at 300; arithmetic", 22.5_mm, 300, 265.75},
      {"36 mm at 1200; arithmetic", 36_mm, 1200, 1700.79},
      {"36 mm at 2400; arithmetic", 36_mm, 2400, 3401.57},
      {"22.5 mm at 2400; arithmetic", 22.5_mm, 2400, 2125.98},
      {"24 mm at 3200; arithmetic", 24_mm, 3200, 3023.62},
      {"34.3 mm at 4000; arithmetic", 34.3_mm, 4000, 5401.57},
      {"36 mm at 4800; arithmetic", 36_mm, 4800, 6803.15},
      {"4 in at 600; arithmetic", 4_in, 600, 2400},
      {"210 mm (A4, ISO 216) at 300; arithmetic", 210_mm, 300, 2480.315},
      {"297 mm (A4, ISO 216) at 300; arithmetic", 297_mm, 300, 3507.874},
      {"36 mm at 1000, about 1420 px; scan tutorial", 36_mm, 1000, 1417.32},
      {"24 mm at 1000, about 940 px; scan tutorial", 24_mm, 1000, 944.88},
      {"6 in at 200; scan tutorial", 6_in, 200, 1200},
      {"4 in at 200; scan tutorial", 4_in, 200, 800},
      {"11 in at 200; table of scanner settings (halftone of 133 lpi x 1.5)", 11_in, 200, 2200},
      {"7.8 in at 200; the same table", 7.8_in, 200, 1560},
  };
  for (const Case &each : cases) {
    CAPTURE(each.source);
    CHECK(scanned(each.length, each.ppi) == Approx(each.pixels).margin(0.005));
  }
}

TEST_CASE("published arithmetic that is wrong is not repeated") {
  // A university's slide talk: a 35 mm slide at 300 ppi is 212 x 318 px. Arithmetic: 425.2 x 283.5.
  CHECK(scanned(36_mm, 300) == Approx(425.2).margin(0.05));
  CHECK(scanned(24_mm, 300) == Approx(283.5).margin(0.05));
  // A college's table: 35 mm at 2700 ppi is about 6000 px. Arithmetic: 3826.8 x 2551.2.
  CHECK(scanned(36_mm, 2700) == Approx(3826.8).margin(0.05));
  CHECK(scanned(24_mm, 2700) == Approx(2551.2).margin(0.05));
  // A state library's guideline: letter at 600 is 4800 x 6600 px. Arithmetic: 5100 x 6600.
  CHECK(scanned(8.5_in, 600) == 5100);
  CHECK(scanned(11_in, 600) == 6600);
  // A list of print sizes: 4R is 5.04 in wide. 4R is 4 x 6 in, 1200 x 1800 px at 300.
  CHECK(scanned(4_in, 300) == 1200);
  CHECK(scanned(6_in, 300) == 1800);
}

TEST_CASE("densities behind the pixel arrays of archives and libraries") {
  struct Case {
    const char *source;
    double pixels;
    Length length;
    double ppi;
  };
  const Case cases[] = {
      {"NARA, 35 mm film in 4000 lines; arithmetic on 36 mm", 4000, 36_mm, 2822.2},
      {"UCSC library after FADGI 2010, 4000 px under 5 in", 4000, 5_in, 800},
      {"UCSC library after FADGI 2010, 6000 px on 5 in", 6000, 5_in, 1200},
      {"UCSC library after FADGI 2010, 6000 px on 10 in", 6000, 10_in, 600},
      {"UCSC library after FADGI 2010, 8000 px on 10 in", 8000, 10_in, 800},
      {"UCSC library after FADGI 2010, 8000 px on 20 in", 8000, 20_in, 400},
      {"NARA, 8000 px on the long side of 4 x 5 in", 8000, 5_in, 1600},
      {"NARA, 8000 px on the long side of 5 x 7 in, about 1100", 8000, 7_in, 1142.9},
      {"University of Rhode Island library, 4000 px on 7 in, 571", 4000, 7_in, 571.4},
  };
  for (const Case &each : cases) {
    CAPTURE(each.source);
    CHECK((Pixels{each.pixels} / each.length).ppi() == Approx(each.ppi).margin(0.05));
  }
  // The University of Rhode Island library rounds 571 up to 600.
  CHECK(scanner_step(4000.0 / 7) == 600);
}

TEST_CASE("what scans print to at a lower density") {
  // A scan tutorial: 1420 x 940 px print 9.5 x 6.3 in at 150 ppi, 1200 x 800 px print 8 x 5.3 in.
  const Density at_150 = Density::of_ppi(150);
  const Size print = largest_print(lay_picture(frame(inches(6, 4)), {1200, 800}, whole), at_150);
  CHECK((Pixels{1420} / at_150).in() == Approx(9.5).margin(0.05));
  CHECK((Pixels{940} / at_150).in() == Approx(6.3).margin(0.05));
  CHECK(print.width.in() == Approx(8).margin(0.05));
  CHECK(print.height.in() == Approx(5.3).margin(0.05));
}

TEST_CASE("pixels that pages want at 300 ppi, with the bleed of 1/8 in all round") {
  struct Case {
    double width, height;              // trim, in (common practice)
    double px, py, bleed_px, bleed_py; // arithmetic
  };
  const Case cases[] = {
      {5.5, 8.5, 1650, 2550, 1725, 2625}, {6, 9, 1800, 2700, 1875, 2775},  {7, 10, 2100, 3000, 2175, 3075},
      {8, 8, 2400, 2400, 2475, 2475},     {8, 10, 2400, 3000, 2475, 3075}, {8.5, 11, 2550, 3300, 2625, 3375},
      {12, 12, 3600, 3600, 3675, 3675},
  };
  for (const Case &each : cases) {
    CAPTURE(each.width, each.height);
    Book book;
    book.trim = inches(each.width, each.height);
    book.bleed = {0.125_in, 0.125_in, 0.125_in, 0.125_in};
    const PageSpace space = page_space(book, PressSheet{}, Page{});
    CHECK(scanned(space.trim.width, 300) == each.px);
    CHECK(scanned(space.trim.height, 300) == each.py);
    CHECK(scanned(space.bleed.width, 300) == each.bleed_px);
    CHECK(scanned(space.bleed.height, 300) == each.bleed_py);
    const PixelSize exact = {std::llround(each.bleed_px), std::llround(each.bleed_py)};
    CHECK(lay_picture(space.bleed, exact, Fill{}).effective().ppi() == 300);
  }
}

TEST_CASE("pixels that ISO pages want at 300 ppi with 3 mm bleed") {
  struct Case {
    const char *source;
    Size trim;
    double bleed_px, bleed_py;
  };
  const Case cases[] = {
      {"A4, ISO 216; arithmetic", mm(210, 297), 2551.18, 3578.74},
      {"A5, ISO 216; arithmetic", mm(148, 210), 1818.90, 2551.18},
      {"B5, ISO 216; arithmetic", mm(176, 250), 2149.61, 3023.62},
  };
  for (const Case &each : cases) {
    CAPTURE(each.source);
    Book book;
    book.trim = each.trim;
    book.bleed = {3_mm, 3_mm, 3_mm, 3_mm};
    const PageSpace space = page_space(book, PressSheet{}, Page{});
    CHECK(scanned(space.bleed.width, 300) == Approx(each.bleed_px).margin(0.005));
    CHECK(scanned(space.bleed.height, 300) == Approx(each.bleed_py).margin(0.005));
  }
}

TEST_CASE("lengths in points") {
  // Arithmetic from 1 in = 72 pt = 25.4 mm.
  CHECK((3_mm).pt() == Approx(8.503937).margin(5e-7));
  CHECK((0.125_in).pt() == 9);
  CHECK((210_mm).pt() == Approx(595.2756).margin(5e-5));
  CHECK((297_mm).pt() == Approx(841.8898).margin(5e-5));
  CHECK((216_mm).pt() == Approx(612.283).margin(5e-4));
  CHECK((303_mm).pt() == Approx(858.898).margin(5e-4));
  CHECK(8.5_in == 612_pt);
  CHECK(11_in == 792_pt);
  CHECK(6_in == 432_pt);
  CHECK(9_in == 648_pt);
}

TEST_CASE("stored resolutions as they read back") {
  // PNG stores pixels for a metre (PNG specification), JFIF and TIFF may store them for a centimetre.
  CHECK((Pixels{11811} / 1000_mm).ppi() == Approx(299.9994).margin(5e-5));
  CHECK((Pixels{2835} / 1000_mm).ppi() == Approx(72.009).margin(5e-4));
  CHECK((Pixels{3780} / 1000_mm).ppi() == Approx(96.012).margin(5e-4));
  CHECK((Pixels{23622} / 1000_mm).ppi() == Approx(599.9988).margin(5e-5));
  CHECK((Pixels{118} / 1_cm).ppi() == Approx(299.72).margin(5e-3));
  CHECK((Pixels{120} / 1_cm).ppi() == Approx(304.8).margin(5e-5));
  CHECK((Pixels{118.11} / 1_cm).ppi() == Approx(299.9994).margin(5e-5));
}

TEST_CASE("the steps of scanners") {
  // Common practice: 150 200 300 400 600 800 1200 1600 2400 3200 4800.
  constexpr int usual[] = {150, 200, 300, 400, 600, 800, 1200, 1600, 2400, 3200, 4800};
  for (const int step : usual) {
    CHECK(scanner_step(step) == step);
    CHECK(scanner_step(step - 1) == step);
  }
  CHECK(std::size(scanner_steps) == std::size(usual));
  // Willis, Hybrid Systems Approach, appendix A: 600 dpi are 360,000 px in a square inch, 4 x the 90,000 of
  // 300 dpi; a letter page in black and white at 600 takes 4,207,500 bytes.
  CHECK(scanned(1_in, 600) * scanned(1_in, 600) == 360'000);
  CHECK(scanned(1_in, 600) * scanned(1_in, 600) == 4 * scanned(1_in, 300) * scanned(1_in, 300));
  CHECK(scanned(8.5_in, 600) * scanned(11_in, 600) / 8 == 4'207'500);
}

TEST_CASE("the built-in sheet is common practice") {
  // Common practice: photographs 300 ppi; line art 1200 (journal guides 800 to 1200); bleed 3 mm or 1/8 in;
  // safe margin 3 to 6 mm.
  CHECK(sheet().bar(Use::photo).wanted.ppi() == 300);
  CHECK((sheet().bar(Use::line_art).wanted.ppi() >= 800 && sheet().bar(Use::line_art).wanted.ppi() <= 1200));
  CHECK((sheet().bleed.outside >= 3_mm && sheet().bleed.outside <= 0.125_in));
  CHECK((sheet().safe_margin.outside >= 3_mm && sheet().safe_margin.outside <= 6_mm));
}
