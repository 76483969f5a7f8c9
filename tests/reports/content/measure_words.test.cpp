#include "reports/content/measure_words.h"

#include "engine/measure/jpeg_quality.h"
#include "engine/press/read.h"
#include "tests/support/catch.h"

#include <functional>

using namespace stoneproof;
using namespace stoneproof::content;

namespace {

MeasuredFile file_of(Facts facts) {
  MeasuredFile file;
  file.file = "p";
  file.use = facts.colour == ColourModel::bilevel ? Use::line_art : Use::photo;
  file.state.facts = std::move(facts);
  return file;
}

Facts facts_with(const std::function<void(Facts &)> &change) {
  Facts facts;
  facts.format = Format::tiff;
  facts.compression = "LZW";
  facts.size = {3000, 2000};
  change(facts);
  return facts;
}

/// The text of the row with that label; empty where there is none.
std::string row(const MeasuredFile &file, const std::string &label,
                const PressSheet &press = built_in_press_sheet()) {
  for (const FactRow &fact : measure_words(file, press).facts)
    if (fact.label == label) return fact.text;
  return {};
}

struct Case {
  std::function<void(Facts &)> change;
  std::string label, text;
};

JpegFacts saved(int quality, std::string subsampling) {
  return {standard_luma(quality), standard_chroma(quality), std::move(subsampling)};
}

} // namespace

TEST_CASE("what a file says of itself, in words") {
  const auto jpeg = [](int quality) {
    return [quality](Facts &f) {
      f.format = Format::jpeg, f.compression = "JPEG progressive", f.jpeg = saved(quality, "4:2:0");
    };
  };
  const ProfileFacts adobe{"Adobe RGB (1998)", ProfileSpace::rgb, ProfileClass::display, false, true};
  for (const Case &c : std::vector<Case>{
           {[](Facts &) {}, "File", "TIFF, LZW"},
           {[](Facts &f) { f.compression = "none", f.big_tiff = true; }, "File", "BigTIFF, not compressed"},
           {[](Facts &f) { f.format = Format::webp, f.compression = "WebP lossy"; }, "File", "WebP lossy"},
           {jpeg(90), "File", "JPEG progressive, colour sampled 4:2:0, quality 90 (exact)"},
           {jpeg(75), "File", "JPEG progressive, colour sampled 4:2:0, quality 75 (exact)"},
           {jpeg(72), "File",
            "JPEG progressive, colour sampled 4:2:0, quality 72 (exact); the press sheet wants 75"},
           {jpeg(30), "File",
            "JPEG progressive, colour sampled 4:2:0, quality 30 (exact); the press sheet needs at least 50, "
            "better 75"},
           {[](Facts &f) {
              f.format = Format::jpeg, f.compression = "JPEG baseline", f.jpeg = saved(90, "");
              (*f.jpeg->luma)[5] += 1;
            },
            "File", "JPEG baseline, quality about 90"},
           {[](Facts &) {}, "Pixels", "3000 × 2000, 6 megapixels"},
           {[](Facts &f) {
              f.size = {1999, 1000};
            },
            "Pixels", "1999 × 1000, 1.9 megapixels"},
           {[](Facts &f) {
              f.size = {100, 100};
            },
            "Pixels", "100 × 100"},
           {[](Facts &f) {
              f.size = {30000, 50000};
            },
            "Pixels", "30000 × 50000, 1500 megapixels"},
           {[](Facts &) {}, "Colours", "RGB, 8 bits a channel, no profile: sRGB is assumed"},
           {[](Facts &f) { f.tag = ColourTag::srgb, f.bits = 16; }, "Colours",
            "RGB, 16 bits a channel, sRGB by its tag"},
           {[&](Facts &f) { f.tag = ColourTag::profile, f.profile = adobe; }, "Colours",
            "RGB, 8 bits a channel, profile “Adobe RGB (1998)”, stronger than sRGB"},
           {[&](Facts &f) { f.colour = ColourModel::cmyk, f.channels = 4, f.profile = adobe; }, "Colours",
            "CMYK, 8 bits a channel, profile “Adobe RGB (1998)” of RGB, stronger than sRGB"},
           {[](Facts &f) {
              f.profile = ProfileFacts{"", ProfileSpace::rgb, ProfileClass::other, true, false};
            },
            "Colours", "RGB, 8 bits a channel; its profile cannot be read"},
           {[](Facts &f) { f.colour = ColourModel::gray, f.channels = 1; }, "Colours",
            "gray, 8 bits, no profile"},
           {[](Facts &f) { f.colour = ColourModel::bilevel, f.channels = 1, f.bits = 1; }, "Colours",
            "one-bit"},
           {[](Facts &f) { f.bits = 32, f.floating = true, f.tag = ColourTag::adobe; }, "Colours",
            "RGB, 32 bits a channel, floating point, Adobe RGB (1998) by its tag"},
           {[](Facts &f) { f.colour = ColourModel::indexed, f.channels = 1, f.bits = 1; }, "Colours",
            "palette, 1 bit"},
           {[](Facts &) {}, "Density", "the file names none; the printed size decides"},
           {[](Facts &f) { f.stored_x = f.stored_y = Density::of_ppi(72); }, "Density",
            "the file says 72 ppi; the printed size decides, not this"},
           {[](Facts &f) { f.stored_x = Density::of_ppi(204), f.stored_y = Density::of_ppi(98); }, "Density",
            "the file says 204 ppi across, 98 ppi down; the printed size decides, not this"},
           {[](Facts &) {}, "Shown", ""},
           {[](Facts &f) { f.orientation = 6; }, "Shown", "turned a quarter clockwise, as the file asks"},
           {[](Facts &f) { f.orientation = 2; }, "Shown", "mirrored, as the file asks"},
           {[](Facts &f) { f.orientation = 8; }, "Shown", "turned a quarter anticlockwise, as the file asks"},
           {[](Facts &f) { f.pages = 3; }, "Pictures", "3; only the first is used"},
           {[](Facts &f) { f.alpha = true, f.channels = 4; }, "Opacity", "parts may be see-through"},
           {[](Facts &) {}, "Press", ""},
           {[](Facts &f) { f.format = Format::gif; }, "Press", "the press sheet does not accept GIF files"},
           {[](Facts &f) { f.colour = ColourModel::lab; }, "Press",
            "the press sheet does not accept Lab colour"},
           {[](Facts &f) { f.format = Format::gif, f.colour = ColourModel::indexed; }, "Press",
            "the press sheet accepts neither GIF files nor palette colour"},
       })
    CHECK(row(file_of(facts_with(c.change)), c.label) == c.text);
}

TEST_CASE("tones and inks in words, with the press sheet's bound where it is passed") {
  MeasuredFile file = file_of(facts_with([](Facts &) {}));
  CHECK(row(file, "Tones").empty());
  file.whole = Shown{};
  file.whole->tone = {{}, 0.05, 0.002, 0.9, 0};
  CHECK(row(file, "Tones") == "span 90 % of the range, 5 % burnt out, 0.2 % one black");
  file.whole->tone = {{}, 0.12, 0.06, 0.3, 0.2};
  CHECK(row(file, "Tones") ==
        "span 30 % of the range (the press sheet wants 40 %), 12 % burnt out (the press "
        "sheet takes 5 %), 6 % one black (the press sheet takes 5 %), 20 % missing as in "
        "a comb");
  file.whole->tone = {{}, 1, 0, 0.01, 0};
  CHECK(row(file, "Tones") == "span only 1 % of the range: hardly anything is on it");
  CHECK(row(file, "Ink").empty());
  CHECK(row(file, "Gamut").empty());

  file.whole->ink = Ink{3.425, {}, 0.25};
  CHECK(row(file, "Ink") ==
        "converted for this press, up to 342.5 % on a square of 10 mm, printed at 300 ppi; "
        "the press sheet takes 300 %");
  PressSheet press = built_in_press_sheet();
  press.profile = std::make_shared<PressProfile>(PressProfile{"press.icc", {}, {}, 5, 0.1});
  CHECK(row(file, "Gamut", press) ==
        "25 % of the picture has colours that this press cannot print (the press sheet takes 10 %)");
  file.whole->ink->out_of_gamut = 0.1;
  CHECK(row(file, "Gamut", press) == "10 % of the picture has colours that this press cannot print");

  file.state.facts->colour = ColourModel::cmyk;
  file.whole->ink->out_of_gamut.reset();
  CHECK(row(file, "Ink") ==
        "up to 342.5 % on a square of 10 mm, printed at 300 ppi; the press sheet takes 300 %");
  file.state.neutral = true;
  CHECK(row(file, "Colours") == "CMYK, 8 bits a channel, no profile; a gray picture, stored as RGB");
}

TEST_CASE("a file that cannot be used has a fault in the first place, and no prints") {
  MeasuredFile file = file_of(facts_with([](Facts &) {}));
  file.state.fault = Fault{"the file is damaged", "p", "Ask for it again."};
  const MeasureWords words = measure_words(file, built_in_press_sheet());
  CHECK(words.facts.front() == FactRow{"Fault", "the file is damaged"});
  CHECK(words.largest.rows.empty());
  CHECK(words.filling.empty());
  file.state.facts.reset();
  CHECK(measure_words(file, built_in_press_sheet()).facts.size() == 1);
}

TEST_CASE("uses that come to the same print share a row, papers stand two by two") {
  MeasuredFile file = file_of(facts_with([](Facts &) {}));
  const Size whole = {Length::of_mm(169.33), Length::of_mm(84.9)},
             other = {Length::of_mm(20), Length::of_mm(9.99)};
  file.largest = {{Use::photo, whole, whole}, {Use::document, other, other}, {Use::clipping, other, other}};
  file.filled = {{"10 × 15 cm", {}, Density::of_ppi(299.9), Sharpness::good},
                 {"A5", {}, Density::of_ppi(200), Sharpness::usable},
                 {"A4", {}, Density::of_ppi(99), Sharpness::too_few}};
  const MeasureWords words = measure_words(file, built_in_press_sheet());
  using Rows = std::vector<std::vector<std::string>>;
  CHECK(words.largest.rows ==
        Rows{{"Largest print as", "wanted (good)", "least (usable)"},
             {"  photo", "169 × 84 mm at 300 ppi", "169 × 84 mm at 200 ppi"},
             {"  document, clipping", "20 × 9.9 mm at 400 ppi", "20 × 9.9 mm at 300 ppi"}});
  CHECK(words.filling == "Filling a sheet as a photo, turned to suit and cropped");
  CHECK(words.filled.rows == Rows{{"10 × 15 cm", "300 ppi", "good", "A4", "99 ppi", "too few"},
                                  {"A5", "200 ppi", "usable", "", "", ""}});
  file.use = Use::line_art;
  file.whole = Shown{};
  CHECK(row(file, "Tones") == "black and white only");
  CHECK(measure_words(file, built_in_press_sheet()).filling ==
        "Filling a sheet as line art, turned to suit and cropped");
}
