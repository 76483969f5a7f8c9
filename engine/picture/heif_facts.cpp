// Facts of a HEIC or AVIF from its boxes. Only way in: heif_facts. Tested in
// tests/engine/picture/heif.test.cpp.
#include "engine/picture/coded_colours.h"
#include "engine/picture/exif.h"
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/heif_session.h"

namespace stoneproof {

Outcome<Facts> heif_facts(const PictureFile &file, Format format, const PictureLimits &limits) {
  const std::string_view name = format == Format::avif ? "AVIF" : "HEIC";
  // While it reads the boxes, libheif 1.15 looks at the packed data too, a whole picture at a time.
  if (file.size() > limits.most_memory) return faults::too_much_memory(file.path(), file.size(), limits);
  HeifSession session(file);
  if (!session.open()) return faults::broken_header(file.path(), name, session.error());
  if (session.size().width < 1 || session.size().height < 1)
    return faults::broken_header(file.path(), name, "it does not say how large the picture is");
  if (!faults::within(session.size(), limits))
    return faults::too_many_pixels(file.path(), session.size(), limits);
  if (session.bits() < 1 || session.bits() > 16)
    return faults::broken_header(file.path(), name, "it does not say how many bits a sample has");
  Facts facts;
  facts.format = format;
  facts.bytes = file.size();
  // The boxes say how the picture lies, and libheif turns it so; an orientation in Exif does not count
  // (ISO/IEC 23008-12, section 6.5.10).
  set_seen(facts, session.size(), 1);
  const ExifFacts exif = read_exif(session.exif()).value_or(ExifFacts{});
  set_density(facts, exif.x, exif.y, exif.unit_inches);
  facts.tag = exif.colour;
  facts.device = exif.device;
  facts.camera = exif.camera;

  facts.bits = session.bits();
  facts.alpha = session.alpha();
  facts.channels = facts.alpha ? 4 : 3;
  facts.compression = format == Format::avif ? "AV1" : "HEVC";
  facts.pages = session.pages();
  if (const auto icc = session.icc(); !icc.empty()) {
    facts.tag = ColourTag::profile;
    facts.profile = read_profile(icc);
  } else if (const HeifNclx nclx = session.nclx()) {
    facts.tag = tag_of_code(nclx->color_primaries, nclx->transfer_characteristics).value_or(facts.tag);
  }
  return facts;
}

} // namespace stoneproof
