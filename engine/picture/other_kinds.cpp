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
    "On the phone, export one picture as JPEG of the largest size, or have it sent in the most compatible form."sv;
constexpr auto develop = "Develop it in a raw converter and export it as TIFF, or as JPEG at best quality."sv;
constexpr auto export_it = "Export the picture as TIFF, or as JPEG at best quality."sv;
constexpr auto flatten = "Flatten a copy and export it as TIFF."sv;
constexpr auto from_the_page = "Open the page and save the picture itself, in its full size."sv;
constexpr auto from_the_document = "Ask for the scan itself; a document often holds a smaller copy of it."sv;
constexpr auto a_still = "Ask for a photograph; a frame of a video has too few pixels to print."sv;
constexpr auto from_the_drive =
    "Open the file once in the cloud drive, so that it is fetched, and copy it then."sv;
constexpr auto unpack = "Unpack it and send the pictures in it, each as a file of its own."sv;
constexpr auto follow_the_link =
    "Send the file that it points to; it lies elsewhere on the sender's machine."sv;
constexpr auto the_file_beside =
    "Copy the file of the same name without the leading \"._\"; it lies beside this one."sv;
constexpr auto copy_again = "Copy the picture again from where it came, or ask for it again."sv;
constexpr auto ask_for_it = "Ask for the picture itself."sv;

struct Known {
  std::string_view bytes; ///< at `offset`
  std::size_t offset;
  OtherKind kind;
};

constexpr OtherKind raw = {"a camera raw file", develop}, video = {"a video", a_still},
                    archive = {"an archive", unpack};

// Sources: each format's own specification; ISO/IEC 14496-12 for the brands behind "ftyp". Raw formats of
// cameras have no published specification: their marks are common knowledge. The first that fits counts.
constexpr Known known_kinds[] = {
    {"CR\x02"sv, 8, raw},          // Canon
    {"HEAPCCDR"sv, 6, raw},        // Canon, before 2004
    {"ftypcrx"sv, 4, raw},         // Canon, since 2018
    {"IIRO"sv, 0, raw},            // Olympus
    {"IIRS"sv, 0, raw},            // Olympus
    {"MMOR"sv, 0, raw},            // Olympus
    {"IIU\0"sv, 0, raw},           // Panasonic
    {"FUJIFILMCCD-RAW"sv, 0, raw}, // Fujifilm
    {"FOVb"sv, 0, raw},            // Sigma
    {"\0MRM"sv, 0, raw},           // Minolta
    {"8BPS"sv, 0, {"a PSD layered picture", flatten}},
    {"gimp xcf"sv, 0, {"an XCF layered picture", flatten}},
    {"BM"sv, 0, {"a BMP picture", export_it}},
    {"ftyphevc"sv, 4, {"a HEIC sequence of pictures", from_the_phone}},
    {"ftyphevx"sv, 4, {"a HEIC sequence of pictures", from_the_phone}},
    {"ftyphevm"sv, 4, {"a HEIC sequence of pictures", from_the_phone}},
    {"ftyphevs"sv, 4, {"a HEIC sequence of pictures", from_the_phone}},
    {"ftypmsf1"sv, 4, {"a HEIF sequence of pictures", from_the_phone}},
    {"ftypavis"sv, 4, {"an AVIF sequence of pictures", export_it}},
    {"ftypmif"sv, 4, {"a HEIF picture in a packing other than HEVC and AV1", export_it}},
    {"ftypmiaf"sv, 4, {"a HEIF picture in a packing other than HEVC and AV1", export_it}},
    {"ftypavc"sv, 4, {"a HEIF picture in a packing other than HEVC and AV1", export_it}},
    {"ftypjpeg"sv, 4, {"a HEIF picture in a packing other than HEVC and AV1", export_it}},
    {"ftypj2ki"sv, 4, {"a HEIF picture in a packing other than HEVC and AV1", export_it}},
    {"ftypvvic"sv, 4, {"a HEIF picture in a packing other than HEVC and AV1", export_it}},
    {"ftyp"sv, 4, video},
    {"moov"sv, 4, video},
    {"mdat"sv, 4, video},
    {"\0\0\0\x08wide"sv, 0, video},
    {"AVI "sv, 8, video},
    {"\x1A\x45\xDF\xA3"sv, 0, video},
    {"\x30\x26\xB2\x75\x8E\x66\xCF\x11"sv, 0, video},
    {"\0\0\x01\xBA"sv, 0, video},
    {"\0\0\x01\xB3"sv, 0, video},
    {"FLV\x01"sv, 0, video},
    {"\0\0\0\x0CjP  "sv, 0, {"a JPEG 2000 picture", export_it}},
    {"\xFF\x4F\xFF\x51"sv, 0, {"a JPEG 2000 picture", export_it}},
    {"\0\0\0\x0CJXL "sv, 0, {"a JPEG XL picture", export_it}},
    {"\xFF\x0A"sv, 0, {"a JPEG XL picture", export_it}},
    {"DICM"sv, 128, {"a DICOM picture of a medical device", export_it}},
    {"SIMPLE  ="sv, 0, {"a FITS picture of a telescope", export_it}},
    {"%PDF-"sv, 0, {"a PDF document", from_the_document}},
    {"%!PS"sv, 0, {"an EPS or PostScript document", export_it}},
    {"\xC5\xD0\xD3\xC6"sv, 0, {"an EPS or PostScript document", export_it}},
    {"PK\x03\x04"sv, 0, {"a ZIP archive or an office document", unpack}},
    {"Rar!\x1A\x07"sv, 0, archive},
    {"7z\xBC\xAF\x27\x1C"sv, 0, archive},
    {"\x1F\x8B\x08"sv, 0, archive},
    {"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"sv, 0, {"an office document", from_the_document}},
    {"{\\rtf"sv, 0, {"a text document", from_the_document}},
    {"\x4C\0\0\0\x01\x14\x02\0"sv, 0, {"a Windows shortcut", follow_the_link}},
    {"[InternetShortcut]"sv, 0, {"a link to a web page", from_the_page}},
    {"\0\x05\x16\x07"sv, 0, {"what macOS keeps about a file, not the file", the_file_beside}},
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

/// Cloud drives leave a few names and values in braces, among them an address.
bool is_drive_link(std::string_view bytes) {
  if (!bytes.starts_with('{')) return false;
  constexpr std::string_view marks[] = {"\"url\""sv, "\"doc_id\""sv};
  return std::ranges::any_of(marks, [&](std::string_view mark) { return bytes.find(mark) != bytes.npos; });
}

/// Printable ASCII, tabs and line ends, or bytes of other letters, of which no byte below 32 is a part.
bool is_text(std::string_view bytes) {
  return bytes.size() >= 8 && std::ranges::all_of(bytes, [](unsigned char c) {
           return (c >= 32 && c != 127) || c == '\t' || c == '\n' || c == '\r';
         });
}

bool is_blank(std::string_view bytes) {
  return bytes.size() >= 8 && std::ranges::all_of(bytes, [](char c) { return c == 0; });
}

} // namespace

std::optional<OtherKind> other_kind(std::span<const std::uint8_t> head) {
  const std::string_view bytes(reinterpret_cast<const char *>(head.data()), head.size());
  for (const Known &known : known_kinds)
    if (bytes.size() > known.offset && bytes.substr(known.offset).starts_with(known.bytes)) return known.kind;
  if (const auto marked = markup(bytes)) return marked;
  if (is_drive_link(bytes))
    return OtherKind{"a link that a cloud drive left in place of the file", from_the_drive};
  if (is_text(bytes)) return OtherKind{"a text", ask_for_it};
  // A copy that broke off, or a drive that ran full, leaves a file of the right size without content.
  if (is_blank(bytes)) return OtherKind{"blank", copy_again};
  return std::nullopt;
}

OtherKind camera_raw() { return {"a camera raw file", develop}; }

} // namespace stoneproof
