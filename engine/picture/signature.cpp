// Tells formats by their signatures. Only ways in: signature_of, format_of. Tested in
// tests/engine/picture/files.test.cpp.
#include "engine/picture/signature.h"

#include "engine/picture/faults.h"

#include <algorithm>
#include <cctype>
#include <string>

namespace stoneproof {

namespace {

using namespace std::literals;

struct Known {
  std::string_view bytes; ///< at `offset`
  std::size_t offset;
  std::string_view other;
};

// Sources: each format's own specification; ISO 14496-12 for the brands behind "ftyp".
constexpr Known others[] = {
    {"8BPS"sv, 0, "a PSD layered picture"},
    {"BM"sv, 0, "a BMP picture"},
    {"GIF8"sv, 0, "a GIF picture for the screen"},
    {"WEBP"sv, 8, "a WebP picture for the screen"},
    {"ftyphei"sv, 4, "a HEIC picture"},
    {"ftyphev"sv, 4, "a HEIC picture"},
    {"ftypmif1"sv, 4, "a HEIC picture"},
    {"ftypmsf1"sv, 4, "a HEIC picture"},
    {"%PDF-"sv, 0, "a PDF document"},
};

bool starts_like_html(std::string_view text) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  const auto first = text.find_first_not_of(" \t\r\n");
  if (first == text.npos) return false;
  std::string start(text.substr(first, 14));
  std::ranges::transform(start, start.begin(),
                         [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return start.starts_with("<!doctype html") || start.starts_with("<html");
}

} // namespace

Signature signature_of(std::span<const std::uint8_t> head) {
  const std::string text(head.begin(), head.end());
  const std::string_view bytes = text;
  if (bytes.starts_with("\xFF\xD8\xFF"sv)) return {Format::jpeg, {}};
  if (bytes.starts_with("\x89PNG\r\n\x1A\n"sv)) return {Format::png, {}};
  // Classic TIFF carries 42 after the byte order, BigTIFF 43.
  for (const auto tiff : {"II*\0"sv, "MM\0*"sv, "II+\0"sv, "MM\0+"sv})
    if (bytes.starts_with(tiff)) return {Format::tiff, {}};
  for (const Known &known : others)
    if (bytes.size() > known.offset && bytes.substr(known.offset).starts_with(known.bytes))
      return {{}, known.other};
  if (starts_like_html(bytes)) return {{}, "a web page"};
  return {};
}

Outcome<Format> format_of(const PictureFile &file) {
  const Signature signature = signature_of(file.head());
  if (signature.format) return *signature.format;
  if (signature.other.empty()) return faults::unknown_format(file.path());
  return faults::other_format(file.path(), signature.other);
}

} // namespace stoneproof
