// A measured picture file in words. The only way in is measure_words; tested in tests/reports/content.
#include "reports/content/measure_words.h"

#include "engine/measure/jpeg_quality.h"
#include "engine/rules/tones.h"
#include "reports/content/detail_words.h"
#include "reports/content/figures.h"
#include "reports/content/glass_words.h"

#include "reports/content/origin_words.h"

#include "reports/content/pixel_words.h"

#include <fmt/format.h>

#include <cmath>

namespace stoneproof::content {

namespace {

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

std::string tone_words(const MeasuredFile &measured, const PressSheet &press) {
  if (measured.use == Use::line_art) return "black and white only";
  const Tone &tone = measured.whole->tone;
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

std::string ink_words(const MeasuredFile &measured, const PressSheet &press) {
  const bool as_is = measured.state.facts->colour == ColourModel::cmyk;
  return fmt::format("{}up to {} on a square of {}, printed at {}; the press sheet takes {}",
                     as_is ? "" : "converted for this press, ", per_cent(measured.whole->ink->most),
                     millimetres(press.ink.square), ppi(press.bar(measured.use).wanted),
                     per_cent(press.ink.most));
}

std::string gamut_words(double out, const PressSheet &press) {
  const std::string words =
      fmt::format("{} of the picture has colours that this press cannot print", per_cent(out));
  if (!press.profile || out <= press.profile->share) return words;
  return fmt::format("{} (the press sheet takes {})", words, per_cent(press.profile->share));
}

std::vector<FactRow> fact_rows(const MeasuredFile &measured, const PressSheet &press) {
  std::vector<FactRow> rows;
  const PictureState &state = measured.state;
  if (state.fault) rows.push_back({"Fault", state.fault->what});
  if (!state.facts) return rows;
  const Facts &facts = *state.facts;
  rows.push_back({"File", file_words(facts, press)});
  rows.push_back({"Pixels", pixels_words(facts)});
  rows.push_back({"Colours", colour_words_of(facts, state.neutral.value_or(false))});
  rows.push_back({"Density", density_words(facts)});
  if (facts.orientation != 1)
    rows.push_back({"Shown", fmt::format("{}, as the file asks", orientation_words(facts.orientation))});
  if (facts.pages > 1) rows.push_back({"Pictures", fmt::format("{}; only the first is used", facts.pages)});
  if (facts.alpha) rows.push_back({"Opacity", "parts may be see-through"});
  if (const std::string words = not_accepted_words(facts, press); !words.empty())
    rows.push_back({"Press", "the press sheet " + words});
  if (!measured.whole) return rows;
  const Detail &detail = measured.whole->detail;
  rows.push_back({"Detail", detail_fact(detail)});
  if (const std::string words = past_fact(detail.past); !words.empty()) rows.push_back({"Past", words});
  if (const std::string words = printed_fact(detail.printed); !words.empty())
    rows.push_back({"Print", words});
  if (measured.use == Use::photo && detail.screenshot.certainty == Certainty::firm)
    rows.push_back({"Screen", "looks like a copy of what a screen showed, or a drawing in flat colours"});
  if (const std::string words = state.bed ? bed_fact(*state.bed) : ""; !words.empty())
    rows.push_back({"Bed", words});
  // A line in one scan alone may be part of the picture: the record tells of it as a hint.
  for (const DirtOn &dirt : measured.dirt)
    if (!dirt.also.empty()) rows.push_back({"Dirt", dirt_fact(dirt)});
  for (const CopyOf &copy : measured.copies) rows.push_back({"Copy", copy_fact(copy)});

  rows.push_back({"Tones", tone_words(measured, press)});
  if (!measured.whole->ink) return rows;
  rows.push_back({"Ink", ink_words(measured, press)});
  if (const auto &out = measured.whole->ink->out_of_gamut)
    rows.push_back({"Gamut", gamut_words(*out, press)});
  return rows;
}

std::string_view use_name(Use use) {
  switch (use) {
  case Use::photo: return "photo";
  case Use::line_art: return "line art";
  case Use::document: return "document";
  case Use::clipping: return "clipping";
  }
  return {};
}

/// Uses that come to the same print share a row.
PrintTable largest_table(const MeasuredFile &measured, const PressSheet &press) {
  PrintTable table{{false, true, true}, {{"Largest print as", "wanted (good)", "least (usable)"}}};
  for (const LargestPrint &print : measured.largest) {
    const DensityBar &bar = press.bar(print.use);
    const std::string wanted = fmt::format("{} at {}", size(print.wanted), ppi(bar.wanted)),
                      least = fmt::format("{} at {}", size(print.least), ppi(bar.least));
    auto &last = table.rows.back();
    if (last[1] == wanted && last[2] == least)
      last[0] += fmt::format(", {}", use_name(print.use));
    else
      table.rows.push_back({fmt::format("  {}", use_name(print.use)), wanted, least});
  }
  return table;
}

std::string_view sharpness_name(Sharpness sharpness) {
  switch (sharpness) {
  case Sharpness::good: return "good";
  case Sharpness::usable: return "usable";
  case Sharpness::too_few: return "too few";
  }
  return {};
}

/// The first half of the papers beside the second.
PrintTable filled_table(const std::vector<FilledPrint> &filled) {
  PrintTable table{{true, true, false, false, true, false}, {}};
  const std::size_t half = (filled.size() + 1) / 2;
  for (std::size_t i = 0; i < half; ++i) {
    std::vector<std::string> row;
    for (const std::size_t at : {i, i + half}) {
      const FilledPrint *print = at < filled.size() ? &filled[at] : nullptr;
      row.emplace_back(print ? print->name : "");
      row.push_back(print ? ppi(print->density) : "");
      row.emplace_back(print ? sharpness_name(print->sharpness) : "");
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

} // namespace

MeasureWords measure_words(const MeasuredFile &measured, const PressSheet &press) {
  MeasureWords words{measured.file.string(), fact_rows(measured, press), {}, {}, {}};
  if (measured.state.fault || !measured.state.facts) return words;
  words.largest = largest_table(measured, press);
  words.filling = fmt::format("Filling a sheet as {}, turned to suit and cropped",
                              measured.use == Use::photo ? "a photo" : "line art");
  words.filled = filled_table(measured.filled);
  return words;
}

} // namespace stoneproof::content
