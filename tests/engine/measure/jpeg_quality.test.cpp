// Quality from tables: against published figures, and against every quality that libjpeg writes.
#include "engine/measure/jpeg_quality.h"

#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

using namespace stoneproof;

namespace {

/// The facts of an invented picture saved so.
JpegFacts saved(const made::JpegKind &kind, int channels = 3) {
  const test::Folder folder;
  made::write_jpeg(folder / "a.jpg", made::busy(40, 40, channels), kind);
  const auto facts = read_facts(folder / "a.jpg");
  REQUIRE(facts);
  REQUIRE(facts.value().jpeg);
  return *facts.value().jpeg;
}

int sum_of(const QuantTable &table) { return std::accumulate(table.begin(), table.end(), 0); }

std::vector<int> row_of(const QuantTable &table, std::size_t row) {
  const auto begin = table.begin() + static_cast<std::ptrdiff_t>(8 * row);
  return {begin, begin + 8};
}

JpegFacts with_luma(const QuantTable &luma) { return {luma, std::nullopt, ""}; }

void is_exactly(const JpegFacts &facts, int quality) {
  const auto found = jpeg_quality(facts);
  REQUIRE(found);
  CHECK(found->quality == quality);
  CHECK(found->exact);
  CHECK(found->error == 0);
}

} // namespace

TEST_CASE("the standard tables are those of ITU-T T.81, Annex K, scaled") {
  // Rows and sums: T.81 (09/92), tables K.1 and K.2, and the files that libjpeg writes.
  CHECK(row_of(standard_luma(50), 0) == std::vector{16, 11, 10, 16, 24, 40, 51, 61});
  CHECK(row_of(standard_luma(50), 7) == std::vector{72, 92, 95, 98, 112, 100, 103, 99});
  CHECK(row_of(standard_chroma(50), 0) == std::vector{17, 18, 24, 47, 99, 99, 99, 99});
  CHECK(row_of(standard_luma(75), 0) == std::vector{8, 6, 5, 8, 12, 20, 26, 31});
  CHECK(row_of(standard_luma(10), 0) == std::vector{80, 55, 50, 80, 120, 200, 255, 255});
  struct Case {
    int quality, luma, chroma;
  };
  for (const Case &c :
       {Case{10, 12560, 15110}, Case{25, 7376, 11010}, Case{50, 3688, 5505}, Case{75, 1858, 2780},
        Case{85, 1109, 1666}, Case{90, 736, 1110}, Case{95, 369, 558}, Case{100, 64, 64}}) {
    CAPTURE(c.quality);
    CHECK(sum_of(standard_luma(c.quality)) == c.luma);
    CHECK(sum_of(standard_chroma(c.quality)) == c.chroma);
  }
}

TEST_CASE("no two qualities have the same luma table") {
  for (const LargestStep largest : {LargestStep::baseline, LargestStep::extended}) {
    std::set<QuantTable> tables;
    for (int quality = 1; quality <= 100; ++quality) tables.insert(standard_luma(quality, largest));
    CHECK(tables.size() == 100);
  }
}

TEST_CASE("every quality that libjpeg writes is found again exactly") {
  for (int quality = 1; quality <= 100; ++quality) {
    CAPTURE(quality);
    const JpegFacts facts = saved({.quality = quality});
    CHECK(facts.luma == standard_luma(quality));
    CHECK(facts.chroma == standard_chroma(quality));
    is_exactly(facts, quality);
    is_exactly(saved({.quality = quality}, 1), quality); // gray
    is_exactly(saved({.quality = quality, .baseline_steps = false, .progressive = true}), quality);
  }
}

TEST_CASE("every quality is found in inks, with and without brightness apart") {
  for (const bool ycck : {false, true})
    for (int quality = 1; quality <= 100; quality += 9) {
      CAPTURE(quality, ycck);
      is_exactly(saved({.quality = quality, .ycck = ycck}, 4), quality);
    }
}

TEST_CASE("steps of 16 bits are read whole") {
  const JpegFacts facts = saved({.quality = 1, .baseline_steps = false});
  REQUIRE(facts.luma);
  CHECK((*facts.luma)[53] == 121 * 50); // the largest of table K.1, times S / 100 = 50
  CHECK(jpeg_quality(facts)->quality == 1);
}

TEST_CASE("a gray picture has no chroma, and one table for all channels is standard") {
  const JpegFacts gray = saved({}, 1);
  CHECK(gray.luma == standard_luma(90));
  CHECK(!gray.chroma);
  CHECK(gray.subsampling.empty());
  is_exactly(saved({.tables = {standard_luma(80), standard_luma(80)}}), 80);
}

TEST_CASE("a channel's table is the one that its channel names") {
  const test::Folder folder;
  made::write_jpeg(folder / "a.jpg", made::busy(40, 40, 3), {.quality = 80});
  made::Bytes bytes = made::read_bytes(folder / "a.jpg");
  const made::Bytes start = {0xFF, 0xC0, 0, 17,
                             8}; // the frame header of three channels of 8 bits, T.81 B.2.2
  const auto frame = std::search(bytes.begin(), bytes.end(), start.begin(), start.end());
  REQUIRE(frame != bytes.end());
  REQUIRE(frame[15] == 1); // the table of Cb, and three bytes on that of Cr
  frame[15] = frame[18] = 0;
  made::write_bytes(folder / "b.jpg", bytes);
  const auto facts = read_facts(folder / "b.jpg");
  REQUIRE(facts);
  CHECK_FALSE(facts.value().jpeg->chroma);
  is_exactly(*facts.value().jpeg, 80);
}

TEST_CASE("subsampling has its usual name") {
  struct Case {
    std::array<int, 2> sampling;
    std::string name;
  };
  for (const Case &c :
       {Case{{1, 1}, "4:4:4"}, Case{{2, 1}, "4:2:2"}, Case{{2, 2}, "4:2:0"}, Case{{1, 2}, "4:4:0"},
        Case{{4, 1}, "4:1:1"}, Case{{4, 2}, "4:1:0"}, Case{{3, 1}, "other"}, Case{{1, 4}, "other"}}) {
    CAPTURE(c.name);
    CHECK(saved({.sampling = c.sampling}).subsampling == c.name);
  }
  CHECK(saved({.ycck = true}, 4).subsampling == "4:2:0");
  CHECK(saved({.ycck = false}, 4).subsampling.empty());
}

TEST_CASE("a standard luma table with another chroma table is near its quality") {
  const auto found = jpeg_quality(JpegFacts{standard_luma(90), standard_chroma(70), "4:2:0"});
  REQUIRE(found);
  CHECK(found->quality == 90);
  CHECK_FALSE(found->exact);
  CHECK(found->error > 0.5); // half of the steps are about three times the standard: S is 60, not 20
}

TEST_CASE("the error is the root mean square of the relative differences") {
  QuantTable luma = standard_luma(50);
  luma[0] = 32; // 16 in the standard table: twice the step, a difference of 1 in one of 64
  const auto found = jpeg_quality(with_luma(luma));
  REQUIRE(found);
  CHECK_FALSE(found->exact);
  // S = 100 x (65 / 64) = 101.56, 5000 / S = 49.2
  CHECK(found->quality == 49);
  double sum = 0;
  const QuantTable standard = standard_luma(49);
  for (std::size_t i = 0; i < luma.size(); ++i)
    sum +=
        (static_cast<double>(luma[i]) / standard[i] - 1) * (static_cast<double>(luma[i]) / standard[i] - 1);
  CHECK(found->error == Approx(std::sqrt(sum / 64)));
}

TEST_CASE("tables of no standard scaling get the nearest quality, and say so") {
  // Annex K times 0.33, rounded down: S is about 33 less what rounding takes, quality 83 or 84.
  QuantTable cut = standard_luma(50);
  double mean = 0;
  for (std::uint16_t &step : cut) {
    const std::uint16_t whole = step;
    step = static_cast<std::uint16_t>(step * 33 / 100);
    mean += static_cast<double>(step) / whole / 64;
  }
  const auto scaled = jpeg_quality(with_luma(cut));
  REQUIRE(scaled);
  CHECK_FALSE(scaled->exact);
  CHECK(scaled->quality == std::lround((200 - 100 * mean) / 2));
  CHECK(scaled->error > 0);
  CHECK(scaled->error < 0.2);

  // The same step everywhere: the mean of 1 / step of table K.1 is 0.029940, so S = 47.9, quality 76.05.
  QuantTable flat;
  flat.fill(16);
  const auto even = jpeg_quality(with_luma(flat));
  REQUIRE(even);
  CHECK(even->quality == 76);
  CHECK_FALSE(even->exact);
  CHECK(even->error > scaled->error);
  flat.fill(100); // S = 299.4, 5000 / S = 16.7
  CHECK(jpeg_quality(with_luma(flat))->quality == 17);

  // Steps that grow with frequency, as cameras have them.
  QuantTable slope;
  for (std::size_t i = 0; i < slope.size(); ++i) slope[i] = static_cast<std::uint16_t>(2 + (i / 8 + i % 8));
  const auto camera = jpeg_quality(saved({.tables = {slope, slope}}));
  REQUIRE(camera);
  CHECK_FALSE(camera->exact);
  CHECK(camera->error > 0);
  // Twice the steps are a coarser saving.
  for (std::uint16_t &step : slope) step = static_cast<std::uint16_t>(2 * step);
  CHECK(jpeg_quality(with_luma(slope))->quality < camera->quality);
}

TEST_CASE("the quality stays from 1 to 100, however coarse the tables are") {
  QuantTable steps;
  steps.fill(65535);
  CHECK(jpeg_quality(with_luma(steps))->quality == 1);
  steps.fill(1);
  is_exactly(with_luma(steps), 100);
}

TEST_CASE("without sound tables there is no quality") {
  CHECK_FALSE(jpeg_quality(JpegFacts{}));
  JpegFacts zero{standard_luma(75), standard_chroma(75), "4:4:4"};
  (*zero.chroma)[5] = 0;
  CHECK_FALSE(jpeg_quality(zero));

  // A file whose tables are cut out: they may follow in no header that is read.
  const test::Folder folder;
  made::write_jpeg(folder / "a.jpg", made::busy(40, 40, 3));
  made::Bytes bytes = made::read_bytes(folder / "a.jpg");
  int cut = 0;
  for (std::size_t at = 2; bytes.at(at + 1) != 0xDA;) {
    const std::size_t length = 2u + bytes[at + 2] * 256u + bytes[at + 3];
    const auto begin = bytes.begin() + static_cast<std::ptrdiff_t>(at);
    if (bytes[at + 1] != 0xDB)
      at += length;
    else
      bytes.erase(begin, begin + static_cast<std::ptrdiff_t>(length)), ++cut;
  }
  CHECK(cut > 0);
  made::write_bytes(folder / "b.jpg", bytes);
  const auto facts = read_facts(folder / "b.jpg");
  REQUIRE(facts);
  REQUIRE(facts.value().jpeg);
  CHECK_FALSE(facts.value().jpeg->luma);
  CHECK_FALSE(jpeg_quality(*facts.value().jpeg));
  CHECK(facts.value().jpeg->subsampling == "4:2:0");
}

TEST_CASE("other formats have no such facts") {
  const test::Folder folder;
  made::write_png(folder / "a.png", made::busy(40, 40, 3));
  made::write_tiff(folder / "a.tif", made::busy(40, 40, 3));
  CHECK_FALSE(read_facts(folder / "a.png").value().jpeg);
  CHECK_FALSE(read_facts(folder / "a.tif").value().jpeg);
}
