// The book and the press sheet of the record. The only ways in are book_part and press_part; tested in
// tests/reports/record.
#include "reports/record/parts.h"

namespace stoneproof::record {

namespace {

/// The last part of a path: where the folder stands is nobody's business.
std::string bare_name(const std::filesystem::path &path) { return path.filename().string(); }

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

Json profile_part(const PressProfile *profile) {
  if (!profile) return nullptr;
  return {{"file", bare_name(profile->file)},
          {"description", profile->facts.description},
          {"difference", profile->difference},
          {"share", profile->share}};
}

} // namespace

Json book_part(const Book &book, const std::string &sha256) {
  const auto &block = book.stocks.block;
  return {
      {"title", book.title},
      {"language", book.language},
      {"file", bare_name(book.source)},
      {"sha256", sha256},
      {"trim_mm", in_mm(book.trim)},
      {"bleed_mm", in_mm(book.bleed)},
      {"safe_margin_mm", in_mm(book.safe_margin)},
      {"binding", word_of(binding_words, book.binding.kind)},
      {"first_page", word_of(side_words, book.binding.first_page)},
      {"gutter_loss_mm", book.binding.gutter_loss.mm()},
      {"caliper_mm", block && block->caliper ? Json(block->caliper->mm()) : Json(nullptr)},
      {"pages", book.page_count()},
  };
}

Json press_part(const PressSheet &press) {
  return {
      {"name", press.name},
      {"source", bare_name(press.source)},
      {"density", density_bars(press)},
      {"density_tolerance", press.density_tolerance},
      {"stretch_tolerance", press.stretch_tolerance},
      {"bleed_mm", in_mm(press.bleed)},
      {"safe_margin_mm", in_mm(press.safe_margin)},
      {"cut_tolerance_mm", press.cut_tolerance.mm()},
      {"page_multiple", press.page_counts[0].multiple},
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
