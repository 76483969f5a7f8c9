// The kinds of file that people send in place of a picture, and what to ask for instead. Only way in:
// other_kind. Tested in tests/engine/picture/other_kinds.test.cpp.
#include "engine/picture/other_kinds.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>

namespace stoneproof {

namespace {

using namespace std::literals;

constexpr auto from_the_phone =
    "On the phone, export the picture as JPEG of the largest size, or have it sent in the most compatible form."sv;
constexpr auto not_for_the_screen =
    "Ask for the scan or the camera's own file; what is made for the screen is small."sv;
constexpr auto develop = "Develop it in a raw converter and export it as TIFF, or as JPEG at best quality."sv;
constexpr auto export_it = "Export the picture as TIFF, or as JPEG at best quality."sv;
constexpr auto flatten = "Flatten a copy and export it as TIFF."sv;
constexpr auto from_the_page = "Open the page and save the picture itself, in its full size."sv;
constexpr auto from_the_document = "Ask for the scan itself; a document often holds a smaller copy of it."sv;
constexpr auto a_still = "Ask for a photograph; a frame of a video has too few pixels to print."sv;
constexpr auto from_the_drive =
    "Open the file once in the cloud drive, so that it is fetched, and copy it then."sv;
constexpr auto unpack = "Unpack it and send the pictures in it, each as a file of its own."sv;

struct Known {
  std::string_view bytes; ///< at `offset`
  std::size_t offset;
  OtherKind kind;
};

// Sources: each format's own specification; ISO/IEC 14496-12 for the brands behind "ftyp". Raw formats of
// cameras have no published specification: their marks are common knowledge. The first that fits counts.
constexpr Known known_kinds[] = {
    {"CR\x02"sv, 8, {"a camera raw file", develop}},
    {"IIRO"sv, 0, {"a camera raw file", develop}},
    {"IIRS"sv, 0, {"a camera raw file", develop}},
    {"MMOR"sv, 0, {"a camera raw file", develop}},
    {"IIU\0"sv, 0, {"a camera raw file", develop}},
    {"FUJIFILMCCD-RAW"sv, 0, {"a camera raw file", develop}},
    {"ftypcrx"sv, 4, {"a camera raw file", develop}},
    {"8BPS"sv, 0, {"a PSD layered picture", flatten}},
    {"BM"sv, 0, {"a BMP picture", export_it}},
    {"GIF8"sv, 0, {"a GIF picture for the screen", not_for_the_screen}},
    {"WEBP"sv, 8, {"a WebP picture for the screen", not_for_the_screen}},
    {"ftypavi"sv, 4, {"an AVIF picture for the screen", not_for_the_screen}},
    {"ftyphei"sv, 4, {"a HEIC picture", from_the_phone}},
    {"ftyphev"sv, 4, {"a HEIC picture", from_the_phone}},
    {"ftypmif1"sv, 4, {"a HEIC picture", from_the_phone}},
    {"ftypmsf1"sv, 4, {"a HEIC picture", from_the_phone}},
    {"ftyp"sv, 4, {"a video", a_still}},
    {"AVI "sv, 8, {"a video", a_still}},
    {"\x1A\x45\xDF\xA3"sv, 0, {"a video", a_still}},
    {"\0\0\0\x0CjP  "sv, 0, {"a JPEG 2000 picture", export_it}},
    {"\xFF\x4F\xFF\x51"sv, 0, {"a JPEG 2000 picture", export_it}},
    {"\0\0\0\x0CJXL "sv, 0, {"a JPEG XL picture", export_it}},
    {"\xFF\x0A"sv, 0, {"a JPEG XL picture", export_it}},
    {"%PDF-"sv, 0, {"a PDF document", from_the_document}},
    {"%!PS"sv, 0, {"an EPS or PostScript document", export_it}},
    {"\xC5\xD0\xD3\xC6"sv, 0, {"an EPS or PostScript document", export_it}},
    {"PK\x03\x04"sv, 0, {"a ZIP archive or an office document", unpack}},
    {"bplist00"sv, 0, {"a placeholder that a cloud drive left in place of the file", from_the_drive}},
};

/// Markup begins after a byte order mark and blanks; its name is looked for in the first thousand characters.
std::optional<OtherKind> markup(std::string_view bytes) {
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  const auto first = bytes.find_first_not_of(" \t\r\n");
  if (first == bytes.npos || bytes[first] != '<') return std::nullopt;
  std::string text(bytes.substr(first, 1000));
  std::ranges::transform(text, text.begin(),
                         [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  if (text.starts_with("<!doctype html") || text.starts_with("<html"))
    return OtherKind{"a web page", from_the_page};
  const bool drawn =
      text.starts_with("<svg") || (text.starts_with("<?xml") && text.find("<svg") != text.npos);
  if (drawn) return OtherKind{"an SVG drawing", export_it};
  return std::nullopt;
}

} // namespace

std::optional<OtherKind> other_kind(std::span<const std::uint8_t> head) {
  const std::string_view bytes(reinterpret_cast<const char *>(head.data()), head.size());
  for (const Known &known : known_kinds)
    if (bytes.size() > known.offset && bytes.substr(known.offset).starts_with(known.bytes)) return known.kind;
  return markup(bytes);
}

OtherKind camera_raw() { return {"a camera raw file", develop}; }

} // namespace stoneproof
