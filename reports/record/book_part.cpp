// The book of the record. The only way in is book_part; tested in tests/reports/record.
#include "reports/record/parts.h"

namespace stoneproof::record {

namespace {

Json stock_part(const std::optional<Stock> &stock) {
  if (!stock) return nullptr;
  return {{"caliper_mm", in_mm_or_null(stock->caliper)},
          {"grammage_g_m2", or_null(stock->grammage)},
          {"bulk_cm3_g", or_null(stock->bulk)},
          {"pages_per_inch", or_null(stock->pages_per_inch)},
          {"line", stock->place.line}};
}

Json details_part(const Binding &binding) {
  return {{"signature_pages", or_null(binding.signature)},
          {"grind_off_mm", binding.grind_off.mm()},
          {"glue_mm", binding.glue.mm()},
          {"board_mm", binding.board.mm()},
          {"board_width_mm", in_mm_or_null(binding.board_width)},
          {"square_mm", binding.square.mm()},
          {"turn_in_mm", binding.turn_in.mm()},
          {"hinge_mm", binding.hinge.mm()},
          {"spine_lining_mm", binding.spine_lining.mm()}};
}

Json cover_part(const std::optional<Cover> &cover) {
  if (!cover) return nullptr;
  return {{"size_mm", in_mm(cover->size)},
          {"spine_mm", cover->spine.mm()},
          {"flap_mm", cover->flap.mm()},
          {"panel_mm", cover->panel().mm()}};
}

} // namespace

Json book_part(const Book &book, const std::string &sha256) {
  const Stocks &stocks = book.stocks;
  return {
      {"title", book.title},
      {"language", book.language},
      {"file", bare_name(book.source)},
      {"sha256", sha256},
      {"trim_mm", in_mm(book.trim)},
      {"bleed_mm", in_mm(book.bleed)},
      {"safe_margin_mm", in_mm(book.safe_margin)},
      {"binding", word_of(binding_words, book.binding.kind)},
      {"binding_details", details_part(book.binding)},
      {"first_page", word_of(side_words, book.binding.first_page)},
      {"gutter_loss_mm", book.binding.gutter_loss.mm()},
      {"caliper_mm", stocks.block ? in_mm_or_null(stocks.block->caliper) : Json(nullptr)},
      {"stocks",
       {{"block", stock_part(stocks.block)},
        {"cover", stock_part(stocks.cover)},
        {"endpaper", stock_part(stocks.endpaper)}}},
      {"cover", cover_part(book.cover)},
      {"pages", book.page_count()},
  };
}

} // namespace stoneproof::record
