// TIFF samples that are wide, signed or floating, fax Lab, and inks, as they leave the row reader; and which
// of the pictures in a TIFF is read.
#include "engine/picture/rows.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <atomic>
#include <bit>
#include <cstring>
#include <limits>
#include <thread>
#include <tiffio.h>

using namespace stoneproof;

namespace {

// Samples by their bits; picture and planes repeat `patterns` in an order of their own.
struct RawTiff {
  int bits = 8, format = SAMPLEFORMAT_UINT, channels = 1;
  std::vector<std::uint64_t> patterns;
  int photometric = PHOTOMETRIC_MINISBLACK, predictor = 1;
  bool tiled = false, planar = false, big_endian = false;
  std::optional<std::array<double, 2>> range = {}; ///< SMinSampleValue, SMaxSampleValue

  static constexpr int width = 21, height = 18; ///< more than one tile of 16 in both directions

  std::size_t pattern_at(int x, int y, int c) const {
    return static_cast<std::size_t>(x + 3 * y + 7 * c) % patterns.size();
  }
};

// The samples of one row of one plane, in the way libtiff takes them: whole bytes in the machine's order,
// others packed.
made::Bytes packed(const RawTiff &raw, int left, int count, int y, int plane) {
  made::Bytes out;
  std::uint64_t held = 0;
  int have = 0;
  for (int x = left; x < left + count; ++x)
    for (int c = raw.planar ? plane : 0; c < (raw.planar ? plane + 1 : raw.channels); ++c) {
      const std::uint64_t value = raw.patterns[raw.pattern_at(x, y, c)];
      if (raw.bits % 8 == 0) {
        std::array<std::uint8_t, 8> bytes{};
        std::memcpy(bytes.data(), &value, 8); // little-endian machines, as the tests of Raster
        // libtiff 4.5 swaps the bytes before its predictor sees them, so that it would write them reversed.
        if (raw.predictor == PREDICTOR_FLOATINGPOINT && raw.big_endian)
          std::reverse(bytes.begin(), bytes.begin() + raw.bits / 8);
        out.insert(out.end(), bytes.begin(), bytes.begin() + raw.bits / 8);
        continue;
      }
      for (int b = raw.bits - 1; b >= 0; --b) {
        held = held << 1 | (value >> b & 1);
        if (++have % 8 == 0) out.push_back(static_cast<std::uint8_t>(held));
      }
    }
  if (have % 8) out.push_back(static_cast<std::uint8_t>(held << (8 - have % 8)));
  return out;
}

void write_raw(const std::filesystem::path &file, const RawTiff &raw) {
  TIFF *tiff = TIFFOpen(file.c_str(), raw.big_endian ? "wb" : "wl");
  REQUIRE(tiff);
  TIFFSetField(tiff, TIFFTAG_IMAGEWIDTH, RawTiff::width);
  TIFFSetField(tiff, TIFFTAG_IMAGELENGTH, RawTiff::height);
  TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, raw.bits);
  TIFFSetField(tiff, TIFFTAG_SAMPLESPERPIXEL, raw.channels);
  TIFFSetField(tiff, TIFFTAG_SAMPLEFORMAT, raw.format);
  TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC, raw.photometric);
  TIFFSetField(tiff, TIFFTAG_PLANARCONFIG, raw.planar ? PLANARCONFIG_SEPARATE : PLANARCONFIG_CONTIG);
  if (raw.range) {
    TIFFSetField(tiff, TIFFTAG_SMINSAMPLEVALUE, (*raw.range)[0]);
    TIFFSetField(tiff, TIFFTAG_SMAXSAMPLEVALUE, (*raw.range)[1]);
  }
  if (raw.predictor != 1) {
    TIFFSetField(tiff, TIFFTAG_COMPRESSION, COMPRESSION_ADOBE_DEFLATE);
    TIFFSetField(tiff, TIFFTAG_PREDICTOR, raw.predictor);
  }
  const int planes = raw.planar ? raw.channels : 1;
  if (raw.tiled) {
    TIFFSetField(tiff, TIFFTAG_TILEWIDTH, 16);
    TIFFSetField(tiff, TIFFTAG_TILELENGTH, 16);
    for (int p = 0; p < planes; ++p)
      for (int top = 0; top < RawTiff::height; top += 16)
        for (int left = 0; left < RawTiff::width; left += 16) {
          made::Bytes tile;
          for (int y = top; y < top + 16; ++y) {
            const made::Bytes row = packed(raw, left, 16, y, p);
            tile.insert(tile.end(), row.begin(), row.end());
          }
          TIFFWriteTile(tiff, tile.data(), static_cast<std::uint32_t>(left), static_cast<std::uint32_t>(top),
                        0, static_cast<std::uint16_t>(p));
        }
  } else {
    TIFFSetField(tiff, TIFFTAG_ROWSPERSTRIP, 5);
    for (int p = 0; p < planes; ++p)
      for (int y = 0; y < RawTiff::height; ++y) {
        made::Bytes row = packed(raw, 0, RawTiff::width, y, p);
        TIFFWriteScanline(tiff, row.data(), static_cast<std::uint32_t>(y), static_cast<std::uint16_t>(p));
      }
  }
  TIFFClose(tiff);
}

std::unique_ptr<RowSource> open_whole(const std::filesystem::path &file, const PictureLimits &limits = {}) {
  const auto facts = read_facts(file, limits);
  if (!facts) FAIL(facts.fault().what);
  const PixelSize size = facts.value().size;
  auto rows = open_rows(file, {0, 0, size.width, size.height, size.width, size.height}, limits);
  if (!rows) FAIL(rows.fault().what);
  return std::move(rows).value();
}

std::vector<unsigned> samples_of(const std::filesystem::path &file) {
  const auto rows = open_whole(file);
  const RowLayout &layout = rows->layout();
  std::vector<unsigned> samples;
  for (std::int64_t y = 0; y < layout.height; ++y) {
    const auto row = rows->next();
    if (!row) FAIL(row.fault().what);
    const auto count = static_cast<std::size_t>(layout.width * layout.channels);
    for (std::size_t i = 0; i < count; ++i) {
      std::uint16_t value = row.value()[i];
      if (layout.bits > 8) std::memcpy(&value, row.value().data() + i * 2, 2);
      samples.push_back(value);
    }
  }
  return samples;
}

void check_samples(const std::filesystem::path &file, const RawTiff &raw, int bits,
                   const std::vector<unsigned> &wanted) {
  write_raw(file, raw);
  REQUIRE(open_whole(file)->layout().bits == bits);
  const std::vector<unsigned> found = samples_of(file);
  std::vector<unsigned> all;
  for (int y = 0; y < RawTiff::height; ++y)
    for (int x = 0; x < RawTiff::width; ++x)
      for (int c = 0; c < raw.channels; ++c) all.push_back(wanted[raw.pattern_at(x, y, c)]);
  REQUIRE(found.size() == all.size());
  const auto [ours, theirs] = std::mismatch(found.begin(), found.end(), all.begin());
  if (ours != found.end()) {
    CAPTURE(ours - found.begin(), raw.predictor);
    CHECK(*ours == *theirs);
  }
}

std::uint64_t bits_of(float value) { return std::bit_cast<std::uint32_t>(value); }
std::uint64_t bits_of(double value) { return std::bit_cast<std::uint64_t>(value); }

constexpr float nan_value = std::numeric_limits<float>::quiet_NaN();
constexpr float infinite = std::numeric_limits<float>::infinity();

} // namespace

TEST_CASE("TIFF: wide, signed and floating samples in every layout") {
  const test::Folder folder;
  struct Row {
    int bits, format;
    std::vector<std::uint64_t> patterns;
    int read_bits;
    std::vector<unsigned> wanted;
    std::optional<std::array<double, 2>> range = {};
  };
  const std::vector<Row> rows = {
      // the 16 highest bits
      {20, SAMPLEFORMAT_UINT, {0, 0xABCDE, 0xFFFFF}, 16, {0, 0xABCD, 0xFFFF}},
      {24, SAMPLEFORMAT_UINT, {0, 0x123456, 0xFFFFFF}, 16, {0, 0x1234, 0xFFFF}},
      {32, SAMPLEFORMAT_UINT, {0xFFFF, 0x12345678, 0xFFFFFFFF}, 16, {0, 0x1234, 0xFFFF}},
      {64, SAMPLEFORMAT_UINT, {0x123456789ABCDEF0, UINT64_MAX}, 16, {0x1234, 0xFFFF}},
      // signed: the least value is black (TIFF 6.0, tag 340: the default range is that of the data type)
      {4, SAMPLEFORMAT_INT, {0x8, 0, 0x7}, 4, {0, 8, 15}},
      {8, SAMPLEFORMAT_INT, {0x80, 0, 0x7F}, 8, {0, 128, 255}},
      {16, SAMPLEFORMAT_INT, {0x8000, 0, 0x7FFF}, 16, {0, 0x8000, 0xFFFF}},
      {32, SAMPLEFORMAT_INT, {0x80000000, 0, 0x7FFFFFFF}, 16, {0, 0x8000, 0xFFFF}},
      {16, SAMPLEFORMAT_INT, {0xFC18, 0, 1000, 2000, 2001}, 16, {0, 0, 32768, 65535, 65535}, {{0, 2000}}},
      // IEEE 754 binary16: 1, 0.5, 0.25, -1, the least number, infinity, not a number
      {16,
       SAMPLEFORMAT_IEEEFP,
       {0x3C00, 0x3800, 0x3400, 0xBC00, 0x0001, 0x7C00, 0x7E00},
       16,
       {65535, 32768, 16384, 0, 0, 65535, 0}},
      // seven bits of exponent, 16 of fraction: 1, 0.5, 0.75, infinity, not a number
      {24,
       SAMPLEFORMAT_IEEEFP,
       {0x3F0000, 0x3E0000, 0x3E8000, 0x7F0000, 0x7F0001},
       16,
       {65535, 32768, 49151, 65535, 0}},
      {32,
       SAMPLEFORMAT_IEEEFP,
       {bits_of(0.0F), bits_of(0.25F), bits_of(1.5F), bits_of(-infinite), bits_of(infinite),
        bits_of(nan_value)},
       16,
       {0, 16384, 65535, 0, 65535, 0}},
      {64,
       SAMPLEFORMAT_IEEEFP,
       {bits_of(0.5), bits_of(1.0), bits_of(double{nan_value})},
       16,
       {32768, 65535, 0}},
      {32,
       SAMPLEFORMAT_IEEEFP,
       {bits_of(-1.0F), bits_of(0.0F), bits_of(3.0F), bits_of(4.0F), bits_of(nan_value)},
       16,
       {0, 16384, 65535, 65535, 0},
       {{-1, 3}}},
  };
  for (const Row &row : rows)
    for (const int channels : {1, 3})
      for (const bool tiled : {false, true})
        for (const bool planar : {false, true})
          for (const bool big_endian : {false, true}) {
            CAPTURE(row.bits, row.format, channels, tiled, planar, big_endian);
            RawTiff raw{row.bits, row.format, channels, row.patterns};
            raw.photometric = channels == 1 ? PHOTOMETRIC_MINISBLACK : PHOTOMETRIC_RGB;
            raw.tiled = tiled, raw.planar = planar, raw.big_endian = big_endian;
            raw.range = row.range;
            check_samples(folder / "t", raw, row.read_bits, row.wanted);
            const auto facts = read_facts(folder / "t");
            REQUIRE(facts);
            CHECK(facts.value().bits == row.bits);
            CHECK(facts.value().floating == (row.format == SAMPLEFORMAT_IEEEFP));
            if (row.format != SAMPLEFORMAT_IEEEFP || planar) continue;
            raw.predictor = PREDICTOR_FLOATINGPOINT;
            check_samples(folder / "t", raw, row.read_bits, row.wanted);
          }
}

TEST_CASE("TIFF: pairs of numbers, and widths that nobody writes, are refused by name") {
  const test::Folder folder;
  struct Row {
    int bits, format;
    std::string kind;
  };
  for (const Row &row :
       {Row{32, SAMPLEFORMAT_COMPLEXINT, "samples of 32 bits in pairs"},
        Row{40, SAMPLEFORMAT_UINT, "samples of 40 bits"}, Row{8, SAMPLEFORMAT_IEEEFP, "samples of 8 bits"}}) {
    write_raw(folder / "t", {row.bits, row.format, 1, {0, 1}});
    const auto rows = open_rows(folder / "t", {0, 0, 9, 9, 9, 9});
    REQUIRE_FALSE(rows);
    CHECK(rows.fault().what == "the TIFF holds " + row.kind + ", which cannot be decoded here");
  }
}

TEST_CASE("TIFF: fax Lab comes in the coding of ICC") {
  const test::Folder folder;
  // RFC 2301, 5.2.2: samples 255, 128, 96 are L* 100, a* 0, b* 0; 51, 0, 255 are 20, -85.33 and 124.71.
  // ICC.1 with 16 bits: L* 100 is 0xFF00, a* and b* 0 are 0x8000, a step is 1/256.
  RawTiff raw{8, SAMPLEFORMAT_UINT, 3, {255, 128, 96, 51, 0, 255}};
  raw.photometric = PHOTOMETRIC_ITULAB;
  write_raw(folder / "t", raw);
  const auto rows = open_whole(folder / "t");
  CHECK(rows->layout().bits == 16);
  CHECK(rows->layout().colour == ColourModel::lab);
  CHECK_FALSE(rows->layout().signed_ab);
  const std::vector<unsigned> found = samples_of(folder / "t");
  const auto ab = [](double value) { return static_cast<unsigned>(std::lround((value + 128) * 256)); };
  const std::size_t corner = 0; // patterns 0, 7 and 14 of 6: samples 255, 128, 96
  CHECK(found[corner] == 0xFF00);
  CHECK(found[corner + 1] == 0x8000);
  CHECK(found[corner + 2] == 0x8000);
  const std::size_t third = 3 * 3; // patterns 3, 10 and 17 of 6: samples 51, 0, 255
  CHECK(found[third] == 0xFF00 / 5);
  CHECK(found[third + 1] == ab(-85.3333));
  CHECK(found[third + 2] == ab(124.7059));
}

TEST_CASE("TIFF: spot inks after the four are left out, other sets of inks are refused") {
  const test::Folder folder;
  const made::Raster six = made::busy(20, 12, 6);
  const auto write = [&](int ink_set, const std::string &names) {
    made::write_tiff(folder / "t", six, {.photometric = PHOTOMETRIC_SEPARATED});
    TIFFSetWarningHandler(nullptr); // that six channels are more than four
    TIFF *tiff = TIFFOpen((folder / "t").c_str(), "r+");
    TIFFSetField(tiff, TIFFTAG_INKSET, ink_set);
    if (!names.empty()) TIFFSetField(tiff, TIFFTAG_INKNAMES, static_cast<int>(names.size()), names.c_str());
    TIFFRewriteDirectory(tiff);
    TIFFClose(tiff);
  };
  using namespace std::string_literals;
  for (const auto &[ink_set, names] :
       {std::pair{INKSET_CMYK, ""s},
        std::pair{INKSET_MULTIINK, "Cyan\0Magenta\0Yellow\0Black\0Orange\0Gloss\0"s}}) {
    CAPTURE(ink_set);
    write(ink_set, names);
    const auto facts = read_facts(folder / "t");
    REQUIRE(facts);
    CHECK(facts.value().colour == ColourModel::cmyk);
    CHECK(facts.value().channels == 6);
    const std::vector<unsigned> found = samples_of(folder / "t");
    REQUIRE(found.size() == six.samples.size());
    CHECK(std::equal(found.begin(), found.end(), six.samples.begin()));
  }
  for (const std::string &names :
       {""s, "Orange\0Green\0Violet\0Black\0Gloss\0White\0"s, "Cyan\0Magenta\0Yellow\0Blac\0Key\0White\0"s}) {
    write(INKSET_MULTIINK, names);
    const auto facts = read_facts(folder / "t");
    REQUIRE(facts);
    CHECK(facts.value().colour == ColourModel::other);
    const auto rows = open_rows(folder / "t", {0, 0, 20, 12, 20, 12});
    REQUIRE_FALSE(rows);
    CHECK(rows.fault().what ==
          "the TIFF holds 6 inks that are not cyan, magenta, yellow and black, which cannot be decoded here");
    CHECK_FALSE(rows.fault().remedy.empty());
  }
}

namespace {

struct Directory {
  int width, height, value;
  std::uint32_t kind; ///< tag 254
};

void write_pages(const std::filesystem::path &file, const std::vector<Directory> &pages) {
  TIFF *tiff = TIFFOpen(file.c_str(), "w");
  for (const Directory &page : pages) {
    TIFFSetField(tiff, TIFFTAG_SUBFILETYPE, page.kind);
    TIFFSetField(tiff, TIFFTAG_IMAGEWIDTH, page.width);
    TIFFSetField(tiff, TIFFTAG_IMAGELENGTH, page.height);
    TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, 8);
    TIFFSetField(tiff, TIFFTAG_SAMPLESPERPIXEL, 1);
    TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC, PHOTOMETRIC_MINISBLACK);
    made::Bytes bytes(static_cast<std::size_t>(page.width * page.height),
                      static_cast<std::uint8_t>(page.value));
    TIFFWriteEncodedStrip(tiff, 0, bytes.data(), static_cast<tmsize_t>(bytes.size()));
    TIFFWriteDirectory(tiff);
  }
  TIFFClose(tiff);
}

} // namespace

TEST_CASE("TIFF: the picture is the first one of full size") {
  const test::Folder folder;
  constexpr std::uint32_t full = 0, reduced = FILETYPE_REDUCEDIMAGE, page = FILETYPE_PAGE;
  constexpr std::uint32_t mask = FILETYPE_MASK;
  struct Row {
    std::vector<Directory> pages;
    unsigned value; ///< of the picture that is used
    int count;
  };
  const std::vector<Row> rows = {
      {{{4, 3, 1, reduced}, {8, 6, 2, full}, {8, 6, 3, full}}, 2, 2},
      {{{4, 3, 1, reduced}, {2, 2, 2, reduced}, {8, 6, 3, page}}, 3, 1},
      {{{8, 6, 1, full}, {4, 3, 2, reduced}, {2, 2, 3, reduced}}, 1, 1}, // a pyramid
      {{{8, 6, 1, mask}, {8, 6, 2, full}}, 2, 1},
      {{{4, 3, 1, reduced}}, 1, 1},                  // nothing else to take
      {{{8, 6, 1, reduced}, {4, 3, 2, full}}, 1, 1}, // no larger picture, of which it were a copy
      {{{8, 6, 1, page}, {8, 6, 2, page}}, 1, 2},
  };
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CAPTURE(i);
    write_pages(folder / "t", rows[i].pages);
    CHECK(samples_of(folder / "t").at(0) == rows[i].value);
    const auto facts = read_facts(folder / "t");
    REQUIRE(facts);
    CHECK(facts.value().pages == rows[i].count);
  }
}

TEST_CASE("readers that hold much take it from the common budget and give it back") {
  const test::Folder folder;
  const made::Raster picture = made::busy(200, 150, 3);
  made::write_tiff(folder / "tiles", picture, {.tiled = true});
  made::write_png(folder / "interlaced", picture, {.interlaced = true});
  made::write_jpeg(folder / "progressive", picture, {.progressive = true});
  for (const char *name : {"tiles", "interlaced", "progressive"}) {
    CAPTURE(name);
    // Smaller than what each of them holds: each then holds all of it.
    const PictureLimits limits{.budget = std::make_shared<MemoryBudget>(10'000)};
    auto rows = open_whole(folder / name, limits);
    std::atomic<bool> got = false;
    std::thread other([&] {
      const auto hold = MemoryBudget::take(limits.budget, 1);
      got = true;
    });
    std::this_thread::sleep_for(std::chrono::milliseconds(50));
    CHECK_FALSE(got);
    rows.reset();
    other.join();
    CHECK(got);
  }
}
