#include "engine/picture/other_kinds.h"

#include "engine/picture/facts.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <string>
#include <vector>

using namespace stoneproof;
using namespace std::literals;

namespace {

struct Row {
  std::string bytes;
  std::string_view name;
};

const std::vector<Row> rows = {
    {"II*\0\x10\0\0\0CR\x02\0"s, "a camera raw file"},
    {"IIRO\x08\0\0\0"s, "a camera raw file"},
    {"IIU\0\x18\0\0\0"s, "a camera raw file"},
    {"FUJIFILMCCD-RAW 0201"s, "a camera raw file"},
    {"\0\0\0\x18"
     "ftypcrx "s,
     "a camera raw file"},
    {"8BPS\0\1"s, "a PSD layered picture"},
    {"BM\x46\0\0\0"s, "a BMP picture"},
    {"GIF89a"s, "a GIF picture for the screen"},
    {"RIFF\x24\0\0\0WEBPVP8 "s, "a WebP picture for the screen"},
    {"\0\0\0\x18"
     "ftypavif\0\0"s,
     "an AVIF picture for the screen"},
    {"\0\0\0\x18"
     "ftypheic\0\0"s,
     "a HEIC picture"},
    {"\0\0\0\x18"
     "ftypmif1\0\0"s,
     "a HEIC picture"},
    {"\0\0\0\x14"
     "ftypqt  "s,
     "a video"},
    {"\0\0\0\x18"
     "ftypisom"s,
     "a video"},
    {"RIFF\x24\0\0\0AVI LIST"s, "a video"},
    {"\x1A\x45\xDF\xA3\x01"s, "a video"},
    {"\0\0\0\x0CjP  \r\n\x87\n"s, "a JPEG 2000 picture"},
    {"\0\0\0\x0CJXL \r\n\x87\n"s, "a JPEG XL picture"},
    {"%PDF-1.7\n"s, "a PDF document"},
    {"%!PS-Adobe-3.0 EPSF-3.0"s, "an EPS or PostScript document"},
    {"\xC5\xD0\xD3\xC6\x20"s, "an EPS or PostScript document"},
    {"PK\x03\x04\x14"s, "a ZIP archive or an office document"},
    {"bplist00\xD4"s, "a placeholder that a cloud drive left in place of the file"},
    {"<!DOCTYPE html><html>"s, "a web page"},
    {"\xEF\xBB\xBF \r\n<HTML lang='el'>"s, "a web page"},
    {"<svg xmlns='http://www.w3.org/2000/svg'/>"s, "an SVG drawing"},
    {"<?xml version='1.0'?>\n<!-- drawn -->\n<svg/>"s, "an SVG drawing"},
};

std::optional<OtherKind> kind_of(const std::string &bytes) {
  const std::vector<std::uint8_t> head(bytes.begin(), bytes.end());
  return other_kind(head);
}

} // namespace

TEST_CASE("what is sent in place of a picture is named, with what to ask for instead") {
  const test::Folder folder;
  for (const Row &row : rows) {
    CAPTURE(row.name);
    const auto kind = kind_of(row.bytes);
    REQUIRE(kind);
    CHECK(kind->name == row.name);
    CHECK(kind->remedy.back() == '.');
    const auto file = test::write_file(folder / "scan.jpg", row.bytes);
    const auto facts = read_facts(file);
    REQUIRE_FALSE(facts);
    CHECK(facts.fault() == Fault{"the file is " + std::string(row.name) + ", not a TIFF, JPEG or PNG",
                                 file.string(), std::string(kind->remedy)});
  }
}

TEST_CASE("a TIFF, a JPEG and a PNG are no other kind, however short") {
  for (const std::string &bytes :
       {"II*\0"s, "MM\0*\0\0\0\x08"s, "\xFF\xD8\xFF\xE0"s, "\x89PNG\r\n\x1A\n"s, ""s, "I"s})
    CHECK_FALSE(kind_of(bytes));
}

namespace {

/// A TIFF of 8 x 8 gray pixels with two tags more: its first directory is a reduced copy (254), others lie
/// below (330).
std::string tiff_with(std::uint32_t subfile_type, bool has_below) {
  std::string file = "II*\0"s;
  const auto put = [&](std::uint32_t value, int bytes) {
    for (int i = 0; i < bytes; ++i) file += static_cast<char>(value >> (8 * i) & 0xff);
  };
  std::vector<std::pair<std::uint32_t, std::uint32_t>> tags = {{254, subfile_type},
                                                               {256, 8},
                                                               {257, 8},
                                                               {258, 8},
                                                               {259, 1},
                                                               {262, 1},
                                                               {273, 8},
                                                               {277, 1},
                                                               {278, 8},
                                                               {279, 64}};
  if (has_below) tags.emplace_back(330, 8);
  put(8 + 64, 4);
  file.append(64, '\x55');
  put(static_cast<std::uint32_t>(tags.size()), 2);
  for (const auto &[tag, value] : tags) put(tag, 2), put(4, 2), put(1, 4), put(value, 4); // 4: LONG
  put(0, 4);
  return file;
}

} // namespace

TEST_CASE("a TIFF whose first picture is a small copy of one in a camera's own form is a raw file") {
  const test::Folder folder;
  const auto raw = test::write_file(folder / "raw.tif", tiff_with(1, true));
  const auto facts = read_facts(raw);
  REQUIRE_FALSE(facts);
  CHECK(facts.fault() ==
        Fault{"the file is a camera raw file, not a TIFF, JPEG or PNG", raw.string(),
              "Develop it in a raw converter and export it as TIFF, or as JPEG at best quality."});
  CHECK(read_facts(test::write_file(folder / "plain.tif", tiff_with(0, true))));
  CHECK(read_facts(test::write_file(folder / "small.tif", tiff_with(1, false))));
}
