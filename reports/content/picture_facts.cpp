// What is said of a picture file. The only ways in are the functions of picture_facts.h; tested in
// tests/reports/content, in measure_words.test.cpp and picture_words.test.cpp.
#include "reports/content/picture_facts.h"

#include "engine/measure/jpeg_quality.h"
#include "engine/rules/tones.h"
#include "reports/content/detail_words.h"
#include "reports/content/figures.h"
#include "reports/content/origin_words.h"
#include "reports/content/pixel_words.h"

#include <fmt/format.h>

#include <cmath>

namespace stoneproof::content {

namespace {

std::string quality_words(const JpegQuality &saved, const QualityBar &bar) {
  const std::string setting = saved.exact ? fmt::format("quality {} (exact)", saved.quality)
                                          : fmt::format("quality about {}", saved.quality);
  if (saved.quality < bar.least)
    return fmt::format("{}; the press sheet needs at least {}, better {}", setting, bar.least, bar.wanted);
  if (saved.quality < bar.wanted) return fmt::format("{}; the press sheet wants {}", setting, bar.wanted);
  return setting;
}

/// "TIFF, LZW", "JPEG baseline": the format once.
std::string packed_words(const Facts &facts) {
  const std::string format = (facts.big_tiff ? "Big" : "") + std::string(format_name(facts.format));
  if (facts.compression.rfind(format, 0) == 0) return facts.compression;
  return format + ", " + (facts.compression == "none" ? "not compressed" : facts.compression);
}

std::string file_words(const Facts &facts, const PressSheet &press) {
  std::string words = packed_words(facts);
  if (!facts.jpeg) return words;
  if (!facts.jpeg->subsampling.empty()) words += fmt::format(", colour sampled {}", facts.jpeg->subsampling);
  if (const auto saved = jpeg_quality(*facts.jpeg)) words += ", " + quality_words(*saved, press.jpeg_quality);
  return words;
}

std::string pixels_words(const Facts &facts) {
  constexpr double mega = 1e6, steps = 10; // to a tenth, rounded down
  const double pixels = static_cast<double>(facts.size.width) * static_cast<double>(facts.size.height);
  const double megapixels = std::floor(pixels / mega * steps) / steps;
  const std::string sides = fmt::format("{} × {}", facts.size.width, facts.size.height);
  return megapixels > 0 ? fmt::format("{}, {:g} megapixels", sides, megapixels) : sides;
}

std::string bits_words(const Facts &facts) {
  if (facts.colour == ColourModel::bilevel) return {};
  return fmt::format(", {}{}{}", count(static_cast<std::size_t>(facts.bits), "bit", "bits"),
                     facts.channels > 1 ? " a channel" : "", facts.floating ? ", floating point" : "");
}

std::string profile_words(const Facts &facts) {
  const ProfileFacts &profile = *facts.profile;
  if (profile.broken) return "; its profile cannot be read";
  std::string words = fmt::format(", profile {}", profile_name(profile));
  if (space_name(profile.space) != colour_name(facts.colour))
    words += fmt::format(" of {}", space_name(profile.space));
  if (profile.wide_gamut) words += ", stronger than sRGB";
  return words;
}

std::string_view tag_words_of(const Facts &facts) {
  switch (facts.tag) {
  case ColourTag::none:
    if (facts.colour == ColourModel::rgb) return ", no profile: sRGB is assumed";
    return facts.colour == ColourModel::gray || facts.colour == ColourModel::cmyk ? ", no profile" : "";
  case ColourTag::srgb: return ", sRGB by its tag";
  case ColourTag::adobe: return ", Adobe RGB (1998) by its tag";
  case ColourTag::coded: return ", wider primaries by their code";
  case ColourTag::gamma: return ", no profile, only tone curve or primaries";
  case ColourTag::profile: return "";
  }
  return "";
}

std::string colour_words_of(const Facts &facts, bool neutral) {
  std::string words = std::string(colour_name(facts.colour)) + bits_words(facts);
  words += facts.profile ? profile_words(facts) : std::string(tag_words_of(facts));
  if (neutral) words += "; a gray picture, stored as RGB";
  return words;
}

std::string density_words(const Facts &facts) {
  if (!facts.stored_x || !facts.stored_y) return "the file names none; the printed size decides";
  const std::string x = ppi(*facts.stored_x), y = ppi(*facts.stored_y);
  const std::string both = x == y ? x : fmt::format("{} across, {} down", x, y);
  return fmt::format("the file says {}; the printed size decides, not this", both);
}

/// How the stored rows are turned before the picture is seen: Exif 2.32, tag 274.
std::string_view orientation_words(int orientation) {
  constexpr std::string_view words[] = {"mirrored",
                                        "turned upside down",
                                        "mirrored top to bottom",
                                        "mirrored and turned a quarter",
                                        "turned a quarter clockwise",
                                        "mirrored and turned a quarter",
                                        "turned a quarter anticlockwise"};
  return words[orientation - 2];
}

std::string not_accepted_words(const Facts &facts, const PressSheet &press) {
  const std::string format = fmt::format("{} files", format_name(facts.format)),
                    colour = fmt::format("{} colour", colour_name(facts.colour));
  if (press.accepts(facts.format)) return press.accepts(facts.colour) ? "" : "does not accept " + colour;
  return press.accepts(facts.colour) ? "does not accept " + format
                                     : fmt::format("accepts neither {} nor {}", format, colour);
}

/// "7 % burnt out", and what the press sheet says where that is too much.
std::string clipped_words(double share, std::string_view what, double most) {
  const std::string words = fmt::format("{} {}", per_cent(share), what);
  return share > most ? fmt::format("{} (the press sheet takes {})", words, per_cent(most)) : words;
}

std::string tone_words(Use use, const Tone &tone, const PressSheet &press) {
  if (use == Use::line_art) return "black and white only";
  const std::string range = per_cent(tone.range);
  if (is_nearly_blank(tone)) return fmt::format("span only {} of the range: hardly anything is on it", range);
  std::string words = "span " + range + " of the range";
  if (tone.range < press.tone.range)
    words += fmt::format(" (the press sheet wants {})", per_cent(press.tone.range));
  words += ", " + clipped_words(tone.white, "burnt out", press.tone.clipped);
  words += ", " + clipped_words(tone.black, "one black", press.tone.clipped);
  if (tone.comb > 0) words += fmt::format(", {} missing as in a comb", per_cent(tone.comb));
  return words;
}

} // namespace

std::string_view format_name(Format format) {
  switch (format) {
  case Format::jpeg: return "JPEG";
  case Format::tiff: return "TIFF";
  case Format::png: return "PNG";
  case Format::gif: return "GIF";
  case Format::webp: return "WebP";
  case Format::heic: return "HEIC";
  case Format::avif: return "AVIF";
  }
  return {};
}

std::vector<FactRow> file_rows(const PictureState &state, const PressSheet &press) {
  std::vector<FactRow> rows;
  if (state.fault) rows.push_back({"Fault", state.fault->what});
  if (!state.facts) return rows;
  const Facts &facts = *state.facts;
  rows.push_back({"File", file_words(facts, press)});
  rows.push_back({"Pixels", pixels_words(facts)});
  rows.push_back({"Colours", colour_words_of(facts, state.neutral.value_or(false))});
  if (facts.orientation != 1)
    rows.push_back({"Shown", fmt::format("{}, as the file asks", orientation_words(facts.orientation))});
  if (facts.pages > 1) rows.push_back({"Pictures", fmt::format("{}; only the first is used", facts.pages)});
  if (facts.alpha) rows.push_back({"Opacity", "parts may be see-through"});
  if (const std::string words = not_accepted_words(facts, press); !words.empty())
    rows.push_back({"Press", "the press sheet " + words});
  return rows;
}

FactRow density_row(const Facts &facts) { return {"Density", density_words(facts)}; }

std::vector<FactRow> origin_rows(const PictureState &state, Use use, const Shown &shown) {
  const Detail &detail = shown.detail;
  std::vector<FactRow> rows{{"Detail", detail_fact(detail)}};
  if (const std::string words = past_fact(detail.past); !words.empty()) rows.push_back({"Past", words});
  if (const std::string words = printed_fact(detail.printed); !words.empty())
    rows.push_back({"Print", words});
  if (use == Use::photo && detail.screenshot.certainty == Certainty::firm)
    rows.push_back({"Screen", "looks like a copy of what a screen showed, or a drawing in flat colours"});
  if (const std::string words = state.bed ? bed_fact(*state.bed) : ""; !words.empty())
    rows.push_back({"Bed", words});
  return rows;
}

FactRow tone_row(Use use, const Tone &tone, const PressSheet &press) {
  return {"Tones", tone_words(use, tone, press)};
}

} // namespace stoneproof::content
