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
    {"II\x1A\0\0\0HEAPCCDR"s, "a camera raw file"},
    {"IIRS\x08\0\0\0"s, "a camera raw file"},
    {"MMOR\0\0\0\x08"s, "a camera raw file"},
    {"FOVb\0\0\x02\0"s, "a camera raw file"},
    {"\0MRM\0\0\x10\0"s, "a camera raw file"},
    {"gimp xcf v011\0"s, "an XCF layered picture"},
    {"\0\0\0\x18"
     "ftyphevc\0\0\0\0heicmsf1"s,
     "a HEIC sequence of pictures"},
    {"\0\0\0\x18"
     "ftypmsf1\0\0\0\0heicmsf1"s,
     "a HEIF sequence of pictures"},
    {"\0\0\0\x18"
     "ftypavis\0\0\0\0avifavis"s,
     "an AVIF sequence of pictures"},
    {"\0\0\0\x18"
     "ftypmif1\0\0\0\0mif1j2ki"s,
     "a HEIF picture in a packing other than HEVC and AV1"},
    {"\0\0\0\x14"
     "ftypavci\0\0\0\0mif1"s,
     "a HEIF picture in a packing other than HEVC and AV1"},
    {"\0\0\0\x14"
     "ftypqt  "s,
     "a video"},
    {"\0\0\0\x18"
     "ftypisom"s,
     "a video"},
    {"RIFF\x24\0\0\0AVI LIST"s, "a video"},
    {"\x1A\x45\xDF\xA3\x01"s, "a video"},
    {"\0\0\0\x08wide\0\0\x10\0mdat"s, "a video"},
    {"\0\0\x10\0moov\0\0\0\x6Cmvhd"s, "a video"},
    {"\0\0\x01\xBA\x44\0\4"s, "a video"},
    {"\x30\x26\xB2\x75\x8E\x66\xCF\x11\xA6\xD9"s, "a video"},
    {"FLV\x01\x05"s, "a video"},
    {"\xFF\x0A\xFA\x7F"s, "a JPEG XL picture"},
    {"\xFF\x4F\xFF\x51\0"s, "a JPEG 2000 picture"},
    {std::string(128, '\0') + "DICM\2\0\0\0", "a DICOM picture of a medical device"},
    {"SIMPLE  =                    T"s, "a FITS picture of a telescope"},
    {"Rar!\x1A\x07\x01\0"s, "an archive"},
    {"7z\xBC\xAF\x27\x1C\0\4"s, "an archive"},
    {"\x1F\x8B\x08\0"s, "an archive"},
    {"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1\0"s, "an office document"},
    {"{\\rtf1\\ansi"s, "a text document"},
    {"\x4C\0\0\0\x01\x14\x02\0\0\0\0\0\xC0"s, "a Windows shortcut"},
    {"[InternetShortcut]\r\nURL=https://example.org/"s, "a link to a web page"},
    {"\0\x05\x16\x07\0\2\0\0Mac OS X"s, "what macOS keeps about a file, not the file"},
    {"{\"url\": \"https://example.org/open?id=1\"}"s, "a link that a cloud drive left in place of the file"},
    {"Dear aunt,\r\nthe picture is in the letter.\n"s, "a text"},
    {"\xCE\x91\xCE\xB3\xCE\xB1\xCF\x80\xCE\xB7 \xCE\xBC\xCE\xBF\xCF\x85"s, "a text"},
    {std::string(3000, '\0'), "blank"},
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
    CHECK(facts.fault() == Fault{"the file is " + std::string(row.name) + ", which is not read here",
                                 file.string(), std::string(kind->remedy)});
  }
}

TEST_CASE("a picture that is read is no other kind, however short") {
  for (const std::string &bytes : {"II*\0"s, "MM\0*\0\0\0\x08"s, "\xFF\xD8\xFF\xE0"s, "\x89PNG\r\n\x1A\n"s,
                                   "GIF89a\x10\0\x10\0"s, "RIFF\x24\0\0\0WEBPVP8 "s, ""s, "I"s})
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
        Fault{"the file is a camera raw file, which is not read here", raw.string(),
              "Develop it in a raw converter and export it as TIFF, or as JPEG at best quality."});
  CHECK(read_facts(test::write_file(folder / "plain.tif", tiff_with(0, true))));
  CHECK(read_facts(test::write_file(folder / "small.tif", tiff_with(1, false))));
}
