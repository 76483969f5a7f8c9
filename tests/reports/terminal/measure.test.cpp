#include "tests/engine/picture/make_pictures.h"
#include "tests/reports/terminal/album.h"

#include <algorithm>
#include <array>

using namespace stoneproof::test;

namespace {

const std::string press_lines =
    "\nChecked against the press sheet “Common practice” (built in). The printer’s own\n"
    "specification has the last word.\n";

/// "Zdjęcia babci/ślub 1931.jpg" and other pictures as a newcomer might have them.
struct Pictures : Folder {
  Pictures() {
    fs::create_directory(path / "Zdjęcia babci");
    made::JpegKind kind;
    kind.quality = 60;
    kind.unit = 1, kind.x = kind.y = 72;
    made::write_jpeg(path / wedding, made::busy(1500, 1000, 3), kind);
  }
  static inline const std::string wedding = "Zdjęcia babci/ślub 1931.jpg";
};

std::size_t longest_line(const std::string &text) {
  std::size_t longest = 0;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    const auto is_start = [](char c) { return (static_cast<unsigned char>(c) & 0xc0) != 0x80; };
    longest = std::max(longest, static_cast<std::size_t>(std::count_if(line.begin(), line.end(), is_start)));
  }
  return longest;
}

std::string filled_with(made::Raster raster, std::uint16_t sample, const fs::path &file) {
  std::fill(raster.samples.begin(), raster.samples.end(), sample);
  made::write_tiff(file, raster, {.photometric = 5});
  return file.filename().string();
}

} // namespace

TEST_CASE("the block of a photo is the one that was looked at and accepted") {
  const Pictures pictures;
  const Untouched picture(pictures.path / Pictures::wedding);
  const Ran ran = run(pictures.path, {"measure", Pictures::wedding});
  CHECK(ran.out == R"(Zdjęcia babci/ślub 1931.jpg
  File      JPEG baseline, colour sampled 4:2:0, quality 60 (exact); the press
            sheet wants 75
  Pixels    1500 × 1000, 1.5 megapixels
  Colours   RGB, 8 bits a channel, no profile: sRGB is assumed
  Density   the file says 72 ppi; the printed size decides, not this
  Detail    cannot tell
  Print     scanned from print: a line of dots every 2.3 pixels, turned by 6.8°
  Tones     span 100 % of the range, 1.9 % burnt out, 1.9 % one black

  Largest print as                wanted (good)            least (usable)
    photo                127 × 84 mm at 300 ppi   190 × 127 mm at 200 ppi
    line art             31 × 21 mm at 1200 ppi     63 × 42 mm at 600 ppi
    document, clipping    95 × 63 mm at 400 ppi    127 × 84 mm at 300 ppi

  Filling a sheet as a photo, turned to suit and cropped
     9 × 13 cm   282 ppi   usable    A6   242 ppi   usable
    10 × 15 cm   254 ppi   usable    A5   171 ppi   too few
    13 × 18 cm   195 ppi   too few   A4   121 ppi   too few
    20 × 25 cm   127 ppi   too few   A3    85 ppi   too few
)" + press_lines);
  CHECK(ran.err.empty());
  CHECK(ran.status == 0);
  CHECK(picture.still());
  CHECK(pictures.names() == std::vector<std::string>{"Zdjęcia babci"}); // nothing is written
}

TEST_CASE("line art is told of as line art") {
  const Folder folder;
  made::write_tiff(folder / "stamp.tif", made::busy(2400, 1800, 1, 1),
                   {.photometric = 0, .x = 600, .y = 600, .unit = 2});
  const Ran ran = run(folder.path, {"measure", "stamp.tif"});
  CHECK(ran.out == R"(stamp.tif
  File      TIFF, not compressed
  Pixels    2400 × 1800, 4.3 megapixels
  Colours   one-bit
  Density   the file says 600 ppi; the printed size decides, not this
  Detail    cannot tell
  Tones     black and white only

  Largest print as                 wanted (good)            least (usable)
    line art              50 × 38 mm at 1200 ppi    101 × 76 mm at 600 ppi
    document, clipping   152 × 114 mm at 400 ppi   203 × 152 mm at 300 ppi

  Filling a sheet as line art, turned to suit and cropped
     9 × 13 cm   469 ppi   too few   A6   411 ppi   too few
    10 × 15 cm   406 ppi   too few   A5   290 ppi   too few
    13 × 18 cm   338 ppi   too few   A4   205 ppi   too few
    20 × 25 cm   228 ppi   too few   A3   145 ppi   too few
)" + press_lines);
  CHECK(ran.status == 0);
}

TEST_CASE("too much ink is told with the press sheet's limit") {
  const Folder folder;
  const std::string file = filled_with(made::busy(200, 100, 4), 230, folder / "inks.tif"); // 4 x 230 / 255
  const Ran ran = run(folder.path, {"measure", file});
  CHECK(ran.out.find("  Ink       up to 360.8 % on a square of 10 mm, printed at 300 ppi; the press\n"
                     "            sheet takes 300 %\n") != std::string::npos);
  CHECK(ran.out.find("Gamut") == std::string::npos);
  CHECK(ran.status == 0);
}

TEST_CASE("a file that cannot be read is named with its remedy, and the others are measured") {
  const Pictures pictures;
  made::write_tiff(pictures.path / "deep.tif", made::busy(300, 200, 3, 16));
  const Words files = {"gone.jpg", "deep.tif", ".", Pictures::wedding, "deep.tif"};
  Words words = {"measure", "--quick"};
  words.insert(words.end(), files.begin(), files.end());
  const Ran ran = run(pictures.path, words);
  CHECK(ran.err == "gone.jpg: there is no such file\n"
                   "  Put the picture at this path, or correct the path.\n"
                   ".: this is a folder\n"
                   "  Name the pictures in it.\n");
  CHECK(ran.status == 3);
  CHECK(ran.out.rfind("gone.jpg\n  Fault     there is no such file\n\ndeep.tif\n  File      TIFF", 0) == 0);
  CHECK(ran.out.find("\n.\n  Fault     this is a folder\n\n" + Pictures::wedding + "\n  File ") !=
        std::string::npos);
  const std::string bits = "RGB, 16 bits a channel, no profile: sRGB is assumed\n";
  CHECK(ran.out.find(bits) != ran.out.rfind(bits)); // both times that it was named
  CHECK(ran.out.find("Tones") == std::string::npos);

  const Ran as_json = run(pictures.path, {"measure", "--json", "gone.jpg", "deep.tif"});
  CHECK(as_json.status == 3);
  CHECK(as_json.err == "gone.jpg: there is no such file\n"
                       "  Put the picture at this path, or correct the path.\n");
  CHECK(as_json.out.rfind("{\n  \"stoneproof\": \"" STONEPROOF_VERSION "\",\n  \"measure\": 1,\n", 0) == 0);
  CHECK(as_json.out.find("\"path\": \"deep.tif\"") != std::string::npos);
}

TEST_CASE("the press sheet decides what is good") {
  const Pictures pictures;
  std::string sheet = run(pictures.path, {"press"}).out;
  const std::string bars = "wanted=\"300ppi\" least=\"200ppi\"";
  REQUIRE(sheet.find(bars) != std::string::npos);
  sheet.replace(sheet.find(bars), bars.size(), "wanted=\"100ppi\" least=\"50ppi\"");
  write_file(pictures.path / "kind.xml", sheet);
  const Ran ran = run(pictures.path, {"measure", Pictures::wedding, "--press", "kind.xml"});
  CHECK(ran.out.find("381 × 254 mm at 100 ppi   762 × 508 mm at 50 ppi\n") != std::string::npos);
  CHECK(ran.out.find("A4   121 ppi   good\n") != std::string::npos);
  CHECK(ran.out.find("A3    85 ppi   usable\n") != std::string::npos);
  CHECK(ran.out.find("(kind.xml)") != std::string::npos);

  const Ran missing = run(pictures.path, {"measure", Pictures::wedding, "--press", "no.xml"});
  CHECK(missing.err == "no.xml: there is no such file\n  Check the path.\n");
  CHECK(missing.out.empty());
  CHECK(missing.status == 3);
}

TEST_CASE("a picture beyond the limits is a fault") {
  const Pictures pictures;
  const Ran ran = run(pictures.path, {"measure", Pictures::wedding, "--most-pixels", "1000"});
  CHECK(ran.status == 3);
  CHECK(ran.err.rfind(Pictures::wedding + ": ", 0) == 0);
}

TEST_CASE("on a terminal names are bold, the progress goes away, and lines fit") {
  const Pictures pictures;
  for (const unsigned short columns : std::array<unsigned short, 2>{80, 100}) {
    const Ran shown = run_on_terminal(pictures.path, {"measure", Pictures::wedding}, columns);
    CHECK(shown.out.find("\033[1m" + Pictures::wedding + "\033[0m\r\n") != std::string::npos);
    CHECK(shown.out.find("1 of 1 pictures\r\033[K") != std::string::npos);
    CHECK(shown.status == 0);
    const std::string after = shown.out.substr(shown.out.find(Pictures::wedding));
    CHECK(longest_line(after) <= columns + 1u); // carriage return
  }
  const Ran plain = run_on_terminal(pictures.path, {"measure", Pictures::wedding}, 80, {{"NO_COLOR", "1"}});
  CHECK(plain.out.find("\033[1m") == std::string::npos);
}

TEST_CASE("a name cannot command the terminal") {
  const Folder folder;
  const Ran ran = run(folder.path, {"measure", "\x1b[31m.jpg"});
  CHECK(ran.out.rfind("\xEF\xBF\xBD[31m.jpg\n  Fault ", 0) == 0);
  CHECK(ran.err.rfind("\xEF\xBF\xBD[31m.jpg: there is no such file\n", 0) == 0);
}
