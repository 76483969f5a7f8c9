// Tells formats by their signatures. Only way in: format_of. Tested in tests/engine/picture/files.test.cpp.
#include "engine/picture/signature.h"

#include "engine/picture/faults.h"
#include "engine/picture/other_kinds.h"

#include <optional>
#include <string>

namespace stoneproof {

namespace {

using namespace std::literals;

std::optional<Format> format_in(std::span<const std::uint8_t> head) {
  const std::string text(head.begin(), head.end());
  const std::string_view bytes = text;
  if (bytes.starts_with("\xFF\xD8\xFF"sv)) return Format::jpeg;
  if (bytes.starts_with("\x89PNG\r\n\x1A\n"sv)) return Format::png;
  // Classic TIFF carries 42 after the byte order, BigTIFF 43.
  for (const auto tiff : {"II*\0"sv, "MM\0*"sv, "II+\0"sv, "MM\0+"sv})
    if (bytes.starts_with(tiff)) return Format::tiff;
  return std::nullopt;
}

} // namespace

Outcome<Format> format_of(const PictureFile &file) {
  if (const auto other = other_kind(file.head())) return faults::other_format(file.path(), *other);
  if (const auto format = format_in(file.head())) return *format;
  return faults::unknown_format(file.path());
}

} // namespace stoneproof
