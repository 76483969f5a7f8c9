// Everything that looks at tiles. The only way in is detail_of; tested through
// tests/engine/measure/pixel_pass.test.cpp.
#include "engine/measure/detail.h"

#include "engine/picture/orientation.h"

#include <utility>

namespace stoneproof {

namespace {

JpegPast past_of(const std::vector<Tile> &tiles, const Facts &facts) {
  if (facts.jpeg) {
    const bool known =
        facts.jpeg->luma && (facts.colour == ColourModel::gray || !facts.jpeg->subsampling.empty());
    return facts.format == Format::jpeg && known ? jpeg_past(tiles, facts.jpeg->luma) : JpegPast();
  }
  const bool lossless = facts.format == Format::tiff || facts.format == Format::png;
  return lossless && !facts.compression.starts_with("JPEG") ? jpeg_past(tiles, std::nullopt) : JpegPast();
}

} // namespace

Detail detail_of(const std::vector<Tile> &tiles, const Facts &facts) {
  Detail detail{upsampling(tiles), past_of(tiles, facts), printed_screen(tiles), screen_likeness(tiles)};
  const Orientation orientation(facts.orientation);
  if (orientation.swaps()) std::swap(detail.upsampling.detail.across, detail.upsampling.detail.down);
  // A lattice looks the same after a quarter turn.
  if (orientation.mirrors() && detail.printed.angle > 0) detail.printed.angle = 90 - detail.printed.angle;

  return detail;
}

} // namespace stoneproof
