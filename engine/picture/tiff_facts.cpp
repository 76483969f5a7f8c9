// Facts of a TIFF from the directory of its picture. Only way in: tiff_facts.
// Tested in tests/engine/picture/facts.test.cpp.
#include "engine/picture/exif.h"
#include "engine/picture/faults.h"

#include "engine/picture/formats.h"
#include "engine/picture/tiff_session.h"

namespace stoneproof {

namespace {

// Resolution unit (TIFF 6.0, tag 296): none gives the shape of the pixels only; a missing tag means inch.
void read_density(const TiffSession &session, Facts &facts) {
  const auto unit = session.tag<std::uint16_t>(TIFFTAG_RESOLUTIONUNIT, RESUNIT_INCH);
  if (unit != RESUNIT_INCH && unit != RESUNIT_CENTIMETER) return;
  const float x = session.tag<float>(TIFFTAG_XRESOLUTION, 0), y = session.tag<float>(TIFFTAG_YRESOLUTION, 0);
  set_density(facts, x, y, unit == RESUNIT_INCH ? 1 : 1 / 2.54);
}

/// The first directory is a small copy and the picture lies in directories below it, as cameras write raw
/// files.
bool is_camera_raw(const TiffSession &session) {
  std::uint32_t kind = 0;
  std::uint16_t count = 0;
  std::uint64_t *below = nullptr;
  const bool reduced =
      TIFFGetField(session.tiff(), TIFFTAG_SUBFILETYPE, &kind) == 1 && (kind & FILETYPE_REDUCEDIMAGE);
  return reduced && TIFFGetField(session.tiff(), TIFFTAG_SUBIFD, &count, &below) == 1 && count > 0;
}

} // namespace

Outcome<Facts> tiff_facts(const PictureFile &file, const PictureLimits &limits) {
  auto opened = TiffSession::open(file, limits);
  if (!opened) return opened.fault();
  const TiffSession &session = *opened.value();
  if (is_camera_raw(session)) return faults::other_format(file.path(), camera_raw());
  const TiffHeader &header = session.header();
  Facts facts;
  facts.format = Format::tiff;
  facts.bytes = file.size();
  set_seen(facts, {header.width, header.height}, header.orientation);
  read_density(session, facts);
  facts.device =
      device_name(session.tag<const char *>(TIFFTAG_MAKE, ""), session.tag<const char *>(TIFFTAG_MODEL, ""));

  facts.bits = header.bits;
  facts.channels = header.samples;
  facts.colour = tiff_colour(header);
  facts.alpha = header.alpha >= 0;
  facts.compression = tiff_compression_name(header.compression);
  facts.floating = header.sample_format == SAMPLEFORMAT_IEEEFP;
  if (const auto icc = tiff_icc(session); !icc.empty()) {
    facts.tag = ColourTag::profile;
    facts.profile = read_profile(icc);
  }
  facts.pages = count_tiff_pages(file);
  facts.tiled = header.tiled;
  facts.big_tiff = file.head()[2] == 43 || file.head()[3] == 43;
  return facts;
}

} // namespace stoneproof
