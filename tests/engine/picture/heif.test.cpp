// HEIC and AVIF: facts and pixels of made files, and what their brands say.
#include "engine/picture/heif_brands.h"
#include "tests/engine/picture/newer_checks.h"

#include <string>

using namespace stoneproof;
using namespace std::literals;

namespace {

/// Libheif stores no more than about one step of 255 off where nothing is meant to be lost.
constexpr double exact = 1.6;

std::optional<HeifKind> kind_of(const std::string &box) {
  std::string bytes{'\0', '\0', '\0', static_cast<char>(box.size() + 4)};
  bytes += box + "\0\0\0\x20meta"s;
  return heif_kind({reinterpret_cast<const std::uint8_t *>(bytes.data()), bytes.size()});
}

} // namespace

TEST_CASE("HEIF: the brands say what it is") {
  CHECK(kind_of("ftypheic\0\0\0\0mif1heic"s) == HeifKind::hevc);
  CHECK(kind_of("ftypheix\0\0\0\0mif1"s) == HeifKind::hevc);
  CHECK(kind_of("ftypavif\0\0\0\0mif1miaf"s) == HeifKind::av1);
  CHECK(kind_of("ftypmif1\0\0\0\0mif1avif"s) == HeifKind::av1);
  CHECK(kind_of("ftypmif1\0\0\0\0miafmsf1heic"s) == HeifKind::hevc);
  CHECK(kind_of("ftypmif1\0\0\0\0mif1miaf"s) == HeifKind::other);
  CHECK(kind_of("ftypmif1\0\0\0\0mif1jpeg"s) == HeifKind::other);
  CHECK(kind_of("ftypmsf1\0\0\0\0heicmsf1"s) == HeifKind::sequence);
  CHECK(kind_of("ftyphevc\0\0\0\0heicmsf1"s) == HeifKind::sequence);
  CHECK(kind_of("ftypisom\0\0\0\0heic"s) == std::nullopt);
  CHECK(kind_of("moovheic\0\0\0\0mif1heic"s) == std::nullopt);
}

TEST_CASE("HEIC and AVIF: facts") {
  const test::Folder folder;
  for (const bool avif : {false, true}) {
    CAPTURE(avif);
    made::write_heif(folder / "h", made::busy(70, 66, 3),
                     {.avif = avif, .exif = made::bare_exif(6), .pages = 2});
    const auto read = read_facts(folder / "h");
    if (!read) FAIL(read.fault().what);
    const Facts &facts = read.value();
    CHECK(facts.format == (avif ? Format::avif : Format::heic));
    CHECK(facts.size == PixelSize{70, 66});
    CHECK(facts.orientation == 1); // Exif does not count
    CHECK(facts.bits == 8);
    CHECK(facts.channels == 3);
    CHECK(facts.colour == ColourModel::rgb);
    CHECK_FALSE(facts.alpha);
    CHECK(facts.pages == 2);
    CHECK(facts.compression == (avif ? "AV1" : "HEVC"));
    CHECK(facts.tag == ColourTag::srgb);
    REQUIRE(facts.stored_x);
    CHECK(facts.stored_x->ppi() == 300);
    CHECK(facts.stored_y->ppi() == 200);

    made::write_heif(folder / "h", made::busy(70, 66, 3), {.avif = avif, .primaries = 12}); // of P3
    CHECK(read_facts(folder / "h").value().tag == ColourTag::coded);
    CHECK_FALSE(read_facts(folder / "h").value().stored_x);
  }
}

TEST_CASE("HEIC and AVIF: pixels of 8, 10 and 12 bits, with and without opacity") {
  const test::Folder folder;
  for (const bool avif : {false, true})
    for (const int bits : {8, 10, 12})
      for (const int channels : {3, 4}) {
        // libheif 1.15 cannot write opacity of 10 bits as AV1.
        if (avif && bits == 10 && channels == 4) continue;
        CAPTURE(avif, bits, channels);
        const bool deep = avif && bits > 8;
        const made::Raster picture =
            deep ? made::ramps(70, 66, channels, bits) : made::busy(70, 66, channels, bits);
        made::write_heif(folder / "h", picture, {.avif = avif});
        const auto facts = read_facts(folder / "h");
        if (!facts) FAIL(facts.fault().what);
        CHECK(facts.value().bits == bits);
        CHECK(facts.value().alpha == (channels == 4));
        CHECK(facts.value().channels == channels);
        made::check_previews(folder / "h", made::over_white(picture), deep ? 8 : exact);
        const auto rows = open_rows(folder / "h", {0, 0, 1, 1, 1, 1});
        REQUIRE(rows);
        CHECK(rows.value()->layout().bits == bits);
      }
}

TEST_CASE("HEIC and AVIF: the boxes' own turns are applied") {
  const test::Folder folder;
  const made::Raster picture = made::busy(70, 66, 3);
  for (const bool avif : {false, true}) {
    CAPTURE(avif);
    made::write_heif(folder / "h", picture, {.avif = avif, .orientation = 6});
    const auto facts = read_facts(folder / "h");
    REQUIRE(facts);
    CHECK(facts.value().size == PixelSize{66, 70});
    CHECK(facts.value().orientation == 1);
    made::check_previews(folder / "h", made::turned_right(made::over_white(picture), 66), exact);
  }
}

TEST_CASE("HEIC and AVIF: the profile goes before the named primaries") {
  const test::Folder folder;
  const made::Bytes icc = made::some_bytes(500);
  for (const bool avif : {false, true}) {
    made::write_heif(folder / "h", made::busy(70, 66, 3), {.avif = avif, .lossless = false, .icc = icc});
    CHECK(read_facts(folder / "h").value().tag == ColourTag::profile);
    CHECK(read_facts(folder / "h").value().profile);
    CHECK(made::icc_of(folder / "h") == icc);
  }
}

TEST_CASE("HEIC and AVIF: cut files, and claims beyond the limits") {
  const test::Folder folder;
  for (const bool avif : {false, true}) {
    CAPTURE(avif);
    made::write_heif(folder / "h", made::busy(70, 66, 3), {.avif = avif});
    made::check_cuts(folder / "h", 1);
    // The box ispe holds the size: width and height, four bytes each, after its version.
    std::string bytes = test::content_of(folder / "h");
    for (std::size_t at = bytes.find("ispe"); at != bytes.npos; at = bytes.find("ispe", at + 4))
      bytes.replace(at + 8, 8, "\0\0\x7F\xFF\0\0\x7F\xFF"s);
    test::write_file(folder / "huge", bytes);
    CHECK(made::fault_of(folder / "huge").what ==
          "the picture claims 32,767 × 32,767 pixels; the limit is 1,000,000,000 in all");
    CHECK(made::fault_of(folder / "huge", {.most_pixels = 2'000'000'000}).what ==
          "decoding the picture needs 10737 MB of memory; the limit is 536 MB");
    CHECK(made::fault_of(folder / "h", {.most_memory = 10'000}).what ==
          "decoding the picture needs 1 MB of memory; the limit is 0 MB");
  }
}
