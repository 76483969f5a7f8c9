// Thickness of paper. The only ways in are the functions of leaf_thickness.h; tested in tests/engine/binding.
#include "engine/binding/leaf_thickness.h"

#include <algorithm>

namespace stoneproof {

const std::optional<Stock> &stock_of(const Stocks &stocks, StockPart part) {
  if (part == StockPart::cover) return stocks.cover;
  return part == StockPart::endpaper ? stocks.endpaper : stocks.block;
}

std::vector<LeafThickness> told_thicknesses(const Stock &stock) {
  std::vector<LeafThickness> told;
  if (stock.caliper) told.push_back({*stock.caliper, ThicknessFrom::caliper});
  if (stock.grammage && stock.bulk)
    told.push_back({Length::of_mm(*stock.grammage * *stock.bulk / 1000), ThicknessFrom::bulk});
  if (stock.pages_per_inch)
    told.push_back({Length::of_in(2 / *stock.pages_per_inch), ThicknessFrom::pages_per_inch});
  return told;
}

std::optional<LeafThickness> leaf_thickness(const std::optional<Stock> &stock) {
  if (!stock) return std::nullopt;
  const auto told = told_thicknesses(*stock);
  return told.empty() ? std::nullopt : std::optional(told.front());
}

std::optional<Contradiction> contradiction(const Stock &stock, Length tolerance) {
  const auto told = told_thicknesses(stock);
  if (told.empty()) return std::nullopt;
  const auto [thinner, thicker] = std::minmax_element(
      told.begin(), told.end(), [](const auto &a, const auto &b) { return a.leaf < b.leaf; });
  if (thicker->leaf - thinner->leaf <= tolerance) return std::nullopt;
  return Contradiction{*thinner, *thicker};
}

} // namespace stoneproof
