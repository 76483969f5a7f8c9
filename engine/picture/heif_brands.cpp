// Reads the brands of a HEIF. Only way in: heif_kind. Tested in tests/engine/picture/heif.test.cpp.
#include "engine/picture/heif_brands.h"

#include <algorithm>
#include <string_view>

namespace stoneproof {

namespace {

struct Brand {
  std::string_view name;
  HeifKind kind;
};

// ISO/IEC 23008-12, annexes B to H and K to L; AV1 Image File Format, section 8. "mif1" and "miaf" say no
// more than that it is a HEIF.
constexpr Brand brands[] = {
    {"heic", HeifKind::hevc},     {"heix", HeifKind::hevc},     {"heim", HeifKind::hevc},
    {"heis", HeifKind::hevc},     {"avif", HeifKind::av1},      {"msf1", HeifKind::sequence},
    {"hevc", HeifKind::sequence}, {"hevx", HeifKind::sequence}, {"hevm", HeifKind::sequence},
    {"hevs", HeifKind::sequence}, {"avis", HeifKind::sequence}, {"avci", HeifKind::other},
    {"avcs", HeifKind::sequence}, {"jpeg", HeifKind::other},    {"jpgs", HeifKind::sequence},
    {"j2ki", HeifKind::other},    {"j2is", HeifKind::sequence}, {"vvic", HeifKind::other}};

std::optional<HeifKind> kind_of(std::string_view brand) {
  const auto *found = std::ranges::find(brands, brand, &Brand::name);
  return found == std::end(brands) ? std::nullopt : std::optional(found->kind);
}

} // namespace

// The major brand counts; where it is a general one, the first of the compatible ones that says more.
std::optional<HeifKind> heif_kind(std::span<const std::uint8_t> head) {
  std::string_view bytes(reinterpret_cast<const char *>(head.data()), head.size());
  if (bytes.size() < 16 || bytes.substr(4, 4) != "ftyp") return std::nullopt;
  const std::size_t size =
      std::size_t{head[0]} << 24 | std::size_t{head[1]} << 16 | std::size_t{head[2]} << 8 | head[3];
  bytes = bytes.substr(0, size);
  if (bytes.size() < 16) return std::nullopt;
  const std::string_view major = bytes.substr(8, 4);
  if (const auto kind = kind_of(major)) return kind;
  if (major != "mif1" && major != "miaf" && major != "mif2") return std::nullopt;
  for (std::size_t place = 16; place + 4 <= bytes.size(); place += 4) {
    const auto kind = kind_of(bytes.substr(place, 4));
    if (kind && *kind != HeifKind::sequence) return kind;
  }
  return HeifKind::other;
}

} // namespace stoneproof
