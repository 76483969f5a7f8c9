// Tells formats by their signatures. Only way in: format_of. Tested in tests/engine/picture/files.test.cpp.
#include "engine/picture/signature.h"

#include "engine/picture/faults.h"
#include "engine/picture/heif_brands.h"
#include "engine/picture/other_kinds.h"

#include <algorithm>
#include <string_view>

namespace stoneproof {

namespace {

using namespace std::literals;

/// Classic TIFF carries 42 after the byte order, BigTIFF 43.
bool starts_as_tiff(std::string_view bytes) {
  constexpr std::string_view starts[] = {"II*\0"sv, "MM\0*"sv, "II+\0"sv, "MM\0+"sv};
  return std::ranges::any_of(starts, [&](std::string_view start) { return bytes.starts_with(start); });
}

bool starts_as_webp(std::string_view bytes) {
  return bytes.starts_with("RIFF"sv) && bytes.size() >= 12 && bytes.substr(8, 4) == "WEBP"sv;
}

} // namespace

Outcome<Format> format_of(const PictureFile &file) {
  const auto &head = file.head();
  const std::string_view bytes(reinterpret_cast<const char *>(head.data()), head.size());
  if (bytes.starts_with("\xFF\xD8\xFF"sv)) return Format::jpeg;
  if (bytes.starts_with("\x89PNG\r\n\x1A\n"sv)) return Format::png;
  if (bytes.starts_with("GIF87a"sv) || bytes.starts_with("GIF89a"sv)) return Format::gif;
  if (starts_as_webp(bytes)) return Format::webp;
  const auto heif = heif_kind(head);
  if (heif == HeifKind::hevc) return Format::heic;
  if (heif == HeifKind::av1) return Format::avif;
  if (const auto other = other_kind(head)) return faults::other_format(file.path(), *other);
  if (starts_as_tiff(bytes)) return Format::tiff;
  return faults::unknown_format(file.path());
}

} // namespace stoneproof
