// Reads orientation, resolution, colour space and device from an Exif segment. Only way in: read_exif.
// Tested through read_facts in tests/engine/picture/facts.test.cpp.
#include "engine/picture/exif.h"

#include <algorithm>
#include <cstring>
#include <iterator>

#include <memory>
#include <string_view>

#include <libexif/exif-data.h>

namespace stoneproof {

namespace {

using Data = std::unique_ptr<ExifData, decltype(&exif_data_unref)>;

ExifEntry *entry_of(ExifData *data, ExifTag tag, ExifIfd directory = EXIF_IFD_0) {
  return exif_content_get_entry(data->ifd[directory], tag);
}

int number_of(ExifData *data, ExifTag tag, int otherwise, ExifIfd directory = EXIF_IFD_0) {
  const ExifEntry *entry = entry_of(data, tag, directory);
  if (!entry || entry->components < 1) return otherwise;
  const ExifByteOrder order = exif_data_get_byte_order(data);
  if (entry->format == EXIF_FORMAT_SHORT && entry->size >= 2) return exif_get_short(entry->data, order);
  // Some writers give a LONG or an SLONG where the standard asks for a SHORT.
  if (entry->format == EXIF_FORMAT_LONG && entry->size >= 4)
    return static_cast<int>(std::min<ExifLong>(exif_get_long(entry->data, order), 0xFFFF));
  if (entry->format == EXIF_FORMAT_SLONG && entry->size >= 4) return exif_get_slong(entry->data, order);
  return otherwise;
}

// A resolution: a RATIONAL by the standard; some writers give a whole number.
double resolution_of(ExifData *data, ExifTag tag) {
  const ExifEntry *entry = entry_of(data, tag);
  if (!entry) return 0;
  if (entry->format != EXIF_FORMAT_RATIONAL || entry->size < 8) return number_of(data, tag, 0);
  const ExifRational value = exif_get_rational(entry->data, exif_data_get_byte_order(data));
  return value.denominator ? static_cast<double>(value.numerator) / value.denominator : 0;
}

// Exif 2.3, tag 40961: 1 is sRGB, 0xFFFF "uncalibrated". The interoperability index R03 then stands for the
// optional colour space of DCF 2.0, which is Adobe RGB (1998).
ColourTag colour_of(ExifData *data) {
  const int space = number_of(data, EXIF_TAG_COLOR_SPACE, 0, EXIF_IFD_EXIF);
  if (space == 1) return ColourTag::srgb;
  const ExifEntry *index = entry_of(data, EXIF_TAG_INTEROPERABILITY_INDEX, EXIF_IFD_INTEROPERABILITY);
  const bool optional_space = index && index->size >= 3 && std::memcmp(index->data, "R03", 3) == 0;
  return space == 0xFFFF && optional_space ? ColourTag::adobe : ColourTag::none;
}

std::string_view text_of(ExifData *data, ExifTag tag) {
  const ExifEntry *entry = entry_of(data, tag);
  if (!entry || entry->format != EXIF_FORMAT_ASCII) return {};
  const std::string_view text(reinterpret_cast<const char *>(entry->data), entry->size); // NOLINT
  return text.substr(0, text.find('\0'));
}

std::string printable(std::string_view text) {
  std::string kept;
  for (const char letter : text)
    if (letter >= ' ' && letter <= '~') kept += letter;
  const auto first = kept.find_first_not_of(' ');
  return first == std::string::npos ? std::string()
                                    : kept.substr(first, kept.find_last_not_of(' ') - first + 1);
}

// A scanner has no exposure of a scene to tell of (Exif 2.3, tags of picture-taking conditions).
bool tells_of_exposure(ExifData *data) {
  const ExifTag tags[] = {EXIF_TAG_EXPOSURE_TIME, EXIF_TAG_FNUMBER, EXIF_TAG_FOCAL_LENGTH};
  return std::any_of(std::begin(tags), std::end(tags),
                     [&](ExifTag tag) { return entry_of(data, tag, EXIF_IFD_EXIF) != nullptr; });
}

} // namespace

std::string device_name(std::string_view maker, std::string_view model) {
  const std::string by = printable(maker), name = printable(model);
  if (name.empty() || name.starts_with(by)) return name.empty() ? by : name;
  return by + " " + name;
}

std::optional<ExifFacts> read_exif(std::span<const std::uint8_t> segment) {
  constexpr std::string_view name("Exif\0\0", 6);
  if (segment.size() <= name.size() || !std::equal(name.begin(), name.end(), segment.begin()))
    return std::nullopt;
  const Data data(exif_data_new(), exif_data_unref);
  if (!data) return std::nullopt;
  // Left on, libexif would invent the tags that the specification wants and the file lacks.
  exif_data_unset_option(data.get(), EXIF_DATA_OPTION_FOLLOW_SPECIFICATION);
  exif_data_load_data(data.get(), segment.data(), static_cast<unsigned>(segment.size()));
  ExifFacts facts;
  const int orientation = number_of(data.get(), EXIF_TAG_ORIENTATION, 1);
  if (orientation >= 1 && orientation <= 8) facts.orientation = orientation;
  facts.colour = colour_of(data.get());
  facts.device = device_name(text_of(data.get(), EXIF_TAG_MAKE), text_of(data.get(), EXIF_TAG_MODEL));
  facts.camera = tells_of_exposure(data.get());

  // Exif 2.3, tag 296: 2 inch, which is also the default, 3 centimetre; nothing else has a meaning.
  const int unit = number_of(data.get(), EXIF_TAG_RESOLUTION_UNIT, 2);
  if (unit != 2 && unit != 3) return facts;
  facts.x = resolution_of(data.get(), EXIF_TAG_X_RESOLUTION);
  facts.y = resolution_of(data.get(), EXIF_TAG_Y_RESOLUTION);
  if (unit == 3) facts.unit_inches = 1 / 2.54;
  return facts;
}

} // namespace stoneproof
