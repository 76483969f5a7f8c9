// How thick a leaf of a paper is, from what the description tells of it.
#pragma once

#include "engine/book/book.h"

#include <optional>
#include <vector>

namespace stoneproof {

/// The papers that a book may describe.
enum class StockPart { block, cover, endpaper };
inline constexpr StockPart stock_parts[] = {StockPart::block, StockPart::cover, StockPart::endpaper};
const std::optional<Stock> &stock_of(const Stocks &stocks, StockPart part);

enum class ThicknessFrom { caliper, bulk, pages_per_inch };

struct LeafThickness {
  Length leaf;
  ThicknessFrom from = ThicknessFrom::caliper;
};

/// Every thickness that a stock tells, the most direct first: its caliper; grammage x bulk (g/m2 times cm3/g
/// is micrometres); two pages a leaf, so 2 in / pages per inch.
std::vector<LeafThickness> told_thicknesses(const Stock &stock);

/// The first of them; none where the stock, or what it tells, is missing.
std::optional<LeafThickness> leaf_thickness(const std::optional<Stock> &stock);

/// The two that differ most, thinner first, where that is more than `tolerance`: figures that contradict each
/// other.
struct Contradiction {
  LeafThickness thinner, thicker;
};
std::optional<Contradiction> contradiction(const Stock &stock, Length tolerance);

} // namespace stoneproof
