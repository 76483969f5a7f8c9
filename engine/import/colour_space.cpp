// The colour space of a picture, and what its dictionary says of its samples. The only ways in are
// colour_space_of and samples_of; tested in tests/engine/import/picture_export.test.cpp.
#include "engine/import/sample_layout.h"

#include <algorithm>

namespace stoneproof::finished {

namespace {

constexpr std::size_t most_profile = 16'000'000, most_lookup = 256 * 32;

ColourSpace plain(Colours colours, int channels) {
  ColourSpace space;
  space.colours = colours;
  space.channels = channels;
  return space;
}

ColourSpace of_profile(const PdfFile &file, const Object &stream) {
  const int channels = stream["N"].whole_or(3, 1, 4);
  ColourSpace space = plain(channels == 1   ? Colours::gray
                            : channels == 4 ? Colours::cmyk
                                            : Colours::rgb,
                            channels == 2 ? 3 : channels);
  Decoded profile = file.decoded(stream, most_profile);
  if (profile.whole && profile.codec.empty()) space.icc = std::move(profile.bytes);
  return space;
}

std::optional<ColourSpace> indexed(const PdfFile &file, const Object &space, const Object &colours) {
  const std::string kind = space.at(1).at(0).name();
  if (kind == "Indexed" || kind == "I") return std::nullopt; // perhaps itself
  const auto base = colour_space_of(file, space.at(1), colours);
  if (!base || base->colours == Colours::indexed) return std::nullopt;
  ColourSpace indexed = *base;
  indexed.colours = Colours::indexed;
  indexed.channels = 1;
  indexed.base = base->colours;
  indexed.base_channels = base->channels;
  const Object lookup = space.at(3);
  indexed.lookup = lookup.is_stream() ? file.decoded(lookup, most_lookup).bytes : lookup.bytes();
  return indexed;
}

ColourSpace of_inks(const Object &names) {
  ColourSpace space;
  space.colours = Colours::inks;
  if (names.is_array())
    for (std::size_t i = 0; i < std::min<std::size_t>(names.size(), 32); ++i)
      space.inks.push_back(names.at(i).name());
  else
    space.inks.push_back(names.name());
  space.channels = std::max(1, static_cast<int>(space.inks.size()));
  return space;
}

std::optional<ColourSpace> named(const std::string &name) {
  if (name == "DeviceGray" || name == "G" || name == "CalGray") return plain(Colours::gray, 1);
  if (name == "DeviceRGB" || name == "RGB" || name == "CalRGB") return plain(Colours::rgb, 3);
  if (name == "DeviceCMYK" || name == "CMYK") return plain(Colours::cmyk, 4);
  return std::nullopt;
}

} // namespace

std::optional<ColourSpace> colour_space_of(const PdfFile &file, const Object &space, const Object &colours) {
  if (!space.is_array()) {
    const Object resource = colours[space.name()];
    return resource ? colour_space_of(file, resource, {}) : named(space.name());
  }
  const std::string kind = space.at(0).name();
  if (kind == "ICCBased") return of_profile(file, space.at(1));
  if (kind == "Indexed" || kind == "I") return indexed(file, space, colours);
  if (kind == "Separation" || kind == "DeviceN") return of_inks(space.at(1));
  if (kind == "Lab") {
    ColourSpace lab = plain(Colours::lab, 3);
    if (const auto range = space.at(1)["Range"].numbers(4)) lab.lab_range = *range;
    return lab;
  }
  return named(kind);
}

std::optional<Samples> samples_of(const PdfFile &file, const Object &dictionary, const Object &colours) {
  Samples samples;
  samples.size = {dictionary["Width"].whole_or(0, 1, 1'000'000),
                  dictionary["Height"].whole_or(0, 1, 1'000'000)};
  if (samples.size.width == 0 || samples.size.height == 0 ||
      samples.size.width * samples.size.height > most_pixels)
    return std::nullopt;
  samples.stencil = dictionary["ImageMask"].flag(false);
  samples.bits = samples.stencil ? 1 : dictionary["BitsPerComponent"].whole_or(8, 1, 16);
  const int bits = samples.bits;
  if (bits != 1 && bits != 2 && bits != 4 && bits != 8 && bits != 16) return std::nullopt;
  if (!samples.stencil) {
    const auto space = colour_space_of(file, dictionary["ColorSpace"], colours);
    if (!space) return std::nullopt;
    samples.space = *space;
  }
  const Object decode = dictionary["Decode"];
  if (const auto numbers = decode.numbers(static_cast<std::size_t>(samples.space.channels) * 2))
    samples.decode = *numbers;
  return samples;
}

} // namespace stoneproof::finished
