// Facts of a JPEG from the markers before the pixels. Only way in: jpeg_facts.
// Tested in tests/engine/picture/facts.test.cpp.
//
// Density: a JFIF header with a unit wins; else Exif; else none. A JFIF unit of 0 gives the pixels' shape
// only.
#include "engine/picture/exif.h"
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/jpeg_session.h"

#include <cstring>

namespace stoneproof {

namespace {

constexpr int exif_marker = JPEG_APP0 + 1, icc_marker = JPEG_APP0 + 2;

const char *compression_of(const jpeg_decompress_struct &state) {
  if (state.arith_code) return state.progressive_mode ? "JPEG arithmetic progressive" : "JPEG arithmetic";
  return state.progressive_mode ? "JPEG progressive" : "JPEG baseline";
}

ColourModel colour_of(const jpeg_decompress_struct &state) {
  switch (state.jpeg_color_space) {
  case JCS_GRAYSCALE: return ColourModel::gray;
  case JCS_RGB:
  case JCS_YCbCr: return ColourModel::rgb;
  case JCS_CMYK:
  case JCS_YCCK: return ColourModel::cmyk;
  default: return ColourModel::other;
  }
}

bool is_icc(const jpeg_marker_struct &marker) {
  return marker.marker == icc_marker && marker.data_length >= 12 &&
         std::memcmp(marker.data, "ICC_PROFILE", 12) == 0;
}

void read_markers(const jpeg_decompress_struct &state, Facts &facts) {
  std::optional<ExifFacts> exif;
  for (const jpeg_marker_struct *marker = state.marker_list; marker; marker = marker->next) {
    if (is_icc(*marker)) facts.icc = true;
    if (marker->marker == exif_marker && !exif) exif = read_exif({marker->data, marker->data_length});
  }
  set_seen(facts, {state.image_width, state.image_height}, exif ? exif->orientation : 1);
  const bool jfif = state.saw_JFIF_marker && (state.density_unit == 1 || state.density_unit == 2);
  if (jfif)
    set_density(facts, state.X_density, state.Y_density, state.density_unit == 1 ? 1 : 1 / 2.54);
  else if (exif)
    set_density(facts, exif->x, exif->y, exif->unit_inches);
}

} // namespace

Outcome<Facts> jpeg_facts(const PictureFile &file, const PictureLimits &limits) {
  JpegSession session(file);
  const bool sound = session.run([](j_decompress_ptr state) {
    jpeg_save_markers(state, exif_marker, 0xFFFF);
    jpeg_save_markers(state, icc_marker, 12); // the profile's name is enough
    jpeg_read_header(state, TRUE);
  });
  const jpeg_decompress_struct &state = session.state();
  if (!sound && session.error_code() == JERR_BAD_PRECISION)
    return faults::not_decoded(file.path(), "JPEG", "samples of more than 8 bits");
  if (!sound) return faults::broken_header(file.path(), "JPEG", session.error());
  const PixelSize stored{state.image_width, state.image_height};
  if (!faults::within(stored, limits)) return faults::too_many_pixels(file.path(), stored, limits);
  Facts facts;
  facts.format = Format::jpeg;
  facts.bytes = file.size();
  facts.bits = state.data_precision;
  facts.channels = state.num_components;
  facts.colour = colour_of(state);
  facts.compression = compression_of(state);
  read_markers(state, facts);
  return facts;
}

} // namespace stoneproof
