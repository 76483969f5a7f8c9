// Facts of a picture file through the reader that its signature asks for.
// Only way in: read_facts. Tested in tests/engine/picture/facts.test.cpp.
#include "engine/picture/facts.h"

#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/orientation.h"
#include "engine/picture/signature.h"

#include <cmath>
#include <utility>

namespace stoneproof {

Outcome<Facts> read_facts(const std::filesystem::path &path, const PictureLimits &limits) {
  auto opened = PictureFile::open(path);
  if (!opened) return opened.fault();
  const PictureFile &file = opened.value();
  const auto format = format_of(file);
  if (!format) return format.fault();
  switch (format.value()) {
  case Format::jpeg: return jpeg_facts(file, limits);
  case Format::tiff: return tiff_facts(file, limits);
  case Format::png: return png_facts(file, limits);
  case Format::gif: return gif_facts(file, limits);
  case Format::webp: return webp_facts(file, limits);
  case Format::heic:
  case Format::avif: return heif_facts(file, format.value(), limits);
  }
  return faults::unknown_format(path);
}

void set_seen(Facts &facts, PixelSize stored, int orientation) {
  facts.orientation = orientation >= 1 && orientation <= 8 ? orientation : 1;
  facts.size = Orientation(facts.orientation).seen(stored);
}

void set_density(Facts &facts, double x, double y, double inches) {
  const auto density = [&](double pixels) -> std::optional<Density> {
    if (!std::isfinite(pixels) || pixels <= 0) return std::nullopt;
    return Density::of_ppi(pixels / inches);
  };
  facts.stored_x = density(x);
  facts.stored_y = density(y);
  if (Orientation(facts.orientation).swaps()) std::swap(facts.stored_x, facts.stored_y);
}

} // namespace stoneproof
