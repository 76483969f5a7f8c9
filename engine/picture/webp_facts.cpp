// Facts of a WebP from its chunks. Only way in: webp_facts. Tested in tests/engine/picture/webp.test.cpp.
#include "engine/picture/exif.h"
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/webp_chunks.h"

#include <string_view>

namespace stoneproof {

namespace {

/// The container wants the bare Exif data; some writers leave the name of a JPEG's segment before it.
std::optional<ExifFacts> exif_of(const PictureFile &file, const WebpChunks &chunks) {
  std::vector<std::uint8_t> segment = webp_bytes(file, chunks.exif, most_webp_extra);
  constexpr std::string_view name("Exif\0\0", 6);
  const bool named = segment.size() >= name.size() && std::equal(name.begin(), name.end(), segment.begin());
  if (!named) segment.insert(segment.begin(), name.begin(), name.end());
  return read_exif(segment);
}

} // namespace

Outcome<Facts> webp_facts(const PictureFile &file, const PictureLimits &limits) {
  const WebpWalk walk = read_webp_chunks(file);
  if (!walk.chunks) return faults::broken_header(file.path(), "WebP", walk.error);
  const WebpChunks &chunks = *walk.chunks;
  if (!faults::within(chunks.canvas, limits))
    return faults::too_many_pixels(file.path(), chunks.canvas, limits);
  Facts facts;
  facts.format = Format::webp;
  facts.bytes = file.size();
  const ExifFacts exif = exif_of(file, chunks).value_or(ExifFacts{});
  set_seen(facts, chunks.canvas, exif.orientation);
  set_density(facts, exif.x, exif.y, exif.unit_inches);
  facts.alpha = chunks.alpha || !chunks.covers_canvas();
  facts.channels = facts.alpha ? 4 : 3;
  facts.compression = chunks.lossless ? "WebP lossless" : "WebP lossy";
  facts.pages = chunks.pages;
  facts.tag = exif.colour;
  facts.device = exif.device;
  facts.camera = exif.camera;

  if (chunks.icc.bytes) {
    facts.tag = ColourTag::profile;
    facts.profile = read_profile(webp_bytes(file, chunks.icc, most_webp_extra));
  }
  return facts;
}

} // namespace stoneproof
