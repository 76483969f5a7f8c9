// Colours of a content stream, as far as the proof tells of them (ISO 32000-1, 8.6).
#include "engine/import/page_reader.h"

#include <algorithm>

namespace stoneproof::finished {

namespace {

Ink ink_of_channels(int channels) {
  return channels == 1 ? Ink::gray : channels == 3 ? Ink::rgb : channels == 4 ? Ink::cmyk : Ink::other;
}

Ink ink_of(const Object &space, const std::string &name, int depth = 0) {
  const std::string kind = space.is_array() ? space.at(0).name() : space ? space.name() : name;
  if (kind == "DeviceGray" || kind == "CalGray" || kind == "G") return Ink::gray;
  if (kind == "DeviceRGB" || kind == "CalRGB" || kind == "RGB") return Ink::rgb;
  if (kind == "DeviceCMYK" || kind == "CMYK") return Ink::cmyk;
  if (kind == "Separation" || kind == "DeviceN") return Ink::spot;
  if (kind == "Pattern") return Ink::pattern;
  if (kind == "ICCBased") return ink_of_channels(space.at(1)["N"].whole_or(0, 0, 32));
  if (kind == "Indexed" && depth < 4) return ink_of(space.at(1), {}, depth + 1);
  return Ink::other;
}

bool all(const Operation &given, double value) {
  return std::all_of(given.operands.begin(), given.operands.end(),
                     [&](const Operand &operand) { return operand.number == value; });
}

} // namespace

Paint PageReader::in_space(const std::string &name) const {
  const Object space = resource("ColorSpace", name);
  return {ink_of(space, name), false, {}};
}

void PageReader::set_fill_space(const Operation &given) {
  state_.fill = in_space(std::string(given.last_name()));
}
void PageReader::set_stroke_space(const Operation &given) {
  state_.stroke = in_space(std::string(given.last_name()));
}
void PageReader::set_fill_gray(const Operation &given) { state_.fill = {Ink::gray, all(given, 1), {}}; }
void PageReader::set_stroke_gray(const Operation &given) { state_.stroke = {Ink::gray, all(given, 1), {}}; }
void PageReader::set_fill_rgb(const Operation &given) { state_.fill = {Ink::rgb, all(given, 1), {}}; }
void PageReader::set_stroke_rgb(const Operation &given) { state_.stroke = {Ink::rgb, all(given, 1), {}}; }
void PageReader::set_fill_cmyk(const Operation &given) { state_.fill = {Ink::cmyk, all(given, 0), {}}; }
void PageReader::set_stroke_cmyk(const Operation &given) { state_.stroke = {Ink::cmyk, all(given, 0), {}}; }

void PageReader::set_components(Paint &paint, const Operation &given) {
  if (paint.ink == Ink::pattern) {
    paint.pattern = resource("Pattern", given.last_name());
    return;
  }
  const bool adds_light = paint.ink == Ink::gray || paint.ink == Ink::rgb;
  paint.white = paint.ink != Ink::other && all(given, adds_light ? 1 : 0);
}
void PageReader::set_fill(const Operation &given) { set_components(state_.fill, given); }
void PageReader::set_stroke(const Operation &given) { set_components(state_.stroke, given); }

void PageReader::use(const Paint &paint) {
  ColourUse &colours = drawing_.colours;
  if (paint.ink == Ink::gray) colours.gray = true;
  if (paint.ink == Ink::rgb) colours.rgb = true;
  if (paint.ink == Ink::cmyk) colours.cmyk = true;
  if (paint.ink == Ink::spot) colours.spot = true;
}

} // namespace stoneproof::finished
