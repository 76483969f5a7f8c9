// The press sheet of the record. The only way in is press_part; tested in tests/reports/record.
#include "reports/record/parts.h"

namespace stoneproof::record {

namespace {

template <class E, std::size_t N>
Json words_of(const std::vector<E> &values, const Word<E> (&words)[N]) {
  Json list = Json::array();
  for (const E value : values) list.push_back(word_of(words, value));
  return list;
}

Json density_bars(const PressSheet &press) {
  Json bars = Json::object();
  for (const auto &[use, word] : use_words) {
    const DensityBar &bar = press.bar(use);
    bars[std::string(word)] = {{"wanted_ppi", bar.wanted.ppi()}, {"least_ppi", bar.least.ppi()}};
  }
  return bars;
}

Json page_counts(const PressSheet &press) {
  Json bars = Json::object();
  for (const auto &[kind, word] : binding_words) {
    const PageCountBar &bar = press.page_count(kind);
    bars[std::string(word)] = {{"multiple", bar.multiple}, {"least", bar.least}, {"most", bar.most}};
  }
  return bars;
}

Json inside_margins(const PressSheet &press) {
  Json list = Json::array();
  for (const InsideMargin &margin : press.inside_margins)
    list.push_back({{"from_pages", margin.from}, {"least_mm", margin.least.mm()}});
  return list;
}

Json least_types(const PressSheet &press) {
  Json sizes = Json::object();
  for (const auto &[kind, word] : text_words) sizes[std::string(word)] = press.least_type_of(kind).mm();
  return sizes;
}

Json profile_part(const PressProfile *profile) {
  if (!profile) return nullptr;
  return {{"file", bare_name(profile->file)},
          {"description", profile->facts.description},
          {"difference", profile->difference},
          {"share", profile->share}};
}

} // namespace

Json press_part(const PressSheet &press, BindingKind binding) {
  return {
      {"name", press.name},
      {"source", bare_name(press.source)},
      {"density", density_bars(press)},
      {"density_tolerance", press.density_tolerance},
      {"stretch_tolerance", press.stretch_tolerance},
      {"bleed_mm", in_mm(press.bleed)},
      {"safe_margin_mm", in_mm(press.safe_margin)},
      {"cut_tolerance_mm", press.cut_tolerance.mm()},
      {"fold_tolerance_mm", press.fold_tolerance.mm()},
      {"page_multiple", press.page_count(binding).multiple},
      {"page_counts", page_counts(press)},
      {"inside_margins", inside_margins(press)},
      {"spine",
       {{"leaf_tolerance_mm", press.spine.leaf_tolerance.mm()},
        {"text_from_mm", press.spine.text_from.mm()},
        {"text_clear_mm", press.spine.text_clear.mm()}}},
      {"creep_compensated", press.creep_compensated},
      {"least_type_mm", least_types(press)},
      {"flatbed_limit_ppi", press.flatbed_limit.ppi()},
      {"jpeg_quality", {{"wanted", press.jpeg_quality.wanted}, {"least", press.jpeg_quality.least}}},
      {"tone", {{"clipped", press.tone.clipped}, {"range", press.tone.range}}},
      {"ink", {{"limit", press.ink.most}, {"square_mm", press.ink.square.mm()}}},
      {"profile", profile_part(press.profile.get())},
      {"formats", words_of(press.formats, format_words)},
      {"colours", words_of(press.colours, colour_words)},
  };
}

} // namespace stoneproof::record
