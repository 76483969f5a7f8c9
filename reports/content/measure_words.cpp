// A measured picture file in words. The only way in is measure_words; tested in tests/reports/content.
#include "reports/content/measure_words.h"

#include "reports/content/figures.h"
#include "reports/content/glass_words.h"
#include "reports/content/origin_words.h"

#include <fmt/format.h>

#include <iterator>

namespace stoneproof::content {

namespace {

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
  std::vector<FactRow> rows = file_rows(measured.state, press);
  if (!measured.state.facts) return rows;
  rows.push_back(density_row(*measured.state.facts));
  if (!measured.whole) return rows;
  const auto add = [&](std::vector<FactRow> more) {
    std::move(more.begin(), more.end(), std::back_inserter(rows));
  };
  add(origin_rows(measured.state, measured.use, *measured.whole));
  // A line in one scan alone may be part of the picture: the record tells of it as a hint.
  for (const DirtOn &dirt : measured.dirt)
    if (!dirt.also.empty()) rows.push_back({"Dirt", dirt_fact(dirt)});
  for (const CopyOf &copy : measured.copies) rows.push_back({"Copy", copy_fact(copy)});
  rows.push_back(tone_row(measured.use, measured.whole->tone, press));
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
    const std::string wanted = fmt::format("{} at {}", size_down(print.wanted), ppi(bar.wanted)),
                      least = fmt::format("{} at {}", size_down(print.least), ppi(bar.least));
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
