// What files say of their colours: profiles, Exif's colour space, and the chunks of PNG; and that the profile
// comes with the rows as the file holds it.
#include "engine/picture/rows.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

using namespace stoneproof;

namespace {

Facts facts_of(const std::filesystem::path &file) {
  auto facts = read_facts(file);
  if (!facts) FAIL(facts.fault().what);
  return facts.value();
}

std::vector<std::uint8_t> icc_of(const std::filesystem::path &file) {
  const PixelSize size = facts_of(file).size;
  auto rows = open_rows(file, {0, 0, size.width, size.height, 1, 1});
  if (!rows) FAIL(rows.fault().what);
  // A profile must not stand in the way of the pixels, whatever it is.
  for (std::int64_t y = 0; y < rows.value()->layout().height; ++y) {
    const auto row = rows.value()->next();
    if (!row) FAIL(row.fault().what);
  }
  return rows.value()->layout().icc;
}

void number(made::Bytes &to, std::uint32_t value, int bytes) {
  for (int i = bytes - 1; i >= 0; --i) to.push_back(static_cast<std::uint8_t>(value >> 8 * i));
}

void text(made::Bytes &to, std::string_view value) { to.insert(to.end(), value.begin(), value.end()); }

made::Bytes with_inserted(const made::Bytes &file, std::size_t at, const made::Bytes &piece) {
  made::Bytes out = file;
  out.insert(out.begin() + static_cast<std::ptrdiff_t>(at), piece.begin(), piece.end());
  return out;
}

made::Bytes jpeg_segment(int marker, const made::Bytes &content) {
  made::Bytes out = {0xFF, static_cast<std::uint8_t>(marker)};
  number(out, static_cast<std::uint32_t>(content.size() + 2), 2);
  out.insert(out.end(), content.begin(), content.end());
  return out;
}

// One piece of a profile (ICC.1, annex B.4).
made::Bytes icc_segment(int piece, int pieces, const made::Bytes &content) {
  made::Bytes out;
  text(out, std::string_view("ICC_PROFILE\0", 12));
  out.push_back(static_cast<std::uint8_t>(piece));
  out.push_back(static_cast<std::uint8_t>(pieces));
  out.insert(out.end(), content.begin(), content.end());
  return jpeg_segment(0xE2, out);
}

// Exif with a colour space in the Exif directory, and an index in the directory of interoperability.
made::Bytes exif_segment(std::uint32_t space, const std::string &index) {
  made::Bytes out;
  const auto entry = [&](std::uint32_t tag, std::uint32_t type, std::uint32_t count) {
    number(out, tag, 2), number(out, type, 2), number(out, count, 4);
  };
  text(out, std::string_view("Exif\0\0MM\0*\0\0\0\x08", 14));
  number(out, 1, 2); // at 8: the first directory points to the Exif directory at 26
  entry(0x8769, 4, 1), number(out, 26, 4), number(out, 0, 4);
  number(out, 2, 2); // at 26: the colour space, and a pointer to the third directory at 56
  entry(0xA001, 3, 1), number(out, space, 2), number(out, 0, 2);
  entry(0xA005, 4, 1), number(out, 56, 4), number(out, 0, 4);
  number(out, 1, 2);
  entry(0x0001, 2, 4), text(out, index), out.push_back(0), number(out, 0, 4);
  return jpeg_segment(0xE1, out);
}

// PNG, annex D: the check sum of a chunk's name and content.
std::uint32_t check_sum(const made::Bytes &bytes) {
  std::uint32_t sum = 0xFFFFFFFF;
  for (const std::uint8_t byte : bytes) {
    sum ^= byte;
    for (int i = 0; i < 8; ++i) sum = sum >> 1 ^ (sum & 1 ? 0xEDB88320 : 0);
  }
  return ~sum;
}

made::Bytes png_chunk(std::string_view name, const made::Bytes &content) {
  made::Bytes named;
  text(named, name);
  named.insert(named.end(), content.begin(), content.end());
  made::Bytes out;
  number(out, static_cast<std::uint32_t>(content.size()), 4);
  out.insert(out.end(), named.begin(), named.end());
  number(out, check_sum(named), 4);
  return out;
}

// A profile with a whole header (ICC.1, 7.2) and no tags: libpng lets no worse one pass.
made::Bytes bare_profile() {
  made::Bytes out;
  number(out, 132, 4), text(out, "test"), number(out, 0x04200000, 4), text(out, "mntrRGB XYZ ");
  out.resize(36), text(out, "acsp");
  out.resize(68);
  number(out, 0xF6D6, 4), number(out, 0x10000, 4), number(out, 0xD32D, 4); // the white of D50
  out.resize(132);
  return out;
}

// An iCCP chunk whose profile is packed by Deflate's stored block (RFC 1950 and 1951).
made::Bytes icc_chunk(const made::Bytes &profile) {
  made::Bytes out;
  text(out, std::string_view("name\0\0\x78\x01\x01", 9));
  const auto size = static_cast<std::uint32_t>(profile.size());
  for (const std::uint32_t value : {size, ~size})
    out.push_back(static_cast<std::uint8_t>(value)), out.push_back(static_cast<std::uint8_t>(value >> 8));
  out.insert(out.end(), profile.begin(), profile.end());
  std::uint32_t a = 1, b = 0;
  for (const std::uint8_t byte : profile) a = (a + byte) % 65521, b = (b + a) % 65521;
  number(out, b << 16 | a, 4);
  return png_chunk("iCCP", out);
}

constexpr std::size_t after_png_header = 33, after_jpeg_start = 2;

} // namespace

TEST_CASE("a JPEG's profile is put together from its segments, in whatever order they come") {
  const test::Folder folder;
  made::write_jpeg(folder / "j", made::busy(16, 8, 3), {.jfif = false});
  const made::Bytes plain = made::read_bytes(folder / "j");
  made::Bytes first(60'000), second(50'000);
  for (std::size_t i = 0; i < first.size(); ++i) first[i] = static_cast<std::uint8_t>(i * 7 >> 3);
  for (std::size_t i = 0; i < second.size(); ++i) second[i] = static_cast<std::uint8_t>(i * 5 >> 2);
  made::Bytes whole = first;
  whole.insert(whole.end(), second.begin(), second.end());
  made::Bytes file = with_inserted(plain, after_jpeg_start, icc_segment(1, 2, first));
  file = with_inserted(file, after_jpeg_start, icc_segment(2, 2, second));
  made::write_bytes(folder / "j", file);
  CHECK(facts_of(folder / "j").tag == ColourTag::profile);
  REQUIRE(facts_of(folder / "j").profile);
  CHECK(icc_of(folder / "j") == whole);

  // One of the two is missing.
  made::write_bytes(folder / "j", with_inserted(plain, after_jpeg_start, icc_segment(2, 2, second)));
  CHECK(facts_of(folder / "j").tag == ColourTag::profile);
  REQUIRE(facts_of(folder / "j").profile);
  CHECK(facts_of(folder / "j").profile->broken);
  CHECK(icc_of(folder / "j").empty());
}

TEST_CASE("Exif's colour space: sRGB, Adobe RGB by its index, or nothing; a profile goes before it") {
  const test::Folder folder;
  made::write_jpeg(folder / "j", made::busy(16, 8, 3), {.jfif = false});
  const made::Bytes plain = made::read_bytes(folder / "j");
  struct Row {
    std::uint32_t space;
    std::string index;
    ColourTag tag;
  };
  for (const Row &row :
       {Row{1, "R98", ColourTag::srgb}, Row{1, "R03", ColourTag::srgb}, Row{0xFFFF, "R03", ColourTag::adobe},
        Row{0xFFFF, "R98", ColourTag::none}, Row{7, "R03", ColourTag::none}}) {
    CAPTURE(row.space, row.index);
    const made::Bytes file = with_inserted(plain, after_jpeg_start, exif_segment(row.space, row.index));
    made::write_bytes(folder / "j", file);
    CHECK(facts_of(folder / "j").tag == row.tag);
    CHECK_FALSE(facts_of(folder / "j").profile);
    CHECK(icc_of(folder / "j").empty());
    made::write_bytes(folder / "j", with_inserted(file, after_jpeg_start, icc_segment(1, 1, bare_profile())));
    CHECK(facts_of(folder / "j").tag == ColourTag::profile);
  }
}

TEST_CASE("a TIFF's profile comes with its rows") {
  const test::Folder folder;
  made::write_tiff(folder / "t", made::busy(16, 8, 3), {.icc_bytes = 500});
  CHECK(facts_of(folder / "t").profile);
  CHECK(icc_of(folder / "t") == made::Bytes(500, 7));
  made::write_tiff(folder / "t", made::busy(16, 8, 3));
  CHECK_FALSE(facts_of(folder / "t").profile);
  CHECK(icc_of(folder / "t").empty());
}

TEST_CASE("PNG: cICP goes before iCCP, iCCP before sRGB, sRGB before gAMA and cHRM") {
  const test::Folder folder;
  made::write_png(folder / "p", made::busy(16, 8, 3));
  const made::Bytes plain = made::read_bytes(folder / "p");
  made::Bytes primaries; // sRGB's, as the PNG specification gives them
  for (const std::uint32_t value : {31270u, 32900u, 64000u, 33000u, 30000u, 60000u, 15000u, 6000u})
    number(primaries, value, 4);
  made::Bytes curve;
  number(curve, 45455, 4);
  const made::Bytes gamma = png_chunk("gAMA", curve), chroma = png_chunk("cHRM", primaries);
  const made::Bytes srgb = png_chunk("sRGB", {0}), profile = icc_chunk(bare_profile());
  const made::Bytes coded_srgb = png_chunk("cICP", {1, 13, 0, 1}),
                    coded_p3 = png_chunk("cICP", {12, 13, 0, 1});
  const made::Bytes too_short = png_chunk("cICP", {12, 13, 0});
  struct Row {
    std::vector<made::Bytes> chunks;
    ColourTag tag;
  };
  const std::vector<Row> rows = {
      {{}, ColourTag::none},
      {{gamma}, ColourTag::gamma},
      {{chroma}, ColourTag::gamma},
      {{gamma, chroma, srgb}, ColourTag::srgb},
      {{profile}, ColourTag::profile},
      {{gamma, profile}, ColourTag::profile},
      {{too_short, profile}, ColourTag::profile},
      {{coded_srgb, gamma}, ColourTag::srgb},
      {{coded_p3, profile}, ColourTag::coded},
      {{profile, coded_p3, gamma}, ColourTag::coded},
      {{srgb, coded_p3}, ColourTag::coded},
      // Primaries and curve by ITU-T H.273: BT.709 is sRGB's, SMPTE 170M no wider, BT.2020 wider, a curve for
      // bright displays none of sRGB's; 2 says nothing.
      {{png_chunk("cICP", {1, 1, 0, 1})}, ColourTag::srgb},
      {{png_chunk("cICP", {6, 6, 0, 1})}, ColourTag::gamma},
      {{png_chunk("cICP", {9, 1, 0, 1})}, ColourTag::coded},
      {{png_chunk("cICP", {1, 16, 0, 1})}, ColourTag::gamma},
      {{png_chunk("cICP", {2, 2, 0, 1}), profile}, ColourTag::profile},
  };
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CAPTURE(i);
    made::Bytes file = plain;
    for (const made::Bytes &chunk : rows[i].chunks) file = with_inserted(file, after_png_header, chunk);
    made::write_bytes(folder / "p", file);
    CHECK(facts_of(folder / "p").tag == rows[i].tag);
    const bool counts = rows[i].tag == ColourTag::profile;
    CHECK(facts_of(folder / "p").profile.has_value() == counts);
    CHECK(icc_of(folder / "p") == (counts ? bare_profile() : made::Bytes{}));
  }
}
