// Facts of a JPEG from the markers before the pixels. Only way in: jpeg_facts.
// Tested in tests/engine/picture/facts.test.cpp.
//
// Density: a JFIF header with a unit wins; else Exif; else none. A JFIF unit of 0 gives the pixels' shape
// only.
#include "engine/picture/exif.h"
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/jpeg_session.h"

#include <algorithm>
#include <cstring>
#include <string_view>

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

/// A profile goes before what Exif says, even where its segments do not fit together: it is then a broken
/// one.
void read_colour(JpegSession &session, const std::optional<ExifFacts> &exif, Facts &facts) {
  if (exif) facts.tag = exif->colour;
  const jpeg_marker_struct *marker = session.state().marker_list;
  while (marker && !is_icc(*marker)) marker = marker->next;
  if (!marker) return;
  facts.tag = ColourTag::profile;
  facts.profile = read_profile(session.icc());
}

void read_markers(JpegSession &session, Facts &facts) {
  const jpeg_decompress_struct &state = session.state();
  std::optional<ExifFacts> exif;
  for (const jpeg_marker_struct *marker = state.marker_list; marker; marker = marker->next) {
    if (marker->marker == exif_marker && !exif) exif = read_exif({marker->data, marker->data_length});
  }
  set_seen(facts, {state.image_width, state.image_height}, exif ? exif->orientation : 1);
  const bool jfif = state.saw_JFIF_marker && (state.density_unit == 1 || state.density_unit == 2);
  if (jfif)
    set_density(facts, state.X_density, state.Y_density, state.density_unit == 1 ? 1 : 1 / 2.54);
  else if (exif)
    set_density(facts, exif->x, exif->y, exif->unit_inches);
  if (exif) facts.device = exif->device, facts.camera = exif->camera;
  read_colour(session, exif, facts);
}

/// libjpeg keeps tables in the natural order (its jpeglib.h).
std::optional<QuantTable> table_of(const jpeg_decompress_struct &state, int number) {
  if (number < 0 || number >= NUM_QUANT_TBLS || !state.quant_tbl_ptrs[number]) return std::nullopt;
  QuantTable table;
  std::copy_n(state.quant_tbl_ptrs[number]->quantval, table.size(), table.begin());
  return table;
}

/// The usual names of sampling: J:a:b for how many chroma samples stand in two rows of four pixels.
std::string_view subsampling_of(const jpeg_decompress_struct &state) {
  if (state.jpeg_color_space != JCS_YCbCr && state.jpeg_color_space != JCS_YCCK) return {};
  const jpeg_component_info &luma = state.comp_info[0], &cb = state.comp_info[1], &cr = state.comp_info[2];
  const bool alike = cb.h_samp_factor == cr.h_samp_factor && cb.v_samp_factor == cr.v_samp_factor;
  const bool whole = luma.h_samp_factor % cb.h_samp_factor == 0 && luma.v_samp_factor % cb.v_samp_factor == 0;
  if (!alike || !whole) return "other";
  switch (10 * (luma.h_samp_factor / cb.h_samp_factor) + luma.v_samp_factor / cb.v_samp_factor) {
  case 11: return "4:4:4";
  case 21: return "4:2:2";
  case 22: return "4:2:0";
  case 12: return "4:4:0";
  case 41: return "4:1:1";
  case 42: return "4:1:0";
  default: return "other";
  }
}

JpegFacts saved_as(const jpeg_decompress_struct &state) {
  JpegFacts saved;
  const int first = state.comp_info[0].quant_tbl_no;
  const int second = state.num_components > 1 ? state.comp_info[1].quant_tbl_no : first;
  saved.luma = table_of(state, first);
  if (second != first) saved.chroma = table_of(state, second);
  saved.subsampling = subsampling_of(state);
  return saved;
}

} // namespace

Outcome<Facts> jpeg_facts(const PictureFile &file, const PictureLimits &limits) {
  JpegSession session(file);
  const bool sound = session.run([](j_decompress_ptr state) {
    jpeg_save_markers(state, exif_marker, 0xFFFF);
    jpeg_save_markers(state, icc_marker, 0xFFFF);
    jpeg_read_header(state, TRUE);
  });
  const jpeg_decompress_struct &state = session.state();
  if (const auto kind = sound ? std::nullopt : session.obstacle())
    return faults::not_decoded(file.path(), "JPEG", *kind);
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
  facts.jpeg = saved_as(state);
  read_markers(session, facts);
  return facts;
}

} // namespace stoneproof
