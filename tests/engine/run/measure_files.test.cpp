#include "engine/run/measure_files.h"

#include "engine/press/read.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"
#include "tests/support/small_book.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

#include <sys/stat.h>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

MeasuredFile measured(const std::filesystem::path &file, const RunOptions &options = {}) {
  return measure_files({file}, built_in_press_sheet(), options).front();
}

/// The same file checked in a book, alone in a frame of that size in the corner of page 1.
Checked in_a_book(const std::filesystem::path &file, Size size) {
  Book book = small_book();
  book.source = file.parent_path() / "book.xml";
  book.pictures.push_back(photo("p", file.filename()));
  Frame placed = frame("f", 0, 0, 0, 1, 1);
  placed.rect = {{}, {}, size.width, size.height};
  book.pages[0].frames.push_back(placed);
  return check_book(std::move(book), built_in_press_sheet());
}

made::Raster inks(int width, int height, std::uint16_t paper) {
  made::Raster raster{width, height, 4, 8, {}};
  raster.samples.assign(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 4, paper);
  return raster;
}

/// Soft hills of chance, the same at any size.
made::Raster shapes(int width, int height, unsigned seed) {
  std::mt19937 random(seed);
  const auto share = [&] { return std::uniform_real_distribution<double>(0, 1)(random); };
  std::vector<std::array<double, 4>> hills(90);
  for (auto &hill : hills) hill = {share(), share(), 0.02 + 0.08 * share(), 140 * share() - 70};
  made::Raster raster{width, height, 3, 8, {}};
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      double light = 128;
      for (const auto &[cx, cy, size, strength] : hills) {
        const double dx = (x + 0.5) / width - cx, dy = (y + 0.5) / height - cy;
        light += strength * std::exp(-(dx * dx + dy * dy) / (size * size));
      }
      raster.samples.insert(raster.samples.end(), 3,
                            static_cast<std::uint16_t>(std::clamp(light, 0.0, 255.0)));
    }
  return raster;
}

} // namespace

TEST_CASE("files that show the same picture are told of in each, and which is the better") {
  const Folder folder;
  const made::Raster large = shapes(480, 320, 1), other = shapes(480, 320, 9);
  made::write_png(folder / "large.png", large);
  made::write_jpeg(folder / "small.jpg", shapes(240, 160, 1));
  made::write_png(folder / "another.png", other);
  made::write_png(folder / "same.png", other);
  const auto files =
      measure_files({folder / "large.png", folder / "small.jpg", folder / "another.png", folder / "same.png"},
                    built_in_press_sheet());
  REQUIRE(files[0].copies.size() == 1);
  CHECK(files[0].copies[0].file == folder / "small.jpg");
  CHECK(files[0].copies[0].worse);
  CHECK_FALSE(files[0].copies[0].same_bytes);
  REQUIRE(files[1].copies.size() == 1);
  CHECK(files[1].copies[0].better);
  REQUIRE(files[2].copies.size() == 1);
  CHECK(files[2].copies[0].same_bytes);
  CHECK_FALSE(files[2].copies[0].better);
}

TEST_CASE("files that cannot be used are told of in their place, and the others are measured") {
  const test::Folder folder;
  const auto good = folder / "Zdjęcia babci, ślub 1931.jpg", cut = folder / "cut.jpg", pipe = folder / "pipe";
  made::write_jpeg(good, made::busy(400, 200, 3));
  made::write_jpeg(cut, made::busy(400, 200, 3));
  std::filesystem::resize_file(cut, std::filesystem::file_size(cut) / 2);
  REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
  const auto files =
      measure_files({folder / "gone.jpg", good, folder.path, pipe, cut, good}, built_in_press_sheet());

  REQUIRE(files.size() == 6);
  CHECK(files[0].state.missing);
  CHECK(files[2].state.fault == Fault{"this is a folder", folder.path.string(), "Name the pictures in it."});
  for (const std::size_t i : {0u, 2u, 3u, 4u}) {
    CAPTURE(i);
    REQUIRE(files[i].state.fault);
    CHECK_FALSE(files[i].state.fault->remedy.empty());
    CHECK_FALSE(files[i].whole);
  }
  for (const std::size_t i : {1u, 5u}) {
    CHECK(files[i].file == good);
    CHECK_FALSE(files[i].state.fault);
    CHECK(files[i].state.facts->size == PixelSize{400, 200});
    CHECK(files[i].state.sha256 == sha256_of(good).value());
    CHECK(files[i].whole);
  }
  CHECK(files[4].state.facts); // the header of the cut file is whole
}

TEST_CASE("a filled print is judged as a book's frame of that size would be", "[figures]") {
  const test::Folder folder;
  std::size_t judged[3] = {};
  for (const auto &[width, height] : std::vector<std::pair<int, int>>{
           {3508, 2480}, {2480, 3508}, {2455, 3473}, {1654, 2339}, {1638, 2316}, {1637, 2315}, {700, 300}}) {
    CAPTURE(width, height);
    const auto file = folder / "p.tif";
    made::write_tiff(file, made::busy(width, height, 1), {.photometric = 1});
    const MeasuredFile found = measured(file);
    REQUIRE(found.filled.size() == std::size(usual_prints));
    for (const FilledPrint &print : found.filled) {
      CAPTURE(print.name);
      const Checked book = in_a_book(file, print.size);
      CHECK(print.density == book.evidence.frames[0].laid->effective());
      const auto finding = std::find_if(book.findings.begin(), book.findings.end(),
                                        [](const Finding &f) { return f.rule == "too-few-pixels"; });
      const Sharpness expected = finding == book.findings.end()  ? Sharpness::good
                                 : finding->grade == Grade::hold ? Sharpness::too_few
                                                                 : Sharpness::usable;
      CHECK(print.sharpness == expected);
      ++judged[static_cast<std::size_t>(expected)];
    }
  }
  for (const std::size_t count : judged) CHECK(count > 3);
}

TEST_CASE("the largest prints are at the press sheet's densities, for each use that the picture can have") {
  const test::Folder folder;
  made::write_jpeg(folder / "p.jpg", made::busy(600, 300, 3));
  made::write_tiff(folder / "l.tif", made::busy(1200, 600, 1, 1), {.photometric = 0});
  const MeasuredFile photo = measured(folder / "p.jpg"), line_art = measured(folder / "l.tif");

  CHECK(photo.use == Use::photo);
  REQUIRE(photo.largest.size() == 4);
  CHECK(photo.largest[0].wanted == Size{Length::of_in(2), Length::of_in(1)});
  CHECK(photo.largest[0].least == Size{Length::of_in(3), Length::of_in(1.5)});
  CHECK(photo.largest[1].use == Use::line_art);
  CHECK(photo.largest[1].wanted == Size{Length::of_in(0.5), Length::of_in(0.25)});

  CHECK(line_art.use == Use::line_art);
  REQUIRE(line_art.largest.size() == 3);
  CHECK(line_art.largest[0].use == Use::line_art);
  CHECK(line_art.largest[0].wanted == Size{Length::of_in(1), Length::of_in(0.5)});
  // 1200 px on 150 mm are 203 ppi: usable for a photo, too few for line art
  CHECK(line_art.filled[1].density.ppi() == Approx(600 / (100 / 25.4)));
  CHECK(line_art.filled[1].sharpness == Sharpness::too_few);
}

TEST_CASE("ink is measured as the whole picture prints at the wanted density") {
  const test::Folder folder;
  const auto file = folder / "inks.tif";
  made::Raster raster = inks(900, 600, 51); // 80 % in all
  // A square of 10 mm is 118 px at 300 ppi: a patch of 200 px of 360 % holds a whole one.
  for (int y = 300; y < 500; ++y)
    for (int x = 600; x < 800; ++x)
      for (int c = 0; c < 4; ++c) raster.at(x, y, c) = 230;
  made::write_tiff(file, raster, {.photometric = 5});
  const MeasuredFile found = measured(file);
  REQUIRE(found.whole);
  REQUIRE(found.whole->ink);
  CHECK(found.whole->ink->most == Approx(4 * 230 / 255.0));
  CHECK_FALSE(found.whole->ink->out_of_gamut);

  const Checked book = in_a_book(file, found.largest[0].wanted);
  REQUIRE(book.evidence.shown[0]);
  CHECK(found.whole->ink->most == book.evidence.shown[0]->ink->most);
  const Rect place = *found.whole->ink_place, in_frame = *book.evidence.shown[0]->ink_place;
  CHECK(place.x.mm() == Approx(in_frame.x.mm()).margin(0.001));
  CHECK(place.y.mm() == Approx(in_frame.y.mm()).margin(0.001));
  CHECK(place.width.mm() == Approx(in_frame.width.mm()).margin(0.001));
  CHECK(place.x >= Length::of_in(2));
  CHECK(place.right() <= Length::of_in(2.67));
}

TEST_CASE("samples of 16 bits are measured") {
  const test::Folder folder;
  made::Raster deep = made::busy(300, 200, 1, 16);
  for (int x = 0; x < 300; ++x)
    for (int y = 0; y < 50; ++y) deep.at(x, y, 0) = 65535;
  made::write_tiff(folder / "deep.tif", deep, {.photometric = 1});
  const MeasuredFile found = measured(folder / "deep.tif");
  CHECK(found.state.facts->bits == 16);
  REQUIRE(found.whole);
  CHECK(found.whole->tone.white >= 0.25);
  CHECK(found.whole->tone.white < 0.4);
  CHECK(found.whole->tone.comb == 0);
}

TEST_CASE("without measuring pixels a file is hashed, but damage in its pixels is not met") {
  const test::Folder folder;
  const auto cut = folder / "cut.jpg";
  made::write_jpeg(cut, made::busy(400, 200, 3));
  std::filesystem::resize_file(cut, std::filesystem::file_size(cut) / 2);
  RunOptions quick;
  quick.measure_pixels = false;
  const MeasuredFile found = measured(cut, quick);
  CHECK_FALSE(found.state.fault);
  CHECK_FALSE(found.whole);
  CHECK_FALSE(found.state.neutral);
  CHECK(found.state.sha256.size() == 64);
  CHECK(measured(cut).state.fault);
}

TEST_CASE("the number of threads changes nothing that is measured, and progress counts every file once") {
  const test::Folder folder;
  std::vector<std::filesystem::path> files;
  for (int i = 0; i < 9; ++i) {
    files.push_back(folder / (std::to_string(i) + ".jpg"));
    made::write_jpeg(files.back(), made::busy(60 + i, 40, i % 2 ? 3 : 1));
  }
  RunOptions three, one;
  three.jobs = 3;
  one.jobs = 1;
  std::vector<std::size_t> told;
  three.progress = [&](std::size_t done, std::size_t total) {
    CHECK(total == 9);
    told.push_back(done);
  };
  const auto a = measure_files(files, built_in_press_sheet(), three),
             b = measure_files(files, built_in_press_sheet(), one);
  CHECK(told == std::vector<std::size_t>{1, 2, 3, 4, 5, 6, 7, 8, 9});
  for (std::size_t i = 0; i < files.size(); ++i) {
    CHECK(a[i].file == files[i]);
    CHECK(a[i].state.sha256 == b[i].state.sha256);
    CHECK(a[i].whole->tone.range == b[i].whole->tone.range);
  }
}
