// WebP: facts and pixels of made files.
#include "tests/engine/picture/newer_checks.h"

using namespace stoneproof;

TEST_CASE("WebP: facts") {
  const test::Folder folder;
  made::write_webp(folder / "w", made::busy(61, 43, 3));
  const auto read = read_facts(folder / "w");
  REQUIRE(read);
  const Facts &facts = read.value();
  CHECK(facts.format == Format::webp);
  CHECK(facts.size == PixelSize{61, 43});
  CHECK(facts.bits == 8);
  CHECK(facts.channels == 3);
  CHECK(facts.colour == ColourModel::rgb);
  CHECK_FALSE(facts.alpha);
  CHECK(facts.pages == 1);
  CHECK(facts.orientation == 1);
  CHECK(facts.compression == "WebP lossless");
  CHECK(facts.tag == ColourTag::none);
  CHECK_FALSE(facts.stored_x);
  made::write_webp(folder / "w", made::busy(61, 43, 4), {.lossless = false});
  CHECK(read_facts(folder / "w").value().compression == "WebP lossy");
  CHECK(read_facts(folder / "w").value().alpha);
  CHECK(read_facts(folder / "w").value().channels == 4);
}

TEST_CASE("WebP: pixels, exact where nothing was lost") {
  const test::Folder folder;
  for (const int channels : {3, 4}) {
    const made::Raster picture = made::busy(61, 43, channels);
    made::write_webp(folder / "w", picture);
    made::check_previews(folder / "w", made::over_white(picture), channels == 3 ? 0.51 : 1.51);
  }
  const made::Raster ramp = made::ramps(80, 60, 3, 8);
  made::write_webp(folder / "w", ramp, {.lossless = false});
  made::check_previews(folder / "w", made::over_white(ramp), 16);
}

TEST_CASE("WebP: profile, orientation and density of the extended form") {
  const test::Folder folder;
  const made::Raster picture = made::busy(61, 43, 3);
  const made::Bytes icc = made::some_bytes(601);
  made::Bytes named = made::bare_exif(6);
  for (const char c : std::string_view("\0\0fixE", 6))
    named.insert(named.begin(), static_cast<std::uint8_t>(c));
  for (const made::Bytes &exif : {made::bare_exif(6), named}) {
    made::write_webp(folder / "w", picture, {.icc = icc, .exif = exif});
    const auto facts = read_facts(folder / "w");
    REQUIRE(facts);
    CHECK(facts.value().size == PixelSize{43, 61});
    CHECK(facts.value().orientation == 6);
    CHECK(facts.value().stored_x->ppi() == 200);
    CHECK(facts.value().stored_y->ppi() == 300);
    CHECK(facts.value().tag == ColourTag::profile);
    CHECK(facts.value().profile);
    CHECK(made::icc_of(folder / "w") == icc);
    made::check_previews(folder / "w", made::turned_right(made::over_white(picture), 43), 0.51);
  }
}

TEST_CASE("WebP: the first frame of an animation, on its canvas") {
  const test::Folder folder;
  const made::Raster picture = made::busy(61, 43, 3);
  for (const bool lossless : {true, false}) {
    made::write_webp(
        folder / "w", picture,
        {.lossless = lossless, .canvas_width = 90, .canvas_height = 70, .left = 8, .top = 14, .pages = 3});
    const auto facts = read_facts(folder / "w");
    REQUIRE(facts);
    CHECK(facts.value().size == PixelSize{90, 70});
    CHECK(facts.value().pages == 3);
    CHECK(facts.value().alpha);
    const made::Look look = made::over_white(picture);
    const made::Look whole = [&](int x, int y) {
      const bool inside = x >= 8 && y >= 14 && x < 69 && y < 57;
      return inside ? look(x - 8, y - 14) : made::Rgb{255, 255, 255};
    };
    if (lossless) made::check_previews(folder / "w", whole, 1.01);
    CHECK(made::fault_of(folder / "w").what.empty());
    const auto beside = read_preview(folder / "w", facts.value(), {{75, 1, 10, 10}, 1, 1});
    REQUIRE(beside);
    CHECK(beside.value().rgb == made::Bytes{255, 255, 255});
  }
}

TEST_CASE("WebP: cut files, contradictions, claims beyond the limits") {
  const test::Folder folder;
  const made::Raster picture = made::busy(61, 43, 4);
  for (const bool lossless : {true, false}) {
    made::write_webp(folder / "w", picture, {.lossless = lossless, .icc = made::some_bytes(300)});
    made::check_cuts(folder / "w", 1);
  }
  // VP8X: the size stands in bytes 24 to 29, less one.
  made::Bytes bytes = made::read_bytes(folder / "w");
  bytes[24] = 62;
  made::write_bytes(folder / "other", bytes);
  CHECK(made::fault_of(folder / "other").what ==
        "the WebP header is broken (its sizes contradict each other)");
  made::write_webp(folder / "a", picture, {.canvas_width = 62, .canvas_height = 44});
  bytes = made::read_bytes(folder / "a");
  bytes[24] = bytes[25] = bytes[26] = bytes[27] = bytes[28] = bytes[29] = 0xFF;
  made::write_bytes(folder / "huge", bytes);
  CHECK(made::fault_of(folder / "huge").what ==
        "the picture claims 16,777,216 × 16,777,216 pixels; the limit is 1,000,000,000 in all");
  bytes[26] = 0, bytes[29] = 0, bytes[25] = 0x70, bytes[28] = 0x70;
  made::write_bytes(folder / "large", bytes);
  CHECK(made::fault_of(folder / "large").what ==
        "decoding the picture needs 3348 MB of memory; the limit is 536 MB");
  test::write_file(folder / "none", std::string_view("RIFF\x0C\0\0\0WEBPVP8 \0\0\0\0", 20));
  CHECK(made::fault_of(folder / "none").what == "the WebP header is broken (its picture is broken)");
}
