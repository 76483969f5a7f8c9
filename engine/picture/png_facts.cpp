// Facts of a PNG from the chunks before the first IDAT. Only way in: png_facts.
// Tested in tests/engine/picture/facts.test.cpp. An orientation in an eXIf chunk is not applied: viewers
// and layout programs do not agree on it.
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/png_session.h"

namespace stoneproof {

namespace {

ColourModel colour_of(int colour_type, int bits) {
  switch (colour_type) {
  case PNG_COLOR_TYPE_GRAY: return bits == 1 ? ColourModel::bilevel : ColourModel::gray;
  case PNG_COLOR_TYPE_GRAY_ALPHA: return ColourModel::gray;
  case PNG_COLOR_TYPE_PALETTE: return ColourModel::indexed;
  default: return ColourModel::rgb;
  }
}

void read_density(const PngSession &session, Facts &facts) {
  png_uint_32 x = 0, y = 0;
  int unit = PNG_RESOLUTION_UNKNOWN;
  if (!png_get_pHYs(session.png(), session.info(), &x, &y, &unit) || unit != PNG_RESOLUTION_METER) return;
  set_density(facts, x, y, 1 / 0.0254);
}

} // namespace

Outcome<Facts> png_facts(const PictureFile &file, const PictureLimits &limits) {
  PngSession session(file);
  if (!session.run([](png_structp png, png_infop info) { png_read_info(png, info); }))
    return faults::broken_header(file.path(), "PNG", session.error());
  const png_structp png = session.png();
  const png_infop info = session.info();
  const PixelSize stored{png_get_image_width(png, info), png_get_image_height(png, info)};
  if (!faults::within(stored, limits)) return faults::too_many_pixels(file.path(), stored, limits);
  Facts facts;
  facts.format = Format::png;
  facts.bytes = file.size();
  set_seen(facts, stored, 1);
  read_density(session, facts);
  facts.bits = png_get_bit_depth(png, info);
  facts.channels = png_get_channels(png, info);
  const int type = png_get_color_type(png, info);
  facts.colour = colour_of(type, facts.bits);
  facts.alpha = (type & PNG_COLOR_MASK_ALPHA) != 0 || png_get_valid(png, info, PNG_INFO_tRNS) != 0;
  facts.compression = "Deflate";
  const PngColour colour = session.colour();
  facts.tag = colour.tag;
  if (colour.tag == ColourTag::profile) facts.profile = read_profile(colour.icc);
  facts.interlaced = png_get_interlace_type(png, info) != PNG_INTERLACE_NONE;
  return facts;
}

} // namespace stoneproof
